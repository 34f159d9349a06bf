import { describe, expect, test } from 'vitest';
import { figuresOf, inWords, stationsOf, type Figure, type FigureKey } from '../../src/checks/figures.ts';
import { INPUT_FIELDS, inputOf, type InputField } from '../../src/checks/inputs.ts';
import { MATCH_RESTS, ROCKER_RESTS } from '../../src/checks/restsOn.ts';
import { designWith as designingWith } from '../../src/designWith.ts';
import type { Fitting, ShoeFitting } from '../../src/fitting/fitting.ts';
import type { Measure } from '../../src/fitting/measure.ts';
import { SIDES, type Side } from '../../src/fitting/words.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { RockerShoe, Shoe } from '../../src/pair/shoe.ts';
import { heightWhenRolled, sampled } from '../judges/rolling.ts';
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

describe('what the roll does to ankle pivot and hip', () => {
  const outline = (shoe: RockerShoe): Point[] => sampled(shoe.shape.face, -5, 290);
  test.each([{}, { left: { order: { standingFlat: 30, apex: 65 } } }, { left: { foot: { stiff: { joint: 'toe joint', state: 'arthritic' }, ankleAngle: undefined, hipAhead: 58 } } }, { left: { foot: { strikeAngle: 3 } } }] satisfies Part[])('as rolling a row of points shows: %o', (change) => {
    const { shoes, fitting } = designWith(change), shoe = shoes[0]! as RockerShoe, figures = byKey(shoe, fitting), points = outline(shoe), { pivot, hip } = shoe.rocker;
    const rolled = (key: FigureKey): number => (figures[key]!.rolled! * Math.PI) / 180, begins = ((figures.heelJointAngle?.value ?? -3) * Math.PI) / 180;
    expect(figures.pivotRise!.rolled).toBeCloseTo(figures.apexRollAngle!.value, 9);
    expect(figures.hipDropStrike!.rolled).toBeCloseTo(-figures.strikeReached!.value, 9);
    expect(figures.hipDropToeOff!.rolled).toBeCloseTo(figures.toeOff!.value, 9);
    expect(figures.pivotRise!.value).toBeCloseTo(heightWhenRolled(points, pivot, rolled('pivotRise')) - heightWhenRolled(points, pivot, begins), 3);
    expect(figures.hipDropStrike!.value).toBeCloseTo(hip[1] - heightWhenRolled(points, hip, rolled('hipDropStrike')), 3);
    expect(figures.hipDropToeOff!.value).toBeCloseTo(hip[1] - heightWhenRolled(points, hip, rolled('hipDropToeOff')), 3);
    expect(heightWhenRolled(points, pivot, rolled('hipDropStrike'))).toBeCloseTo(heightWhenRolled(points, pivot, begins), 3);
  });
  test('the words say at which roll angle', () => expect(inWords(figuresFor().pivotRise!)).toBe('6.3 mm at 3.2°'));
});

describe('a turned crest', () => {
  const turned = (toe: Part): Values => figuresFor({ left: { order: { crestAngle: 100, toe } } });
  test('a toe spring asked for is the one the shoe gets', () => expect(turned({ rule: 'for-toe-spring', toeSpring: 30 }).toeSpringOfShoe!.value).toBeCloseTo(30, 6));
  test('slope at the tip and rocker angle are taken where the tip of the last lies along the walking line', () => {
    const { shoes, fitting } = designWith({ left: { order: { crestAngle: 100 } } }), shoe = shoes[0]! as RockerShoe, figures = byKey(shoe, fitting), { face } = shoe.shape;
    // The walking line goes 10 degrees to the outer side of the tip, which is set 4 mm to the inner side: so much nearer to the apex it lies along it.
    const run = (282 - 174.84) * Math.cos(Math.PI / 18) - 4 * Math.sin(Math.PI / 18), tip = 174.84 + run, rise = heightAt(face, tip) - heightAt(face, 174.84);
    expect(Math.tan((figures.rockerAngle!.value * Math.PI) / 180)).toBeCloseTo(rise / run, 9);
    expect(Math.tan((figures.tipSlope!.value * Math.PI) / 180)).toBeCloseTo((heightAt(face, tip + 1e-4) - heightAt(face, tip - 1e-4)) / 2e-4, 5);
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
      const y = x < 282 ? 0 : -4;
      const slopeX = (ground(x + step, y) - ground(x - step, y)) / (2 * step), slopeY = (ground(x, y + step) - ground(x, y - step)) / (2 * step);
      const size = Math.hypot(slopeX, slopeY, 1), end = [x - (square * slopeX) / size, y - (square * slopeY) / size, ground(x, y) + square / size] as const;
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

const isPart = (value: unknown): value is Part => typeof value === 'object' && value !== null;
/** Two changes as one; what either takes off stays off. */
const both = (a: Part, b: Part): Part =>
  Object.fromEntries([...new Set([...Object.keys(a), ...Object.keys(b)])].map((key) => {
    const one = a[key], other = b[key];
    return [key, !(key in b) ? one : isPart(one) && isPart(other) ? both(one, other) : other];
  }));

/** Measures from which the sheet's reader works out another, so they must be changed on the sheet itself. */
const READ_FROM = /heelPlates|prosthesis/;

/** The fitting of a sheet in which no measure was left out. */
function takenThroughout(change: Part): Fitting {
  const taken = (part: unknown): unknown => {
    if (Array.isArray(part) || !isPart(part)) return part;
    return 'origin' in part ? { value: part.value, origin: 'measured' } : Object.fromEntries(Object.entries(part).map(([key, one]) => [key, taken(one)]));
  };
  return taken(fittingWith(change)) as Fitting;
}

/** A fitting in which one measure reads differently and is marked estimated. */
function nudged(change: Part, side: Side, field: InputField): Fitting | undefined {
  const { unit, of } = inputOf(field), before = takenThroughout(change), by = unit === 'deg' ? 0.004 : 0.4;
  const held = before.shoes[side] && of(before.shoes[side]);
  if (!held) return undefined;
  const value = held.value + by, onSheet = unit === 'deg' ? (value * 180) / Math.PI : value;
  const within = field.split('.').reduceRight<unknown>((part, name) => ({ [name]: part }), onSheet) as Part;
  const fitting = READ_FROM.test(field) ? takenThroughout(both(change, { [side]: within })) : before, shoe = fitting.shoes[side]!, measure = of(shoe)!;
  const other: Measure = { ...measure, value, origin: 'estimated', rule: 'guessed' };
  const swap = (part: unknown): unknown => {
    if (part === measure) return other;
    if (Array.isArray(part) || typeof part !== 'object' || part === null) return part;
    return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, swap(one)]));
  };
  return { ...fitting, shoes: { ...fitting.shoes, [side]: swap(shoe) as ShoeFitting } };
}

const ALIGNED_FOOT: Part = { stiff: { joint: 'whole foot', state: 'prosthetic' }, ankleAngle: undefined, prosthesis: { heelRise: 12, shankLean: 4 } };
const ON_PLATES: Part = { ankleAngle: undefined, heelPlates: { height: 12, span: 180, hipAhead: 60 } };
/** A heel too short for its strike angle, tapered, under a sole whose tread or turned plan sets the height. */
const SHORT_HEEL: Part = { taper: { heelInner: 5, heelOuter: 6 }, minima: { tread: 20 } };
const FREE_FOOT: Part = { stiff: { joint: 'toe joint', state: 'arthritic' }, ankleAngle: undefined, hipAhead: 58 };
/** A shoe that any rocker stands above. */
const LOW: Part = { order: { seatHeightNow: 14, ballHeightNow: 5 } };
/** Every kind of shape whose figures hang on their measures in another way. */
const KINDS: Record<string, Part> = {
  'a fused ankle and a match': {},
  'a turned crest': { left: { order: { crestAngle: 97 } } },
  'a dished bottom': { left: { last: { camber: 3 } } },
  'a tapered heel': { left: { order: { taper: { heelInner: 5, heelOuter: -6, foreInner: 4 } } } },
  'a tapered raise': { right: { order: { taper: { heelInner: 5, heelOuter: -6, foreInner: 4 } } } },
  'a free ankle, apex by the toe joint': { left: { foot: FREE_FOOT, order: { apex: undefined } } },
  'a prosthetic foot': { left: { foot: ALIGNED_FOOT, order: { crestAngle: 97 } } },
  'a prosthetic foot on a short heel': { left: { foot: { ...ALIGNED_FOOT, strikeAngle: 40 }, order: SHORT_HEEL } },
  'a foot on heel plates': { left: { foot: ON_PLATES, order: { crestAngle: 97 } } },
  'a foot on heel plates and a short heel': { left: { foot: { ...ON_PLATES, strikeAngle: 40 }, order: SHORT_HEEL } },
  'a free ankle on a short heel': { left: { foot: { ...FREE_FOOT, strikeAngle: 40 }, order: SHORT_HEEL } },
  'a raise higher at the heel': { right: { upperWeight: 300, order: { seatHeightNow: 22 } } },
  'a raise higher at the heel and level to its tip': { right: { order: { seatHeightNow: 22, tip: 40 } } },
  'a match that is level already': { right: { order: { seatHeightNow: 39, ballHeightNow: 27 } } },
  'a seat height asked for over a thin back edge': { left: { last: { toeSpring: 28, camber: 2 }, order: { crestAngle: 97, minima: { edge: 14 }, seatHeightAtLeast: 46 } } },
  'a flat that is cut off under the ankle': { left: { foot: { ankleAngle: -3 }, order: { standingFlat: 60 } } },
  'a back edge that sets the height': { left: { last: { toeSpring: 28 }, order: { minima: { edge: 14 }, taper: { heelInner: 5, heelOuter: 5 } } } },
  'a toe joint behind the usual apex': { left: { foot: { ...FREE_FOOT, ballInner: 185 }, order: { apex: undefined, crestAngle: 94 } } },
  'a turned crest whose back edge sets the height': { left: { last: { toeSpring: 28 }, order: { crestAngle: 97, minima: { edge: 14 } } } },
  'a turned crest on a heel too short': { left: { foot: { strikeAngle: 40 }, last: { camber: 2 }, order: { crestAngle: 97, taper: { heelInner: 5, heelOuter: 6 } } } },
  'a heel too short for its strike angle': { left: { foot: { strikeAngle: 40 }, last: { heelBack: 1 } } },
  'a tip that is kept thick': { left: { order: { minima: { tread: 16 } } }, right: { order: { tip: 40 } } },
  'a seat height asked for': { left: { order: { seatHeightAtLeast: 42 } } },
  'a toe radius given': { left: { order: { toe: { rule: 'given', radius: 240 } } } },
  'a toe spring asked for': { left: { order: { toe: { rule: 'for-toe-spring', toeSpring: 33 } } } },
  'two rockers, one higher': bothRockers({ last: { toeSpring: 12 } }),
  'a client who was weighed': { wearer: { mass: 80 } },
  'a client who was weighed, on a turned crest and a dished bottom': { wearer: { mass: 95 }, left: { last: { camber: 3 }, order: { apex: 75, crestAngle: 104, standingFlat: 20 } }, right: LOW },
  'a client who was weighed, no heel arc and a given toe radius under a turned crest': { wearer: { mass: 140 }, left: { foot: { strikeAngle: 2 }, order: { crestAngle: 97, foam: 'light EVA', toe: { rule: 'given', radius: 240 } } }, right: LOW },
  'a turned crest far ahead of the standing point': { left: { foot: { ankleAngle: -2 }, order: { crestAngle: 97 } } },
  'an upper that was weighed': { left: { upperWeight: 300 }, right: { upperWeight: 300 } },
};

const moved = (a: Figure, b: Figure): boolean => Math.abs(a.value - b.value) > 1e-7;

/** Coarse facets: volumes need not be fine to show what they hang on. */
const COARSE: Part = { making: { chordGap: 0.5 } };

/** One measure of one side put otherwise, one figure of one shoe looked at. */
interface Look { readonly name: string; readonly moves: boolean; readonly marked: boolean }

/** The shoes alone: nothing that is found about them changes a figure. */
function shoesOf(fitting: Fitting): readonly Shoe[] {
  const designing = designingWith(() => [], fitting, 'quick');
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join('\n'));
  return designing.design.shoes;
}

function looksAt(change: Part): Look[] {
  const given = both(COARSE, change), fitting = takenThroughout(given), before = shoesOf(fitting).map((shoe) => figuresOf(shoe, fitting));
  return SIDES.flatMap((side) => INPUT_FIELDS.flatMap((field): Look[] => {
    const other = nudged(given, side, field);
    if (!other) return [];
    return shoesOf(other).flatMap((shoe, i) => {
      const now = byKey(shoe, other), whose = shoe.side === side ? '' : 'the other shoe\'s ';
      return before[i]!.flatMap((was): Look[] => {
        const is = now[was.key];
        return is ? [{ name: `${shoe.kind} ${was.key} with ${whose}${field}`, moves: moved(was, is), marked: is.estimated }] : [];
      });
    });
  }));
}
const LOOKS = Object.fromEntries(Object.entries(KINDS).map(([name, change]) => [name, looksAt(change)]));

test.each(Object.keys(KINDS))('whatever changes with an estimated measure is marked estimated: %s', (name) =>
  expect(LOOKS[name]!.filter(({ moves, marked }) => moves && !marked)).toEqual([]));

test('whatever is marked for a measure of its own shoe changes with it, in one kind of shoe at least', () => {
  const looks = Object.values(LOOKS).flat().filter(({ name }) => !name.includes('other shoe')), moving = new Set(looks.filter(({ moves }) => moves).map(({ name }) => name));
  expect([...new Set(looks.filter(({ marked, name }) => marked && !moving.has(name)).map(({ name }) => name))]).toEqual([]);
});

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
