import { describe, expect, test } from 'vitest';
import { boughtWords, standSeen } from '../../src/checks/standSeen.ts';
import { boxOf, grown, overlap, type Words } from '../../src/exports/drawing.ts';
import { standBlocks, standPicture } from '../../src/exports/standPicture.ts';
import { pointOn } from '../../src/geometry/path.ts';
import { inDegrees, type Mm } from '../../src/geometry/units.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { figuresOf } from '../../src/checks/figures.ts';
import { walkShown } from '../../viewer/desk/walkShown.ts';
import { ALL_JOBS, designOf, job, JOBS, rocker, SAMPLES } from './jobs.ts';

const rockersOf = (fitting: Fitting): RockerShoe[] => designOf(fitting).shoes.filter((shoe): shoe is RockerShoe => shoe.kind === 'rocker');
const firstOf = (fitting: Fitting): RockerShoe => rockersOf(fitting)[0]!;
const figure = (fitting: Fitting, key: string): number => figuresOf(firstOf(fitting), fitting).find((one) => one.key === key)!.value;
const SIZES = [{ width: 135, size: 2.6 }, { width: 120, size: 3.3 }] as const;

describe.each(Object.keys(ALL_JOBS))('the standing of %s, drawn', (name) => {
  const fitting = ALL_JOBS[name]!;
  test('lies inside its room, no words on words', () => {
    for (const look of SIZES) for (const shoe of rockersOf(fitting)) {
      const { height, marks } = standPicture(shoe, fitting, look), texts = marks.filter((mark): mark is Words => mark.kind === 'text').map((one) => [one.text, grown(boxOf(one), -0.3)] as const), off: string[] = [];
      const inside = (x: Mm, y: Mm): boolean => x > -1 && x < look.width + 1 && y > -1 && y < height + 1;
      for (const mark of marks) for (const piece of mark.kind === 'text' ? [] : mark.path) for (const t of [0, 0.5, 1]) { const [x, y] = pointOn(piece, t); if (!inside(x, y)) off.push(`${x} ${y}`); }
      for (const [text, { left, right, top, bottom }] of texts) if (!inside(left, top) || !inside(right, bottom)) off.push(text);
      expect(off).toEqual([]);
      expect(texts.flatMap(([text, box], i) => texts.slice(i + 1).filter(([, other]) => overlap(box, other)).map(([other]) => `${text} / ${other}`))).toEqual([]);
    }
  });
});

describe('what it shows', () => {
  const flat = SAMPLES['ferry-pilot']!, round = SAMPLES['choir-conductor']!;

  test('is what the figures tell: room on the mid arc, squash, and the push back with its flat', () => {
    const { sway, touching, bought } = standSeen(firstOf(flat), flat);
    expect([sway.mid.back, sway.mid.front, touching[0]!.depth, touching[1]!.depth, ...bought!.holds!.with]).toEqual(['swayArcBack', 'swayArcFront', 'squashSoft', 'squashHard', 'steadySoft', 'steadyHard'].map((key) => expect.closeTo(figure(flat, key), 9) as number));
  });

  test('a flat that is there is held against none, one that is not against what could be ordered: the shoe without tells the same either way', () => {
    const had = standSeen(firstOf(flat), flat).bought!, bare: Fitting = { ...JOBS.pair, shoes: { right: rocker('right', { standingFlat: 0 }) } }, with30: Fitting = { ...JOBS.pair, shoes: { right: rocker('right', { standingFlat: 30 }) } };
    const offered = standSeen(firstOf(bare), bare).bought!, own = standSeen(firstOf(with30), with30).bought!;
    expect([had.ordered, own.ordered, offered.ordered, offered.flat]).toEqual([true, true, false, 30]);
    for (const i of [0, 1] as const) {
      expect(offered.holds!.with[i]).toBeCloseTo(own.holds!.with[i], 6);
      expect(offered.holds!.without[i]).toBeCloseTo(own.holds!.without[i], 6);
      expect(had.holds!.with[i]).toBeGreaterThan(had.holds!.without[i]);
      // A wheel that rolls under its hub is neutral; a sole without a flat comes to that, but for its squash.
      expect(Math.abs(own.holds!.without[i] - 1)).toBeLessThan(0.1);
    }
    expect(boughtWords(had)[0]).toContain('15.0 mm back and 15.0 mm forward');
    expect(boughtWords(offered)[0]).toContain('would let');
  });

  test('every slope has its row, with how far the body leans on it', () => {
    const said = (fitting: Fitting): string => standPicture(firstOf(fitting), fitting, SIZES[0]).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' | ');
    const text = said(round), { slopes } = standSeen(firstOf(round), round);
    for (const row of ['5° up', '1° up', 'level', '1° down', '5° down']) expect(text).toContain(row);
    expect(text).toContain(`leans ${inDegrees(slopes.at(-1)!.leaning!.tilt).toFixed(1)}° forward`);
    expect(slopes.map(({ leaning }) => leaning !== undefined).every(Boolean)).toBe(true);
  });

  test('nobody weighed: neither squash nor push back, and why', () => {
    const { mass: _, ...wearer } = JOBS.pair.wearer, fitting = { ...JOBS.pair, wearer }, marks = standBlocks(firstOf(fitting), fitting, SIZES[0]).flatMap(({ marks: of }) => of(0, 0)), text = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
    expect(text).toContain('no body mass on the sheet');
    expect(text).not.toMatch(/Touches on one foot|times as hard/);
    expect(standSeen(firstOf(fitting), fitting).bought!.holds).toBeUndefined();
  });

  test('the page gets a picture of each rocker, told in the unit it reads', () => {
    const two = job('K-2', { left: rocker('left'), right: rocker('right') }), shown = walkShown(designOf(two)).walking!.standing, inches = walkShown(designOf({ ...JOBS.pair, units: 'in' })).walking!.standing;
    expect(shown.map(({ side }) => side)).toEqual(['left', 'right']);
    expect(inches.map(({ words }) => [/\d mm\b/.test(words), /\d in\b/.test(words)])).toEqual([[false, true]]);
  });
});
