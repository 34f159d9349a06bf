import { describe, expect, test } from 'vitest';
import { figuresOf, inWords, stationsOf, type Figure, type FigureKey } from '../../src/checks/figures.ts';
import { INPUT_FIELDS, inputOf, type InputField } from '../../src/checks/inputs.ts';
import { MATCH_RESTS, ROCKER_RESTS } from '../../src/checks/restsOn.ts';
import type { Fitting, ShoeFitting } from '../../src/fitting/fitting.ts';
import type { Measure } from '../../src/fitting/measure.ts';
import { SIDES, type Side } from '../../src/fitting/words.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import { bothRockers, designOf, designWith, fittingWith, type Part } from './support.ts';

type Values = Partial<Record<FigureKey, Figure>>;
const byKey = (shoe: Shoe, fitting: Fitting): Values => Object.fromEntries(figuresOf(shoe, fitting).map((figure) => [figure.key, figure]));
function figuresFor(change: Part = {}, side: Side = 'left'): Values {
  const { shoes, fitting } = designWith(change);
  return byKey(shoes.find((shoe) => shoe.side === side)!, fitting);
}

/** Two independent calculations on paper of one case agree to three places. */
const BY_HAND: ReadonlyArray<readonly [FigureKey, number]> = [
  ['tilt', 3.945], ['lean', 3.945], ['build', 23.123], ['pivotX', 67.495], ['pivotHeight', 114.594], ['standingPoint', 123.362], ['standingAhead', 55.867],
  ['radiusHeel', 112.669], ['radiusMid', 924.669], ['radiusToe', 243.196], ['heelJointAngle', -3.945], ['heelJoint', 59.743],
  ['apex', 174.84], ['apexShare', 62], ['apexRollAngle', 3.191], ['tipSlope', 29.756], ['toeSpringOfShoe', 33.123], ['heelRise', 21.75],
  ['seatHeight', 35.123], ['ballHeight', 23.123], ['thicknessBack', 13.373], ['thicknessPivot', 33.222], ['thicknessSeatEnd', 32.611],
  ['thicknessApex', 22.78], ['thicknessTread', 18.636], ['thicknessTip', 5], ['hipHeight', 924.669], ['heelHeightBack', 35.123],
  ['standsSeat', 39.123], ['standsBall', 27.123], ['pitchOfSole', 12], ['pitchOfLast', 12], ['toeSpringOfLast', 15], ['standingFlat', 0],
  ['strikeReached', 25], ['toeOff', 29.756], ['totalTurning', 54.756], ['crestAngle', 90], ['governs', 5],
];

describe('the worked case', () => {
  const figures = figuresFor();
  test.each(BY_HAND)('%s is %d', (key, value) => expect(Math.abs(figures[key]!.value - value)).toBeLessThan(0.00051));
  test('no measure was left out, so none of it is estimated', () => {
    expect(Object.values(figures).filter(({ estimated }) => estimated)).toEqual([]);
  });
  test('the rocker angle is that of a line drawn from the apex to the tip', () =>
    expect(Math.tan((figures.rockerAngle!.value * Math.PI) / 180) * (282 - 174.84)).toBeCloseTo(33.123 - 1.434, 2));
  test('the side tipping angle is that of half a heel of 66 mm under a pivot 114.594 mm high', () =>
    expect(figures.sideTipping!.value).toBeCloseTo((Math.atan(33 / 114.594) * 180) / Math.PI, 3));
  test('the outsole is 291 mm long along the face and the roll covers its part ahead of the strike point', () => {
    expect(figures.outsoleLength!.value).toBeCloseTo(291, 0);
    expect(figures.rollLength!.value).toBeLessThan(figures.outsoleLength!.value);
    expect(figures.rollShare!.value).toBeCloseTo(figures.rollLength!.value / 890, 9);
    expect(figures.midRadiusShare!.value).toBeCloseTo(924.669 / 890, 5);
  });
  test('published values stand beside the roll and the mid radius and are not called a recommendation', () => {
    expect(figures.rollShare!.label).toContain('0.29');
    expect(figures.rollShare!.label).toContain('Adamczyk and Kuo 2013');
    expect(figures.midRadiusShare!.label).toContain('0.3, Adamczyk, Collins and Kuo 2006');
    for (const { label } of Object.values(figures)) expect(label).not.toMatch(/recommend/i);
  });
});

describe('lengths along the face against a walk in small steps', () => {
  test.each([{}, { left: { order: { standingFlat: 30, toe: { rule: 'pivot-height' }, apex: 78 } } }] satisfies Part[])('%o', (change) => {
    const { shoes: [shoe], fitting } = designWith(change), figures = byKey(shoe!, fitting);
    if (shoe!.kind !== 'rocker') throw new Error('the left shoe is a rocker here');
    const { face } = shoe!.shape, walk = (from: number, to: number): number => {
      let sum = 0;
      for (let i = 0, n = 20000; i < n; i++) {
        const a = from + ((to - from) * i) / n, b = from + ((to - from) * (i + 1)) / n;
        sum += Math.hypot(b - a, heightAt(face, b) - heightAt(face, a));
      }
      return sum;
    };
    expect(figures.outsoleLength!.value).toBeCloseTo(walk(0, 282), 3);
    expect(figures.rollLength!.value).toBeCloseTo(walk(shoe!.rocker.strikePoint[0], 282), 3);
  });
});

describe('weights', () => {
  test('the layers make up the sole', () => {
    const { foamVolume, outsoleVolume, stiffenerVolume, soleVolume, foamWeight, outsoleWeight, stiffenerWeight, soleWeight } = figuresFor();
    const parts = foamVolume!.value + outsoleVolume!.value + stiffenerVolume!.value;
    expect(parts / soleVolume!.value).toBeCloseTo(1, 3);
    expect(soleWeight!.value).toBeCloseTo(foamWeight!.value + outsoleWeight!.value + stiffenerWeight!.value, 9);
  });
  test('densities of firm foam, microcellular rubber and laid carbon: 0.2, 0.5 and 1.44 g/cm³', () => {
    const { foamVolume, outsoleVolume, stiffenerVolume, foamWeight, outsoleWeight, stiffenerWeight } = figuresFor();
    expect(foamWeight!.value / foamVolume!.value).toBeCloseTo(0.2, 9);
    expect(outsoleWeight!.value / outsoleVolume!.value).toBeCloseTo(0.5, 9);
    expect(stiffenerWeight!.value / stiffenerVolume!.value).toBeCloseTo(1.44, 9);
  });
  test('a left and a right sole weigh the same', () => {
    const change = bothRockers();
    expect(figuresFor(change, 'right').soleWeight!.value).toBeCloseTo(figuresFor(change, 'left').soleWeight!.value, 9);
  });
  test('the whole shoe is known where what stands above the sole was weighed', () => {
    const fitting = fittingWith(), weighed = { ...fitting, shoes: { ...fitting.shoes, left: { ...fitting.shoes.left!, upperWeight: 300 } } };
    const figures = byKey(designOf(weighed).shoes[0]!, weighed);
    expect(figures.shoeWeight!.value).toBeCloseTo(300 + figures.soleWeight!.value, 9);
    expect(figuresFor().shoeWeight).toBeUndefined();
  });
});

describe('a match', () => {
  test('stands where the rocker stands, its raise the difference of the two', () => {
    const { raiseSeat, raiseBall, standsSeat, standsBall, seatHeight, ballHeight, thicknessTip } = figuresFor({}, 'right');
    expect(raiseSeat!.value).toBeCloseTo(39.123 - 27, 3);
    expect(raiseBall!.value).toBeCloseTo(27.123 - 15, 3);
    expect(standsSeat!.value).toBeCloseTo(39.123, 3);
    expect(standsBall!.value).toBeCloseTo(27.123, 3);
    expect(seatHeight!.value).toBeCloseTo(raiseSeat!.value, 9);
    expect(ballHeight!.value).toBeCloseTo(raiseBall!.value, 9);
    expect(thicknessTip!.value).toBeCloseTo(5, 9);
  });
  test('a level one has heights and a raise of nothing, and no sole', () => {
    const figures = figuresFor({ right: { order: { seatHeightNow: 39, ballHeightNow: 27 } } }, 'right');
    expect(Object.keys(figures)).toEqual(['raiseSeat', 'raiseBall', 'standsSeat', 'standsBall']);
  });
});

describe('the table of stations', () => {
  test('runs in tens from the heel to the tip, and to the ends of an edge that stands out', () => {
    const { shoes: [rocker] } = designWith({ left: { order: { edgeBeyond: { heel: 2, ball: 2, toe: 3 } } } });
    const places = stationsOf(rocker!).map(({ x }) => x);
    expect(places.slice(0, 3)).toEqual([-2, 0, 10]);
    expect(places.slice(-3)).toEqual([280, 282, 285]);
  });
  test('ends at heel and tip where the edge is flush; a place is named once', () => {
    const places = stationsOf(designWith().shoes[0]!).map(({ x }) => x);
    expect([places[0], places.at(-1), new Set(places).size]).toEqual([0, 282, places.length]);
  });
  test('heights add up', () => {
    for (const shoe of designWith().shoes) for (const { ground, thickness, upper, foam } of stationsOf(shoe)) {
      expect(ground + thickness).toBeCloseTo(upper, 9);
      expect(foam).toBeLessThan(thickness);
    }
  });
  test('the square thickness is the way from the ground face to the upper face, square to it', () => {
    const { shoes: [shoe] } = designWith({ left: { order: { crestAngle: 96 } } });
    if (shoe?.kind !== 'rocker') throw new Error('the left shoe is a rocker here');
    const { face, line, upper, build } = shoe.shape, step = 1e-5;
    const ground = (x: number, y: number): number => heightAt(face, line.apexX + (x - line.apexX) * Math.cos(line.turn) + y * Math.sin(line.turn));
    for (const { x, square } of stationsOf(shoe)) {
      const slopeX = (ground(x + step, 0) - ground(x - step, 0)) / (2 * step), slopeY = (ground(x, step) - ground(x, -step)) / (2 * step);
      const size = Math.hypot(slopeX, slopeY, 1), end = [x - (square * slopeX) / size, -(square * slopeY) / size, ground(x, 0) + square / size] as const;
      expect(upper(end[0], end[1]) + build).toBeCloseTo(end[2], 4);
    }
  });
  test('no sole, no stations', () =>
    expect(stationsOf(designWith({ right: { order: { seatHeightNow: 39, ballHeightNow: 27 } } }).shoes[1]!)).toEqual([]));
});

describe('in words', () => {
  const figure = (value: number, unit: Figure['unit'], digits: number, estimated = false): Figure => ({ key: 'lean', label: '', value, unit, digits, estimated });
  test.each([
    [figure(35.123, 'mm', 1), '35.1 mm'], [figure(3.945, 'deg', 1), '3.9°'], [figure(143.6, 'g', 0), '144 g'], [figure(62, '%', 1), '62.0 %'],
    [figure(395.46, 'cm³', 1), '395.5 cm³'], [figure(0.302, '', 2), '0.30'], [figure(35.123, 'mm', 1, true), '35.1 mm (est.)'], [figure(-0.01, 'mm', 1), '0.0 mm'],
  ])('%o', (given, words) => expect(inWords(given)).toBe(words));
});

/** A fitting in which one measure reads differently and is marked estimated. */
function nudged(fitting: Fitting, side: Side, field: InputField): Fitting | undefined {
  const shoe = fitting.shoes[side], measure = shoe && inputOf(field).of(shoe);
  if (!shoe || !measure) return undefined;
  const other: Measure = { ...measure, value: measure.value + (inputOf(field).unit === 'deg' ? 0.004 : 0.4), origin: 'estimated', rule: 'guessed' };
  const swap = (part: unknown): unknown => {
    if (part === measure) return other;
    if (Array.isArray(part) || typeof part !== 'object' || part === null) return part;
    return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, swap(value)]));
  };
  return { ...fitting, shoes: { ...fitting.shoes, [side]: swap(shoe) as ShoeFitting } };
}

/** Every kind of shape whose figures hang on their measures in another way. */
const KINDS: Record<string, Part> = {
  'a fused ankle and a match': {},
  'a turned crest': { left: { order: { crestAngle: 97 } } },
  'a dished bottom': { left: { last: { camber: 3 } } },
  'a tapered heel': { left: { order: { taper: { heelInner: 5, heelOuter: -6 } } } },
  'a free ankle, apex by the toe joint': { left: { foot: { stiff: { joint: 'toe joint', state: 'arthritic' }, ankleAngle: undefined, hipAhead: 58 }, order: { apex: undefined } } },
  'a flat that is cut off under the ankle': { left: { foot: { ankleAngle: -3 }, order: { standingFlat: 60 } } },
  'a back edge that sets the height': { left: { last: { toeSpring: 28 }, order: { minima: { edge: 14 } } } },
  'a seat height asked for': { left: { order: { seatHeightAtLeast: 42 } } },
  'a toe radius given': { left: { order: { toe: { rule: 'given', radius: 240 } } } },
  'a toe spring asked for': { left: { order: { toe: { rule: 'for-toe-spring', toeSpring: 33 } } } },
  'two rockers, one higher': bothRockers({ last: { toeSpring: 12 } }),
};

const moved = (a: Figure, b: Figure | undefined): boolean => b === undefined || Math.abs(a.value - b.value) > 1e-5;

/** Coarse facets: volumes need not be fine to show what they hang on. */
const COARSE: Part = { making: { chordGap: 0.5 } };

test.each(Object.entries(KINDS))('whatever changes with an estimated measure is marked estimated: %s', (_, change) => {
  const fitting = fittingWith({ ...change, ...COARSE }), before = designOf(fitting).shoes.map((shoe) => figuresOf(shoe, fitting));
  const unmarked = SIDES.flatMap((side) => INPUT_FIELDS.flatMap((field): string[] => {
    const other = nudged(fitting, side, field);
    if (!other) return [];
    return designOf(other).shoes.flatMap((shoe, i) => {
      const now = byKey(shoe, other);
      return before[i]!.filter((was) => now[was.key] !== undefined && moved(was, now[was.key]) && !now[was.key]!.estimated)
        .map(({ key }) => `${shoe.side} ${key} changes with ${side} ${field}`);
    });
  }));
  expect(unmarked).toEqual([]);
}, 30_000);

test('marking tells figures apart: an estimated hip leaves the pitch alone', () => {
  const figures = figuresFor({ wearer: { crotchHeight: 800 }, left: { foot: { hipHeight: undefined } } });
  expect(figures.radiusMid!.estimated).toBe(true);
  expect(figures.pitchOfSole!.estimated).toBe(false);
  expect(figures.tilt!.estimated).toBe(false);
  expect(inWords(figures.radiusMid!)).toMatch(/ \(est\.\)$/);
});

test('a default strike angle marks the heel and not the toe', () => {
  const figures = figuresFor({ left: { foot: { strikeAngle: undefined } } });
  expect([figures.strikeAsked!.estimated, figures.heelRise!.estimated, figures.seatHeight!.estimated, figures.tipSlope!.estimated]).toEqual([true, true, false, false]);
});

test('every figure of every kind of shoe has its line in the table of what it rests on', () => {
  for (const change of Object.values(KINDS)) {
    for (const shoe of designWith(change).shoes) {
      const table = shoe.kind === 'rocker' ? ROCKER_RESTS : MATCH_RESTS, fitting = fittingWith(change);
      const keys = figuresOf(shoe, fitting).map(({ key }) => key);
      expect(keys.filter((key) => !(key in table))).toEqual([]);
      expect(new Set(keys).size).toBe(keys.length);
      for (const { value } of figuresOf(shoe, fitting)) expect(Number.isFinite(value)).toBe(true);
    }
  }
});
