import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/finding.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import type { Tool } from '../../src/fitting/making.ts';
import type { Path } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { degrees } from '../../src/geometry/units.ts';
import { blockFindings } from '../../src/making/block/blockFindings.ts';
import { plannedBlock } from '../../src/making/block/block.ts';
import { leftInHollows } from '../../src/making/block/hollows.ts';
import { shoePlace } from '../../src/making/block/lie.ts';
import { tabCorners } from '../../src/making/block/setUps.ts';
import { leftInOutline, leftOnWalls } from '../../src/making/block/wallLeft.ts';
import type { BlockWall } from '../../src/making/block/walls.ts';
import { wallsRound } from '../../src/making/block/walls.ts';
import { partsOf, type Pair } from '../../src/pair/shoe.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { sweptSurface, type Surface } from '../../src/solid/soleShape.ts';
import { designOf, job, match, rocker } from '../exports/jobs.ts';
import { withLast, workedCase } from '../support/cases.ts';

const ball = (diameter: number): Tool => ({ diameter, reach: 75, end: 'ball' }), flat = (diameter: number): Tool => ({ ...ball(diameter), end: 'flat' });

/**
 * Slow judge: rolls the cutter over a face from many places near a point, each time let down onto a fine sampling of the
 * face round it in rings, and tells how near it comes to the point.
 */
function leftAt(face: Surface, [px, py]: readonly [number, number], { diameter, end }: Tool): number {
  const r = diameter / 2, up = (d: number): number => (end === 'ball' ? r - Math.sqrt(Math.max(0, r * r - d * d)) : 0);
  const rings = (n: number, around: number): (readonly [number, number, number])[] => [[0, 0, 0], ...Array.from({ length: n * around }, (_, i) => {
    const d = (r * (1 + Math.floor(i / around))) / n, angle = ((i % around) + 0.37) * (2 * Math.PI / around);
    return [d * Math.cos(angle), d * Math.sin(angle), d] as const;
  })];
  const under = rings(12, 32);
  return Math.min(...rings(10, 16).map(([cx, cy, away]) => Math.max(...under.map(([x, y, d]) => { const z = face(px + cx + x, py + cy + y); return Number.isFinite(z) ? z - up(d) : -Infinity; })) + up(away))) - face(px, py);
}

describe('hollows of the upper face', () => {
  const measured: readonly (readonly [number, number])[] = [[0, 20], [70, 19], [95, 6], [100, 5], [105, 6], [150, 12], [202, 0], [240, 4.5], [282, 14]];
  const dished = soleFrom(withLast(workedCase, { camber: 9 })).bodies.foam, hollow = soleFrom(withLast(workedCase, { heights: measured })).bodies.foam;
  test.each([
    ['a dished last', dished, ball(100)], ['a dished last', dished, flat(20)], ['a hollow as measured', hollow, ball(40)], ['a hollow as measured', hollow, flat(12)],
  ] as const)('%s: where it says, a rolled cutter leaves as much; nowhere else more', (_, { upper, shape, ...body }, tool) => {
    const edge = wallsRound({ upper, shape, ...body }).map(({ on }) => on), { left, at } = leftInHollows(upper, edge, tool, 'fine');
    const tolerance = 0.06 + 0.1 * left;
    if (left > 0.02) expect(Math.abs(leftAt(upper, at, tool) - left)).toBeLessThan(tolerance);
    for (const place of [[60, 12], [100, 0], [205, 12]] as const) expect(leftAt(upper, place, tool)).toBeLessThan(left + tolerance);
  });

  test('a groove of known round: a ball as wide goes in, a wider one bridges it (closed form)', () => {
    // A groove across, an arc of radius 10 cut 2 deep into a level face: it is 2 √(10² - 8²) = 12 wide. A ball of radius 30 rests on its rims, 30 - √(30² - 6²) deep.
    const groove: Surface = (x) => Math.min(0, 8 - Math.sqrt(Math.max(0, 100 - Math.min(36, x * x)))), edge: Point[] = [[-60, -20], [60, -20], [60, 20], [-60, 20]];
    expect(leftInHollows(groove, edge, ball(16), 'fine').left).toBeLessThan(0.05);
    expect(leftInHollows(groove, edge, ball(60), 'fine').left).toBeCloseTo(2 - (30 - Math.sqrt(900 - 36)), 1);
    expect(leftInHollows(groove, edge, flat(14), 'fine').left).toBeCloseTo(2, 1);
  });
});

describe('walls', () => {
  /** A wall 30 mm high from 5 mm over the bed, leaning by `run` in towards the ground. */
  const wall = (run: number): BlockWall => ({ top: [0, 0, 35], bottom: [0, 30 * run, 5], outward: [0, -1], run, on: [100, 0], faces: [0, -1] });
  /** Slow judge: circles (or corners) let in beside the wall, in steps, wherever they touch neither wall nor floor; what none of them covers. */
  function judged(run: number, floor: number, { diameter, end }: Tool): number {
    const r = diameter / 2, n = 120, at = (z: number): number => -run * (35 - z), samples = Array.from({ length: n + 1 }, (_, i) => 5 + (30 * i) / n);
    let worst = 0;
    for (const z of samples) {
      let least = Infinity;
      for (let tip = floor; tip <= z; tip += 0.2) {
        // The cutter is as wide at a height as its end allows; upright, it clears everything above its tip.
        const half = (height: number): number => (end === 'flat' || height >= r ? r : Math.sqrt(Math.max(0, r * r - (r - height) ** 2)));
        const centre = Math.max(...samples.filter((height) => height >= tip).map((height) => at(height) + half(height - tip)));
        least = Math.min(least, centre - half(z - tip) - at(z));
      }
      worst = Math.max(worst, least);
    }
    return worst;
  }
  test.each([[0, 0, ball(12)], [0, 3, ball(12)], [-0.1, 2, ball(12)], [-0.2, 3, ball(20)], [0.1, 0, flat(12)], [0.15, 1, ball(8)], [-0.1, 4, flat(12)]] as const)('leaning %d, cut to %d mm over the bed: as much stays as a cutter let in beside it leaves', (run, floor, tool) => {
    expect(leftOnWalls({ walls: [wall(run)], floors: { fromAbove: floor }, tool }).left).toBeCloseTo(judged(run, floor, tool), 1);
  });
  test('an undercut from above is reached from below', () => {
    expect(leftOnWalls({ walls: [wall(0.1)], floors: { fromAbove: 10 }, tool: flat(12) }).left).toBe(Infinity);
    expect(leftOnWalls({ walls: [wall(0.1)], floors: { fromAbove: 10, fromBelow: 42 }, tool: ball(12) }).left).toBeLessThan(1e-9);
  });
  test('a round hollow of the outline: a cutter as tight goes in, a wider one rests on both sides of it (closed form)', () => {
    // Two discs of radius 20, 60 apart, joined by hollows of radius 15: their middles stand √(35² - 30²) aside. A cutter of radius 25 rests on both discs, √(45² - 30²) aside.
    const aside = Math.sqrt(35 ** 2 - 30 ** 2), turn = Math.atan2(aside, 30), disc = { kind: 'arc', radius: 20, sweep: 2 * (Math.PI - turn) } as const, hollow = { kind: 'arc', radius: 15, sweep: 2 * turn - Math.PI } as const;
    const waisted: Path = [
      { ...disc, centre: [60, 0], start: turn - Math.PI }, { ...hollow, centre: [30, aside], start: -turn }, { ...disc, centre: [0, 0], start: turn }, { ...hollow, centre: [30, -aside], start: Math.PI - turn },
    ];
    expect(leftInOutline(waisted, 14).left).toBe(0);
    expect(leftInOutline(waisted, 25).left).toBeCloseTo(Math.sqrt(45 ** 2 - 30 ** 2) - 25 - (aside - 15), 1);
  });
});

describe('findings', () => {
  const making = (block: object, tool: object | null) => readMaking({ chordGap: 1, block, ...(tool ? { tool } : {}) });
  const TOOL = { diameter: 12, reach: 75 };
  const pairWith = (block: object, tool: object | null = TOOL, order: Parameters<typeof rocker>[1] = {}, last: Parameters<typeof rocker>[2] = {}): Pair =>
    designOf(job('B-1', { left: rocker('left', order, last) }, { making: making(block, tool) }));
  const of = (found: readonly Finding[], code: string): Finding | undefined => found.find((finding) => finding.code === code);
  const found = (...asked: Parameters<typeof pairWith>): Finding[] => blockFindings(pairWith(...asked));
  const leaning = { taper: { heelInner: degrees(5), heelOuter: degrees(5), foreInner: degrees(3), foreOuter: degrees(3) } };
  const DIMENSIONS = /A block of (\d+) mm × (\d+) mm takes it/;

  test('nothing on a usual block and cutter; a note where no cutter is named; nothing where no block is ordered', () => {
    expect(found({})).toEqual([]);
    expect(found({}, null).map(({ code }) => code)).toEqual(['TOOL_USUAL']);
    expect(blockFindings(designOf(job('B-2', { left: rocker('left') })))).toEqual([]);
  });
  test('a block too small names one that takes the part', () => {
    const small = of(found({ length: 320, width: 120 }), 'BLOCK_TOO_SMALL')!, [, length, width] = DIMENSIONS.exec(small.text)!;
    expect(small.severity).toBe('warn');
    expect(found({ length: Number(length), width: Number(width) })).toEqual([]);
    expect(of(found({ length: Number(length) - 5, width: Number(width) }), 'BLOCK_TOO_SMALL') ?? of(found({ length: Number(length), width: Number(width) - 5 }), 'BLOCK_TOO_SMALL')).toBeDefined();
  });
  test('too few sheets names how many take it', () => {
    const thin = of(found({ sheet: 9, sheets: 2 }), 'BLOCK_TOO_THIN')!, needed = Number(/; (\d+) sheets/.exec(thin.text)![1]);
    expect(found({ sheet: 9, sheets: needed })).toEqual([]);
    expect(of(found({ sheet: 9, sheets: needed - 1 }), 'BLOCK_TOO_THIN')).toBeDefined();
  });
  test('a part laid on the diagonal is told', () => {
    expect(of(found({ length: 300, width: 290, margin: 3 }), 'BLOCK_TURNED')!.severity).toBe('note');
  });
  test('a cutter too short names the reach that does, and cutting from both faces where that eases it', () => {
    const usual = of(found({ faces: 'upper face' }, { diameter: 12, reach: 20 }), 'TOOL_REACH')!.limit!, reach = usual - 1;
    const short = of(found({ faces: 'upper face' }, { diameter: 12, reach }), 'TOOL_REACH')!;
    expect(short.text).toContain('or cut from both faces');
    expect(of(found({ faces: 'upper face' }, { diameter: 12, reach: Math.ceil(short.limit!) }), 'TOOL_REACH')).toBeUndefined();
    expect(of(found({ faces: 'both faces' }, { diameter: 12, reach }), 'TOOL_REACH')).toBeUndefined();
    expect(of(found({}, { diameter: 12, reach: 20 }), 'TOOL_REACH')!.text).not.toContain('both faces');
  });
  test('walls that lean in are undercut from above; cut from both faces they are reached', () => {
    const undercut = of(found({ faces: 'upper face' }, TOOL, leaning), 'TOOL_UNDERCUT')!;
    expect(undercut.measured).toBeGreaterThan(1);
    expect(undercut.text).toContain('Cutting from both faces');
    expect(found({ faces: 'both faces' }, TOOL, leaning)).toEqual([]);
  });
  test('a cutter too wide for a hollow names one that reaches its ground', () => {
    const heights = [[0, 20], [70, 19], [95, 6], [100, 5], [105, 6], [150, 12], [202, 0], [240, 4.5], [282, 14]] as const, block = { length: 500, width: 300, sheet: 60 };
    const wide = of(found(block, { diameter: 60, reach: 100 }, {}, { heights }), 'TOOL_HOLLOW')!, diameter = Number(/A ball end of ([\d.]+) mm reaches it/.exec(wide.text)![1]);
    expect(wide.at).toBeGreaterThan(80);
    expect(wide.at).toBeLessThan(120);
    expect(of(found(block, { diameter, reach: 100 }, {}, { heights }), 'TOOL_HOLLOW')).toBeUndefined();
  });
  test('the round of a wide ball that does not come down to the foot of the walls: the cutter named does', () => {
    const block = { length: 500, width: 320 }, foot = of(found(block, { diameter: 80, reach: 100 }), 'TOOL_WALL_FOOT')!;
    const [, end, diameter] = /A (ball|flat) end of ([\d.]+) mm \(making\.tool\) takes it off/.exec(foot.text)!;
    expect(found(block, { diameter: Number(diameter), reach: 100, end })).toEqual([]);
  });
  test('walls too low for the tabs name tabs that stand', () => {
    const thin = (block: object): Finding[] => blockFindings(designOf(job('B-3', { left: rocker('left'), right: match('right') }, { making: making(block, TOOL) })));
    const low = of(thin({}), 'BLOCK_TABS')!, height = Number(/Tabs of ([\d.]+) mm \(making/.exec(low.text)![1]);
    expect(low.side).toBe('right');
    expect(of(thin({ tabHeight: height }), 'BLOCK_TABS')).toBeUndefined();
  });
  test.each([[60, 'ball'], [60, 'flat']] as const)('advice for a cutter of %d mm with a %s end brings no other trouble', (diameter, end) => {
    const heights = [[0, 20], [70, 19], [95, 6], [100, 5], [105, 6], [150, 12], [202, 0], [240, 4.5], [282, 14]] as const, block = { length: 600, width: 400, sheet: 60 }, reach = 100;
    const cutterOf = (tool: object): Finding[] => found(block, { reach, ...tool }, {}, { heights }).filter(({ code }) => code.startsWith('TOOL_')), first = cutterOf({ diameter, end });
    expect(first.length).toBeGreaterThan(0);
    for (const { text } of first) {
      const [, other, wide] = /A (ball|flat) end of ([\d.]+) mm(?: \(making\.tool\) takes| reaches it|, )/.exec(text.slice(text.indexOf(':')))!;
      expect(cutterOf({ diameter: Number(wide), end: other })).toEqual([]);
    }
  });
  describe.each([[29, 15, true], [30, 16, false]] as const)('walls too low for most tabs (%d and %d mm already under the shoe)', (seat, ball, hold) => {
    const measured = (value: number) => ({ value, origin: 'measured' }) as const, order = making({}, TOOL);
    const pair = designOf(job('B-5', { left: rocker('left'), right: match('right', { seatHeightNow: measured(seat), ballHeightNow: measured(ball) }) }, { making: order }));
    const parts = partsOf(pair.shoes[1]!)!, plan = plannedBlock(parts, order)!, { tabs: { tabs } } = plan, { text, severity } = of(blockFindings(pair), 'BLOCK_TABS')!;
    const list = (words: string): string[] => [...(new RegExp(`${words}: ([^.]*(?:\\.\\d[^.]*)*)\\. `).exec(text)?.[1] ?? '').matchAll(/(waist|heel back|heel|forepart) (inner|outer)/g)].map(([name]) => name!);

    test('the warning lists what stands and what does not', () => {
      const standing = tabs.map(({ place, side }) => `${place} ${side}`), usual = ['waist inner', 'waist outer', 'heel back inner', 'heel back outer'], out = list('Left out'), stead = list('In their stead');
      expect(out.length).toBeGreaterThan(0);
      expect(stead.length).toBeGreaterThan(0);
      expect([...usual.filter((name) => !out.includes(name)), ...stead]).toEqual(standing);
      expect(list('Made lower')).toEqual(tabs.slice(0, usual.length - out.length).filter(({ from, to }) => to - from < 2.5 - 1e-6).map(({ place, side }) => `${place} ${side}`));
      expect([severity, text.includes('hold it down from below')]).toEqual(hold ? ['note', false] : ['warn', true]);
      expect(plan.tabs.hold).toBe(hold);
    });
    test('tabs sought elsewhere are 1 mm high at least, stand apart, and touch neither the arcs nor the edge', () => {
      const { foam } = parts.bodies, under = sweptSurface(foam.lower, parts.shape.line), lift = plan.lie.shift[2];
      for (const tab of tabs) {
        expect(tab.to - tab.from).toBeGreaterThan(1 - 1e-9);
        for (const other of tabs) if (other !== tab) expect(distance(tab.at, other.at)).toBeGreaterThan(30);
        for (const corner of tabCorners(tab, plan.pocketWidth).filter((_, i) => i === 0 || i === 3)) {
          const [x, y] = shoePlace(plan.lie, corner);
          expect(tab.from).toBeGreaterThan(under(x, y) + lift + 0.5);
          expect(tab.to).toBeLessThan(foam.upper(x, y) + lift - 0.5);
        }
      }
    });
  });
});
