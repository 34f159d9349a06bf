import { describe, expect, test } from 'vitest';
import type { Finding, Severity } from '../../src/checks/finding.ts';
import { ballHeight, pitchOfSole, seatHeight } from '../../src/checks/heights.ts';
import { alignedHeelRise } from '../../src/checks/prosthesis.ts';
import { forwardAngle, strikeReached, tipSlope, toeClearance, totalTurning } from '../../src/checks/rolling.ts';
import type { Seen } from '../../src/checks/seen.ts';
import { sideStability } from '../../src/checks/stability.ts';
import { lean, standingPoint } from '../../src/checks/standing.ts';
import { thinFoam, thinSole } from '../../src/checks/thickness.ts';
import { soleWeight, shoeWeight, weightDifference } from '../../src/checks/weight.ts';
import { publishedWindow } from '../../src/checks/window.ts';
import { ballsLevel } from '../../src/checks/pairing.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { bothRockers, designOf, designWith, fittingWith, rockerSeen, type Numbers, type Part } from './support.ts';

type Check = (seen: Seen<RockerShoe>) => Finding[];
type Outcome = readonly [code: string, severity: Severity] | undefined;

const saying = (findings: readonly Finding[]): Outcome => findings[0] && [findings[0].code, findings[0].severity];
const ALIGNED: Part = {
  left: { foot: { stiff: { joint: 'whole foot', state: 'prosthetic' }, ankleAngle: undefined, prosthesis: { heelRise: 12, shankLean: 4 } } },
};
const NAMED: Part = { left: { foot: { ...(ALIGNED as { left: { foot: Part } }).left.foot, prosthesis: { heelRise: 12, shankLean: 4, prosthetist: 'P. Foot' } } } };
const FEMALE: Part = { wearer: { sex: 'female' } }, UNKNOWN: Part = { wearer: { sex: undefined } };
const VIDEO: Part = { left: { foot: { toeOffAngle: 35 } } };

/** Each row: the check, a figure, and a value just inside or just outside its limit with what is then said. */
const AT_LIMITS: ReadonlyArray<readonly [name: string, check: Check, numbers: Numbers, expected: Outcome, change?: Part]> = [
  ['seat at 60', seatHeight, { seatHeight: 60 }, undefined],
  ['seat above 60', seatHeight, { seatHeight: 60.1 }, ['SEAT_HIGH', 'warn']],
  ['ball at 35', ballHeight, { ballHeight: 35 }, undefined],
  ['ball above 35', ballHeight, { ballHeight: 35.1 }, ['BALL_HIGH', 'warn']],
  ['ball at 40', ballHeight, { ballHeight: 40 }, ['BALL_HIGH', 'warn']],
  ['ball above 40', ballHeight, { ballHeight: 40.1 }, ['BALL_HIGH', 'stop']],
  ['pitch 1 mm off', pitchOfSole, { pitchOfSole: 13 }, undefined],
  ['pitch 1.1 mm off', pitchOfSole, { pitchOfSole: 10.9 }, ['PITCH_DIFFERS', 'warn']],
  ['lean below 0', lean, { lean: -0.1 }, ['HIP_BEHIND_PIVOT', 'stop']],
  ['lean 0', lean, { lean: 0 }, ['LEAN_UNUSUAL', 'warn']],
  ['lean 1.9', lean, { lean: 1.9 }, ['LEAN_UNUSUAL', 'warn']],
  ['lean 2', lean, { lean: 2 }, undefined],
  ['lean 6', lean, { lean: 6 }, undefined],
  ['lean 6.1', lean, { lean: 6.1 }, ['LEAN_UNUSUAL', 'warn']],
  ['standing on the mid arc', standingPoint, { standingPoint: 60 }, undefined],
  ['standing behind the heel joint', standingPoint, { standingPoint: 59 }, ['STANDING_OFF_ARC', 'warn']],
  ['standing ahead of the apex', standingPoint, { standingPoint: 175 }, ['STANDING_OFF_ARC', 'warn']],
  ['strike reached', strikeReached, { strikeReached: 25 }, undefined],
  ['strike missed', strikeReached, { strikeReached: 24.9 }, ['STRIKE_NOT_REACHED', 'warn']],
  ['tip at 45', tipSlope, { tipSlope: 45 }, undefined],
  ['tip above 45', tipSlope, { tipSlope: 45.1 }, ['TIP_STEEP', 'warn']],
  ['forward 21.9', forwardAngle, { toeOff: 21.9 }, ['FORWARD_ANGLE', 'warn']],
  ['forward 22', forwardAngle, { toeOff: 22 }, ['FORWARD_ANGLE', 'note']],
  ['forward 39.9', forwardAngle, { toeOff: 39.9 }, ['FORWARD_ANGLE', 'note']],
  ['forward 40', forwardAngle, { toeOff: 40 }, undefined],
  ['forward 35 where toe-off was measured at 35', forwardAngle, { toeOff: 35 }, undefined, VIDEO],
  ['forward 34.9 where toe-off was measured at 35', forwardAngle, { toeOff: 34.9 }, ['FORWARD_ANGLE', 'note'], VIDEO],
  ['turning 39.9', totalTurning, { totalTurning: 39.9 }, ['TURNING', 'warn']],
  ['turning 40', totalTurning, { totalTurning: 40 }, ['TURNING', 'note']],
  ['turning 50', totalTurning, { totalTurning: 50 }, undefined],
  ['tip 9.9 high', toeClearance, { toeSpringOfShoe: 9.9 }, ['TOE_CLEARANCE', 'warn']],
  ['tip 10 high', toeClearance, { toeSpringOfShoe: 10 }, ['TOE_CLEARANCE', 'note']],
  ['tip 15 high', toeClearance, { toeSpringOfShoe: 15 }, undefined],
  ['tipping at 16', sideStability, { sideTipping: 16 }, undefined],
  ['tipping at 15.9', sideStability, { sideTipping: 15.9 }, ['SIDE_TIPPING', 'warn']],
  ['foam 2 mm', thinFoam, { foamLeft: 2 }, undefined],
  ['foam 1.9 mm', thinFoam, { foamLeft: 1.9 }, ['THIN_FOAM', 'warn']],
  ["a man's sole at 350 g", soleWeight, { soleWeight: 350 }, undefined],
  ["a man's sole above 350 g", soleWeight, { soleWeight: 351 }, ['SOLE_HEAVY', 'warn']],
  ["a woman's sole at 280 g", soleWeight, { soleWeight: 280 }, undefined, FEMALE],
  ["a woman's sole above 280 g", soleWeight, { soleWeight: 281 }, ['SOLE_HEAVY', 'warn'], FEMALE],
  ['sex not given, above 280 g', soleWeight, { soleWeight: 281 }, ['SOLE_HEAVY', 'warn'], UNKNOWN],
  ['apex 52 %', publishedWindow, { apexShare: 52 }, undefined],
  ['apex 51.9 %', publishedWindow, { apexShare: 51.9 }, ['PUBLISHED_APEX', 'note']],
  ['apex 67 %', publishedWindow, { apexShare: 67 }, undefined],
  ['apex 67.1 %', publishedWindow, { apexShare: 67.1 }, ['PUBLISHED_APEX', 'note']],
  ['apex angle 80°', publishedWindow, { crestAngle: 80 }, undefined],
  ['apex angle 100.1°', publishedWindow, { crestAngle: 100.1 }, ['PUBLISHED_APEX_ANGLE', 'note']],
  ['rocker angle 20°', publishedWindow, { rockerAngle: 20 }, undefined],
  ['rocker angle 9.9°', publishedWindow, { rockerAngle: 9.9 }, ['PUBLISHED_ROCKER_ANGLE', 'note']],
  ['aligned heel rise 3 mm off', alignedHeelRise, { pitchOfSole: 15 }, undefined, ALIGNED],
  ['aligned heel rise 3.1 mm off', alignedHeelRise, { pitchOfSole: 8.9 }, ['PROSTHESIS_HEEL_RISE', 'warn'], ALIGNED],
  ['aligned heel rise 6 mm off', alignedHeelRise, { pitchOfSole: 18 }, ['PROSTHESIS_HEEL_RISE', 'warn'], ALIGNED],
  ['aligned heel rise 6.1 mm off', alignedHeelRise, { pitchOfSole: 18.1 }, ['PROSTHESIS_HEEL_RISE', 'stop'], ALIGNED],
  ['aligned heel rise 6.1 mm off, prosthetist named', alignedHeelRise, { pitchOfSole: 18.1 }, ['PROSTHESIS_HEEL_RISE', 'warn'], NAMED],
  ['no prosthesis', alignedHeelRise, { pitchOfSole: 40 }, undefined],
];

for (const [name, check, numbers, expected, change] of AT_LIMITS)
  test(name, () => expect(saying(check(rockerSeen(numbers, change)))).toEqual(expected));

test.each([58, 60, 62, 63, 63.5, 64])('a heel %d mm wide is set wider by what is named, which is never nothing', (heelWidth) => {
  const of = (width: number): Finding | undefined => sideStability(rockerSeen({}, { left: { last: { heelWidth: width } } }))[0];
  const found = of(heelWidth);
  if (!found) return;
  const wider = Number(/Set the heel ([\d.]+) mm wider/.exec(found.text)![1]);
  expect(wider).toBeGreaterThan(0);
  expect(of(heelWidth + 2 * wider)).toBeUndefined();
  expect(found.text).not.toMatch(/tips sideways at 16/);
});
test('what is lacking by a hair is half a millimetre, not nothing', () => expect(sideStability(rockerSeen({ sideTipping: 15.999 }))[0]!.text).toMatch(/at 15\.9° .* Set the heel 0\.5 mm wider/));

describe('what is no number passes no limit', () => {
  for (const [name, check, numbers, , change] of AT_LIMITS.filter(([row]) => row !== 'no prosthesis')) test(name, () => {
    const broken = Object.fromEntries(Object.keys(numbers).map((key) => [key, NaN]));
    expect(check(rockerSeen(broken, change)).length).toBeGreaterThan(0);
  });
  test('nor does the guard of the thickness', () => {
    const seen = rockerSeen(), { rocker } = seen.shoe;
    const spared = (spare: number): Seen<RockerShoe> => ({ ...seen, shoe: { ...seen.shoe, rocker: { ...rocker, thinnest: { ...rocker.thinnest, spare } } } });
    expect(thinSole(spared(0))).toEqual([]);
    expect(thinSole(spared(-0.001)).map(({ code, severity }) => [code, severity])).toEqual([['THIN_SOLE', 'stop']]);
    expect(thinSole(spared(NaN))).toHaveLength(1);
  });
});

describe('the whole shoe', () => {
  const upper = (upperWeight: number, seen: Seen<RockerShoe>): Seen<RockerShoe> =>
    ({ ...seen, shoe: { ...seen.shoe, fitting: { ...seen.shoe.fitting, upperWeight } } });
  test('is weighed only where what stands above the sole was', () => expect(shoeWeight(rockerSeen({ shoeWeight: 900 }))).toEqual([]));
  test.each([[650, 0], [651, 1]])('of a man at %d g', (weight, count) => expect(shoeWeight(upper(400, rockerSeen({ shoeWeight: weight })))).toHaveLength(count));
  test.each([[500, 0], [501, 1], [NaN, 1]])('of a woman at %d g', (weight, count) => expect(shoeWeight(upper(300, rockerSeen({ shoeWeight: weight }, FEMALE)))).toHaveLength(count));
});

describe('the two weights of a pair', () => {
  const pair = (left: Numbers, right: Numbers, uppers?: readonly [number, number]): Seen[] => {
    const { shoes, fitting } = designWith(bothRockers());
    return shoes.map((shoe, i) => ({
      shoe: uppers ? { ...shoe, fitting: { ...shoe.fitting, upperWeight: uppers[i]! } } : shoe,
      fitting, number: (key) => [left, right][i]![key] ?? NaN, place: () => ({}), estimates: [], pace: 'careful',
    }));
  };
  test.each([[150, 180, 0], [150, 181, 1], [181, 150, 1], [150, NaN, 1]])('soles of %d and %d g', (left, right, count) =>
    expect(weightDifference(pair({ soleWeight: left }, { soleWeight: right }))).toHaveLength(count));
  test('whole shoes are compared where both were weighed', () => {
    expect(weightDifference(pair({ soleWeight: 100, shoeWeight: 500 }, { soleWeight: 200, shoeWeight: 530 }, [400, 330]))).toEqual([]);
    expect(weightDifference(pair({ shoeWeight: 500 }, { shoeWeight: 531 }, [400, 330]))[0]).toMatchObject({ severity: 'warn', measured: 31, limit: 30, unit: 'g' });
  });
  test('a raise beside a rocker only asks for the scale', () => {
    const found = designWith().findings.find(({ code }) => code === 'WEIGHT_DIFFERS');
    expect(found?.severity).toBe('note');
    expect(found?.text).toContain('upperWeight');
  });
});

describe('two rockers', () => {
  const balls = (off: number, legDifference: Part = {}): Finding[] => {
    const { shoes, fitting } = designWith({ ...bothRockers(), wearer: { legDifference } });
    const seen = shoes.map((shoe, i): Seen => ({ shoe, fitting, number: () => (i === 0 ? 30 + off : 30), place: () => ({}), estimates: [], pace: 'careful' }));
    return ballsLevel(seen, fitting);
  };
  test.each([[1, 0], [-1, 0], [1.1, 1], [-1.1, 1], [NaN, 1]])('with balls %d mm apart', (off, count) => expect(balls(off)).toHaveLength(count));
  test('the leg difference counts: the short side is to stand higher', () => {
    expect(balls(6, { correct: 6, shorter: 'left' })).toEqual([]);
    expect(balls(0, { correct: 6, shorter: 'left' })).toHaveLength(1);
  });
  test('lasts of unlike pitch stand unlike at the ball', () => {
    const found = designWith(bothRockers({ last: { pitch: 15 } })).findings.find(({ code }) => code === 'BALLS_NOT_LEVEL');
    expect(found?.measured).toBeCloseTo(3, 6);
  });
});

test('the words name the limit that holds and the basis', () => {
  const [heavy] = soleWeight(rockerSeen({ soleWeight: 300 }, UNKNOWN));
  expect(heavy).toMatchObject({ limit: 280, measured: 300, unit: 'g', side: 'left', basis: 'common practice' });
  expect(heavy!.text).toContain('sex not given');
  const [named] = alignedHeelRise(rockerSeen({ pitchOfSole: 18.1 }, NAMED));
  expect(named!.text).toContain('P. Foot');
  for (const finding of publishedWindow(rockerSeen({ apexShare: 70, crestAngle: 70, rockerAngle: 30 }))) expect(finding.basis).toBe('Preece 2017, Chapman 2013, Ghomian 2019');
  expect(publishedWindow(rockerSeen({ apexShare: 70 }))[0]!.text).toContain('from the heel');
});

test('a design that keeps to every limit has no stop and no warning about its shape', () => {
  const quiet = fittingWith({ left: { last: { heelWidth: 70 }, order: { minima: { tip: 7 } } } });
  const found = designOf(quiet).findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code);
  expect(found).toEqual([]);
});
