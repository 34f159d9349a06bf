import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../src/checks/figures.ts';
import { slopeOffArc } from '../../src/checks/slope.ts';
import { squashedAway } from '../../src/checks/squash.ts';
import { codesOf, designWith, rockerSeen, type Part } from './support.ts';

const figure = (change: Part, key: string): number => {
  const { shoes, fitting } = designWith(change), found = figuresOf(shoes[0]!, fitting).find((one) => one.key === key);
  return found?.value ?? NaN;
};
/** Coarse facets: nothing here is about solids. */
const making: Part = { chordGap: 0.5 };
const WEIGHED: Part = { making, wearer: { mass: 80 } };
const HEAVY: Part = { making, wearer: { mass: 150 }, left: { order: { foam: 'light EVA' } } };

describe('an arc that is pressed away', () => {
  test.each([
    [{ squashSoft: 2, squashHard: 1, bulgeMid: 2 }, undefined], [{ squashSoft: 2.1, squashHard: 1, bulgeMid: 2 }, 'note'],
    [{ squashSoft: 3, squashHard: 2, bulgeMid: 2 }, 'note'], [{ squashSoft: 3, squashHard: 2.1, bulgeMid: 2 }, 'warn'],
  ] as const)('%o: %s', (numbers, severity) => expect(squashedAway(rockerSeen(numbers, WEIGHED))[0]?.severity).toBe(severity));
  test('is not spoken of where the client was not weighed', () => {
    expect(squashedAway(rockerSeen({ squashSoft: 3, squashHard: 3, bulgeMid: 2 }, { making }))).toEqual([]);
    expect(figure({ making }, 'squashSoft')).toBeNaN();
  });
  test('comes from soft foam under a heavy client; the foam that is named was put in and keeps the arc', () => {
    expect(codesOf(WEIGHED)).not.toContain('SQUASHED_AWAY');
    const [found] = squashedAway(rockerSeen({}, HEAVY)), named = /([a-z]+ EVA|cork) \(order\.foam\) squashes (\d+\.\d) mm at most/.exec(found!.text);
    if (!named) throw new Error(`no foam is named in: ${found!.text}`);
    const other: Part = { ...HEAVY, left: { order: { foam: named[1]! } } };
    expect(figure(other, 'squashSoft').toFixed(1)).toBe(named[2]);
    expect(figure(other, 'squashSoft')).toBeLessThanOrEqual(figure(other, 'bulgeMid'));
    expect(codesOf(other)).not.toContain('SQUASHED_AWAY');
  });
});

describe('a slope that rolls the standing point off the mid arc', () => {
  const GENTLE = (Math.atan(1 / 20) * 180) / Math.PI;
  test.each([[GENTLE + 0.01, -GENTLE - 0.01, undefined], [GENTLE - 0.01, -5, 'toe arc'], [5, -GENTLE + 0.01, 'heel arc']] as const)('apex at %d, heel joint at %d: %s', (apexRollAngle, heelJointAngle, onto) => {
    const [found] = slopeOffArc(rockerSeen({ apexRollAngle, heelJointAngle }, { making }));
    if (onto === undefined) expect(found).toBeUndefined(); else expect(found!.text).toContain(onto);
  });
  test('the apex that is named was put in and holds', () => {
    const NEAR: Part = { making, left: { order: { apex: 64, standingFlat: 30 } } }, [found] = slopeOffArc(rockerSeen({}, NEAR)), named = /apex of (\d+\.\d) %.* is then (\d+\.\d)° instead of (\d+\.\d)°/.exec(found!.text);
    if (!named) throw new Error(`no apex is named in: ${found!.text}`);
    const other: Part = { making, left: { order: { apex: Number(named[1]), standingFlat: 30 } } };
    expect(figure(other, 'apexRollAngle')).toBeGreaterThanOrEqual(GENTLE);
    expect([figure(other, 'tipSlope').toFixed(1), figure(NEAR, 'tipSlope').toFixed(1)]).toEqual([named[2], named[3]]);
    expect(codesOf(other)).not.toContain('SLOPE_OFF_ARC');
  });
});

test('what a flat buys is told where the client was weighed: the flat was put in', () => {
  const told = (change: Part): string => designWith(change).findings.find(({ code }) => code === 'FLAT_OFFERED')!.text;
  const ROUND: Part = { ...WEIGHED, left: { order: { apex: 66 } } }, FLAT: Part = { ...WEIGHED, left: { order: { apex: 66, standingFlat: 30 } } };
  const [, least, most, without] = /tilt (\d\.\d) to (\d\.\d) times as hard .* without a flat (\d\.\d) times/.exec(told(ROUND))!;
  expect([least, most, without]).toEqual([figure(FLAT, 'steadySoft'), figure(FLAT, 'steadyHard'), figure(ROUND, 'steadySoft')].map((value) => value.toFixed(1)));
  expect(told({ making, left: { order: { apex: 66 } } })).not.toContain('tilt');
});

test('what a roll figure says: the ordinary shoe drops the ankle, the rocker does not; nothing is claimed to heal', () => {
  const { shoes, fitting } = designWith(WEIGHED), figures = figuresOf(shoes[0]!, fitting), value = (key: string): number => figures.find((one) => one.key === key)!.value;
  expect(value('pivotDrop')).toBeCloseTo(0, 9);
  // A corner 67.495 mm behind a pivot 114.594 up, 25 degrees: h cos + d sin - h, by hand.
  expect(value('pivotDropOrdinary')).toBeCloseTo(114.594 * Math.cos(Math.PI * 25 / 180) + 67.495 * Math.sin(Math.PI * 25 / 180) - 114.594, 2);
  expect(value('turnHeel') + value('turnMid') + value('turnToe')).toBeCloseTo(value('totalTurning'), 9);
  expect([value('turnHeel'), value('turnMid'), value('turnToe')]).toEqual([25 - 3.945, 3.945 + 3.191, 29.756 - 3.191].map((turn) => expect.closeTo(turn, 2) as number));
  for (const { label } of figures) expect(label).not.toMatch(/heal|cure|relie|treat|prevent|protect|recommend/i);
});
