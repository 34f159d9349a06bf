import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { USUAL_PLIES } from '../../src/fitting/readMaking.ts';
import type { Path } from '../../src/geometry/path.ts';
import { directionOn, enclosedArea } from '../../src/geometry/path.ts';
import { windowRound } from '../../src/geometry/clip.ts';
import { GRAVITY, inDegrees } from '../../src/geometry/units.ts';
import { CORES } from '../../src/materials/stiffeners.ts';
import { amountsOf } from '../../src/making/plies/amounts.ts';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { makingFindings } from '../../src/making/findings.ts';
import { plyFindingsOf } from '../../src/making/plies/findings.ts';
import { END_STEP, layersOf, type Layer, type Layers } from '../../src/making/plies/layers.ts';
import { levelsOf } from '../../src/stiffener/steps.ts';
import { CORE_COAT, layerGramsOf } from '../../src/stiffener/weighed.ts';
import { droopsBetween } from '../../src/stiffener/reading.ts';
import { directionWords } from '../../src/stiffener/fibres.ts';
import { pliesFor } from '../../src/making/plies/plies.ts';
import { shoePlies } from '../../src/making/plies/shoePlies.ts';
import { fromPath } from '../../src/making/setOut.ts';
import type { Plate, Stiffener } from '../../src/stiffener/stiffener.ts';
import { packFor } from '../../src/stiffener/pack.ts';
import { designOf, job, JOBS, rocker, SAMPLES } from '../exports/jobs.ts';
import { apart, isInside, sampled } from '../judges/apart.ts';
import { assessed, flat } from '../stiffener/support.ts';
import { heightsOf } from '../../src/profile/groundFace.ts';
import { foamFace } from '../../src/solid/soleShape.ts';
import { BOARDED, BOWED, UNDER_FOAM, placed, pliesWith, packOn, rockersOf, TWILL, UD } from '../support/packs.ts';

const PAIR = designOf(JOBS.pair), SHOE = rockersOf(PAIR)[0]!, FEATHER = SHOE.shape.feather, TURNED = designOf(JOBS.turned);
const cut = (stiffener: Stiffener, stagger = 1, from?: number): Layers => layersOf(packOn(SHOE, stiffener, from === undefined ? {} : { from }), FEATHER, { stagger });
/** Points along a line no more than a millimetre apart, on its true arcs and its straight pieces. */
const pointsOf = (path: Path): (readonly [number, number])[] => { const all = sampled(path, 1); return all.flatMap((a, i) => { const b = all[(i + 1) % all.length]!, n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]))); return Array.from({ length: n }, (_, k) => [a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n] as const); }); };

/** Two straight sides and two half rounds, counter-clockwise: what is set in by a way has areas known by heart. */
const R = 50, STADIUM: Path = [
  { kind: 'line', from: [50, -R], to: [250, -R] }, { kind: 'arc', centre: [250, 0], radius: R, start: -Math.PI / 2, sweep: Math.PI },
  { kind: 'line', from: [250, R], to: [50, R] }, { kind: 'arc', centre: [50, 0], radius: R, start: Math.PI / 2, sweep: Math.PI },
];
const PLATE: Plate = { from: 8, to: 292, ball: 200, heel: 40, width: (x) => (x < 8 || x > 292 ? 10 : 88) };
const areaIn = (by: number): number => 200 * 2 * (R - by) + Math.PI * (R - by) ** 2;

describe('outlines', () => {
  test('each lies inside the feather line by its own inset exactly, the first by 6 mm, the middle of the stack the furthest', () => {
    const { layers } = cut({ ...BOARDED, core: { ...BOARDED.core!, over: { from: -50, to: 400 } } });
    const polygon = sampled(FEATHER, 2);
    expect(layers.map(({ inset }) => inset)).toEqual([6, 8, 12, 10, 11, 9, 13, 7]);
    for (const { outline, inset, over } of layers) {
      const ways = pointsOf(outline).map((point) => fromPath(FEATHER, point));
      expect(Math.min(...ways)).toBeCloseTo(inset, 5);
      if (!over) for (const way of ways) expect(Math.abs(way - inset)).toBeLessThan(2e-3);   // chords of the samples
      expect(pointsOf(outline).every((point) => isInside(point, polygon))).toBe(true);
    }
  });

  test('no two edges lie nearer than the stagger, whatever the number of layers, and no two steps are alike', () => {
    const { layers } = cut({ below: [placed(TWILL), placed(TWILL, 45)], above: [placed(TWILL), placed(TWILL, 45), placed(TWILL)], attached: [] }, 1.5);
    layers.forEach(({ outline }, i) => layers.slice(i + 1).forEach((other) => {
      const points = sampled(other.outline, 0.5), least = Math.min(...points.map((point) => fromPath(outline, point)));
      expect(least).toBeGreaterThan(1.5 - 1e-3);
    }));
    fc.assert(fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 12 }), (strips) => { expect(levelsOf(strips).sort((a, b) => a - b)).toEqual([...strips.keys()]); }), { seed: 20260318, numRuns: 60 });
  });

  test('strips run straight across where they are placed, and two that would end at one line are stepped by 5 mm, within the first', () => {
    const [first, second] = cut(BOARDED).layers.filter(({ kind, over }) => kind === 'ply' && over);
    expect([first!.over, second!.over]).toEqual([{ from: 160, to: 245 }, { from: 160 + END_STEP, to: 245 - END_STEP }]);
    for (const { outline, over } of [first!, second!]) {
      const { least, most } = windowRound([outline]), ends = outline.filter((piece) => piece.kind === 'line' && Math.abs(piece.to[0] - piece.from[0]) < 1e-9).map((piece) => (piece.kind === 'line' ? piece.to[0] : NaN)).sort((a, b) => a - b);
      expect([least[0], most[0], ...ends]).toEqual([over!.from, over!.to, over!.from, over!.to].map((x) => expect.closeTo(x, 6)));
    }
  });

  test('a plate that begins on purpose is cut across there; turned-up edges reach further out by their height, with the fold where the plate ends', () => {
    const { layers } = cut(BOWED, 1, 30);
    expect(layers.map(({ inset }) => inset)).toEqual([0, 2, 4, 3, 1]);
    layers.forEach((layer, i) => {
      expect(windowRound([layer.outline]).least[0]).toBeCloseTo(30 + [0, 2, 4, 3, 1][i]!, 6);
      expect(layer.kind === 'ply' && Math.min(...pointsOf(layer.fold!).map((point) => fromPath(FEATHER, point)))).toBeCloseTo(layer.inset + 6, 5);
    });
  });

  test('laid from the foot down: the packs are told from the bottom up', () => {
    const { layers } = cut({ below: [placed(TWILL), placed('glass twill 163')], above: [placed(UD), placed(TWILL, 45)], attached: [] });
    expect(layers.map((layer) => layer.kind === 'ply' && [layer.ply.name, Math.round(inDegrees(layer.angle))])).toEqual([[TWILL, 45], [UD, 0], ['glass twill 163', 0], [TWILL, 0]]);
  });

  test('a core is skived over three times its thickness where it ends on the plate', () => {
    const core = cut(BOARDED).layers.find(({ kind }) => kind === 'core');
    expect(core?.kind === 'core' && core.skives).toEqual([expect.closeTo(60 + 3 * 3, 6)]);
    const both = cut({ ...BOARDED, core: { ...BOARDED.core!, over: { from: 60, to: 240 } } }).layers.find(({ kind }) => kind === 'core');
    expect(both?.kind === 'core' && both.skives).toEqual([expect.closeTo(69, 6), expect.closeTo(231, 6)]);
  });

  test('ways of fibres are told as they lie on the shoe: mirrored on a right one', () => {
    const ply = (cloth: typeof TWILL | typeof UD, angle: number) => { const { ply: one, angle: turn } = placed(cloth, angle); return { ply: one, angle: turn }; };
    expect([ply(TWILL, 0), ply(TWILL, 45), ply(TWILL, -45), ply(UD, 0), ply(UD, 90)].map((one) => directionWords(one, 'right'))).toEqual(['0/90°', '±45°', '±45°', '0°', '90°'].map((text) => expect.stringMatching(new RegExp(`^-?${text}$`))));
    expect([directionWords(ply(UD, 30), 'left'), directionWords(ply(UD, 30), 'right')]).toEqual(['+30°', '-30°']);
  });
});

test('plies under the foam are cut as its underside lies when it is rolled out; the foam itself is no layer', () => {
  const one = shoePlies(SHOE, packOn(SHOE, UNDER_FOAM), PAIR.fitting), under = one.layers.filter((layer) => layer.kind === 'ply' && layer.pack === 'below');
  expect([one.layers.map(({ kind }) => kind), under.length]).toEqual([Array(5).fill('ply'), 2]);
  const height = heightsOf(foamFace(SHOE.shape));
  for (const { outline, plan } of under) {
    const [flat, above] = [windowRound([outline]), windowRound([plan!])], [from, to] = [above.least[0], above.most[0]], n = 4000;
    // A polyline along the foam's underside, by heights alone.
    const long = Array.from({ length: n }, (_, i) => [from + ((to - from) * i) / n, from + ((to - from) * (i + 1)) / n]).reduce((sum, [a, b]) => sum + Math.hypot(b! - a!, height(b!) - height(a!)), 0);
    expect([flat.most[0] - flat.least[0], flat.most[1] - flat.least[1]]).toEqual([expect.closeTo(long, 1), expect.closeTo(above.most[1] - above.least[1], 2)]);
    expect(long).toBeGreaterThan(to - from + 2);
  }
});

describe('weighed out', () => {
  // What lies within the same line set in by 6 mm, told by its widths: what the pack is weighed by.
  const round = (x: number): number => 2 * Math.sqrt(Math.max((R - 6) ** 2 - Math.max(50 - x, x - 250, 0) ** 2, 0)), plate: Plate = { ...PLATE, from: 7, to: 293, width: round, stagger: 1 };
  const weighed = (stiffener: Stiffener, order = USUAL_PLIES) => { const { layers } = layersOf({ stiffener, plate: PLATE }, STADIUM, { stagger: 1 }); return { layers, found: amountsOf(layers, layerGramsOf(stiffener, plate, false), order) }; };
  const within = (value: number): unknown => expect.closeTo(value, 1);

  test('areas and grams as by hand: a plate of two straight sides and two half rounds, 200 g cloth, as much resin, 15 % more, 30 to 100', () => {
    const { layers, found } = weighed({ below: [placed(TWILL)], above: [placed(TWILL), placed(TWILL, 45)], attached: [] }), areas = [6, 8, 7].map(areaIn);
    expect(layers.map(({ area }) => area)).toEqual(areas.map((area) => expect.closeTo(area, 4)));
    found.plies.forEach(({ area }, i) => expect(area / areas[i]!).toBeCloseTo(1, 2));
    const cloth = (areas[0]! + areas[1]! + areas[2]!) * 200 / 1e6;
    expect([found.cloth, found.inPlies, found.coat, found.mixed, found.resin, found.hardener]).toEqual([cloth, cloth, 0, 1.15 * cloth, (1.15 * cloth) / 1.3, (0.3 * 1.15 * cloth) / 1.3].map(within));
    expect(found.weight).toBeCloseTo(2 * cloth, 1);
    expect([found.cover.length, found.cover.width]).toEqual([expect.closeTo(288 + 60, 6), expect.closeTo(88 + 60, 6)]);
  });

  test('a core by its area, its thickness and its density, and what its faces drink; a measured ply is named, for nobody knows how it parts', () => {
    const measured = { ...placed(TWILL), ply: { name: 'ours', lamina: placed(TWILL).ply.lamina, thickness: 0.3, density: 1.4, failsAt: placed(TWILL).ply.failsAt, basis: 'measured' } };
    const core = (name: 'cork' | 'firm EVA') => ({ below: [measured], above: [placed(TWILL)], core: { name, material: CORES[name], thickness: 4 }, attached: [] });
    const { found } = weighed(core('cork')), coat = (2 * areaIn(8) * CORE_COAT) / 1e6, cored = (areaIn(8) * 4 * 0.25) / 1000;
    expect([found.core!.weight, found.coat, weighed(core('firm EVA')).found.coat]).toEqual([within(cored), within(coat), 0]);
    expect([found.unknown, found.cloth]).toEqual([[3], within((areaIn(6) * 200) / 1e6)]);
    expect(found.mixed).toBeCloseTo(1.15 * (found.inPlies + found.coat), 9);
    expect(found.weight).toBeCloseTo(2 * (areaIn(6) * 200) / 1e6 + (areaIn(7) * 0.3 * 1.4) / 1000 + cored + coat, 1);
    expect(found.band[0] < found.weight && found.weight < found.band[1]).toBe(true);
  });

  test('the paper weighs what the figures and the stack weigh: one function', () => {
    for (const [name, stagger] of [['market-gardener', 1], ['market-gardener', 2]] as const) {
      const made = designOf({ ...SAMPLES[name]!, making: { ...SAMPLES[name]!.making, plies: { ...USUAL_PLIES, stagger } } }), [shoe] = rockersOf(made), { grams } = packFor(shoe!, made.fitting)!, [one] = pliesFor(made)!.shoes;
      expect([one!.amounts.cloth, one!.amounts.inPlies + one!.amounts.coat, one!.amounts.core!.weight, one!.amounts.weight, shoe!.order.packGrams]).toEqual([grams.cloth, grams.resin, grams.core, grams.pack, grams.pack].map((value) => expect.closeTo(value!, 9)));
      // As large as its plies are cut, by their own outlines.
      for (const { number, area } of one!.amounts.plies) expect(area / one!.layers.find((layer) => layer.number === number)!.area).toBeCloseTo(1, 2);
    }
  });
});

/** The way an arrow or any straight line runs, from 0 to less than 180°. */
const runs = (line: Path): number => { const [x, y] = directionOn(line[0]!, 0.5); return ((inDegrees(Math.atan2(y, x)) % 180) + 180) % 180; };

describe('on the roll', () => {
  test('plies of both shoes come from one roll each cloth; nothing overlaps or leaves the cloth, and fibres run as they must', () => {
    const angles = fc.constantFrom(0, 45, -45);
    fc.assert(fc.property(fc.array(angles, { minLength: 2, maxLength: 3 }), fc.constantFrom(30, -30, 0), fc.integer({ min: 35, max: 130 }).map((x) => x * 10), (woven, straight, rollWidth) => {
      const plies = pliesWith(PAIR, { below: woven.map((angle) => placed(TWILL, angle)), above: [placed(UD, straight)], attached: [] }, { ...USUAL_PLIES, rollWidth });
      expect(plies.cloths.map(({ name }) => name).sort()).toEqual([TWILL, UD].sort());
      for (const { name, parts, length, width, area, waste, beside } of plies.cloths) {
        parts.forEach(({ outline }, i) => parts.slice(i + 1).forEach((other) => expect(apart(outline, other.outline, 2)).toBeGreaterThan(4.9)));
        const { least, most } = windowRound(parts.map(({ outline }) => outline));
        expect([least[0] >= 5 - 1e-6, least[1] >= 5 - 1e-6, most[0] <= length, most[1] <= width - 5 + 1e-6]).toEqual([true, true, true, true]);
        expect(length - most[0]).toBeLessThan(6.5);
        expect(area).toBeCloseTo(parts.reduce((sum, { outline }) => sum + enclosedArea(outline), 0), 4);
        expect(waste).toBeCloseTo(1 - (area + beside * length) / (length * width), 1);
        for (const { marks } of parts) for (const { path } of marks.filter(({ of }) => of === 'FIBRE')) {
          const off = runs(path) % (name === UD ? 180 : 90);
          expect(Math.min(off, (name === UD ? 180 : 90) - off)).toBeLessThan(0.01);
        }
      }
    }), { seed: 20260318, numRuns: 4 });
  });

  test('woven plies with fibres along the shoe lie along the roll, those at 45° across it at 45°', () => {
    const [cloth] = pliesWith(PAIR, { below: [placed(TWILL, 0), placed(TWILL, 45)], above: [], attached: [] }).cloths;
    const ways = cloth!.parts.map(({ marks }) => runs(marks.find(({ of }) => of === 'CENTRE_LINE')!.path));
    expect(ways.map((way) => Math.round(way) % 90).sort((a, b) => a - b)).toEqual([0, 45]);
    expect(ways.find((way) => Math.round(way) % 90 === 0)).toBeCloseTo(0, 6);
  });
});

describe('the bench test', () => {
  // A strip of one width without a core: the cantilever of any handbook, F L³ / 3 E I at the load, F (3 L a² - a³) / 6 E I at a.
  const stiffener = flat(5), pack = { stiffener, plate: { from: 20, to: 280, width: () => 80, ball: 200, heel: 30 }, asked: { mass: 80, wanted: 'rigid', lever: 70 } as const, assessed: assessed(stiffener, { from: 20, to: 280, width: () => 80, ball: 200, heel: 30 }) };
  const test1 = benchTestOf(pack)!, E = 50_000, I = (80 * 1.5 ** 3) / 12, L = 80, push = (kg: number): number => kg * GRAVITY;

  test('droops by the beam of handbooks, clamped 10 mm behind the ball, strained by 0.1 to 0.2 %', () => {
    const { bare } = test1;
    expect([bare.clampAt, bare.ball, bare.loadAt]).toEqual([190, 200, 270]);
    expect(bare.droop / ((push(bare.mass) * L ** 3) / (3 * E * I))).toBeCloseTo(1, 2);
    expect(bare.atBall / ((push(bare.mass) * (3 * L * 100 - 1000)) / (6 * E * I))).toBeCloseTo(1, 1);
    expect(bare.strain / ((push(bare.mass) * L * 0.75) / (E * I))).toBeCloseTo(1, 2);
    expect(bare.strain).toBeGreaterThan(0.001);
    expect(bare.strain).toBeLessThan(0.002);
    expect(bare.moment).toBeCloseTo((push(bare.mass) * 70) / 1000, 9);
  });

  test('the finished shoe gets 0.125 N·m for each kg about the tread line', () => {
    expect(test1.finished.mass * GRAVITY * 0.07).toBeCloseTo(0.125 * 80, 9);
    expect(test1.finished.droop / ((push(test1.finished.mass) * L ** 3) / (3 * E * I))).toBeCloseTo(1, 2);
  });

  test('n more plies of five bend the sole (5 / (5 + n))³ as much: the fewest that reach the grade are told, by hand', () => {
    // Of plies so strong that the bend alone decides.
    const strong = { ...stiffener, below: stiffener.below.map((one) => ({ ...one, ply: { ...one.ply, failsAt: { pull1: 1, press1: 1, pull2: 1, press2: 1, shear: 1, basis: 'invented for the test' } } })) };
    const asked = { mass: 80, wanted: 'rigid', bendAtMost: 1.3 * pack.assessed.bench.bend, lever: 70 } as const, { rows } = benchTestOf({ ...pack, stiffener: strong, asked })!;
    const ends = [1.3, ...[1, 2, 3].map((n) => 1.3 * ((5 + n) / 5) ** 3)];
    expect(rows.map(({ span: { reading } }) => (reading.means === 'add' ? reading.add.onTop + reading.add.underneath : reading.means))).toEqual(['test again', 'good', 'soft', 1, 2, 3, 'lay anew']);
    expect(rows.slice(2, -1).map(({ span: { to } }) => to)).toEqual(ends.map((end) => expect.closeTo(end, 1)));
    expect(rows[1]!.span).toMatchObject({ from: 0.85, to: 1.15 });
  });

  test('what is not sure widens what may be read: the core as it is sold, a camber whole or flat', () => {
    const [flatPack, boarded, bowed] = [{ below: [placed(TWILL), placed(TWILL)], above: [placed(TWILL), placed(TWILL)], attached: [] }, BOARDED, BOWED].map((one) => droopsBetween(packOn(SHOE, one)));
    expect([flatPack, boarded, bowed].map(([least, most] = [NaN, NaN]) => [least < 0.84, most > 1.16])).toEqual([[false, false], [true, true], [false, true]]);
  });

  test('a round mass strains a bare pack by no more than 0.2 %', () => {
    for (const one of [BOARDED, BOWED]) { const { mass, strain } = benchTestOf(packOn(SHOE, one))!.bare; expect([mass <= 20, strain < 0.002]).toEqual([true, true]); }
  });
});

const codesOf = (found: readonly { readonly code: string }[]): string[] => found.map(({ code }) => code);
const findingsFor = (stiffener: Stiffener, order = USUAL_PLIES) => plyFindingsOf(shoePlies(SHOE, packOn(SHOE, stiffener), PAIR.fitting, order));

describe('what stands in the way', () => {
  test('only a thickness is known: nothing is cut, and it is said what to write', () => {
    const ordered = designOf(job('K-210', { left: rocker('left') }, { making: { ...PAIR.fitting.making, plies: USUAL_PLIES } }));
    expect(codesOf(makingFindings(ordered))).toEqual(['PLIES_NOT_KNOWN']);
    expect(makingFindings(ordered)[0]!.text).toContain('order.stiffener 1.5 mm');
    expect(pliesFor(ordered)).toBeUndefined();
    expect(codesOf(makingFindings(PAIR))).toEqual([]);
  });

  test('a roll that is too narrow: the width named takes all plies, and what does not fit is laid nowhere', () => {
    const order = { ...USUAL_PLIES, rollWidth: 200 }, [found] = findingsFor(BOARDED, order);
    expect([found!.code, found!.text]).toEqual(['PLY_BEYOND_ROLL', expect.stringContaining('ply 2, ply 6')]);
    expect(codesOf(findingsFor(BOARDED, { ...order, rollWidth: found!.limit! }))).not.toContain('PLY_BEYOND_ROLL');
    expect(codesOf(findingsFor(BOARDED, { ...order, rollWidth: found!.limit! - 12 }))).toContain('PLY_BEYOND_ROLL');
    const [narrow, wide] = [200, found!.limit!].map((rollWidth) => pliesWith(PAIR, BOARDED, { ...order, rollWidth }).cloths.find(({ name }) => name === TWILL)!);
    expect([narrow!.left, narrow!.parts.length, wide!.left, wide!.parts.length]).toEqual([['left ply 2', 'left ply 6'], 3, [], 5]);
  });

  test('a stagger the plate is too narrow for: the one named is cut, and works', () => {
    const found = findingsFor(BOARDED, { ...USUAL_PLIES, stagger: 5 }).find(({ code }) => code === 'PLY_STAGGER')!;
    expect(cut(BOARDED, 5).stagger).toBe(found.limit);
    expect(codesOf(findingsFor(BOARDED, { ...USUAL_PLIES, stagger: found.limit! }))).not.toContain('PLY_STAGGER');
  });

  test('a strip too short for its ends to be stepped: the length named works', () => {
    const strips = (length: number): Stiffener => ({ below: [placed(TWILL), placed(UD, 0, { from: 190, to: 190 + length })], above: [placed(UD, 0, { from: 190, to: 190 + length }), placed(TWILL)], attached: [] });
    const found = findingsFor(strips(34)).find(({ code }) => code === 'PLY_TOO_SHORT')!;
    expect([found.measured, found.limit, cut(strips(34)).short.map(({ number }) => number)]).toEqual([34, 40, [3]]);
    expect(codesOf(findingsFor(strips(40)))).not.toContain('PLY_TOO_SHORT');
  });

  test('edges that step in far are told with what they cost', () => {
    const cost = (stagger: number): string[] => codesOf(findingsFor(BOARDED, { ...USUAL_PLIES, stagger }));
    expect([cost(2).includes('PLY_STEPS_SOFTER'), cost(0.5).includes('PLY_STEPS_SOFTER')]).toEqual([true, false]);
  });

  test('a pack with no room for a clamp has no bench test, and it is said', () => {
    const short = packOn(SHOE, { below: [placed(TWILL)], above: [], attached: [] }, { from: 175 });
    expect(benchTestOf(short)).toBeUndefined();
    expect(codesOf(plyFindingsOf(shoePlies(SHOE, short, PAIR.fitting)))).toContain('PLY_NOT_PROVED');
  });
});

test('a right shoe has the parts of the left one mirrored', () => {
  const [shoe] = rockersOf(TURNED), one = shoePlies(shoe!, packOn(shoe!, BOWED), TURNED.fitting), layer: Layer = one.layers[0]!;
  const [own, left] = [one.parts[0]!.outline, layer.outline].map((path) => windowRound([path]));
  expect([own!.least[1], own!.most[1]]).toEqual([expect.closeTo(-left!.most[1], 9), expect.closeTo(-left!.least[1], 9)]);
  expect(one.parts[0]!.letters[0]!.text).toBe('RIGHT ply 1 of 5');
  expect(enclosedArea(one.parts[0]!.outline)).toBeCloseTo(layer.area, 6);
});
