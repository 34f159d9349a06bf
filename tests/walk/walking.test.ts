import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { bodyBetween } from '../../src/roll/ofSole.ts';
import { ordinaryBody } from '../../src/roll/ordinary.ts';
import { placedAt, UPRIGHT, type RollBody } from '../../src/roll/rollBody.ts';
import { solveRocker } from '../../src/profile/rocker.ts';
import { drivenRolls } from '../../src/walk/drive.ts';
import { momentAbout, stepFigures } from '../../src/walk/figures.ts';
import { FLAT_WITHIN, frameAt, laid, tracesOf, type WalkOn } from '../../src/walk/frame.ts';
import { MOMENTS, phaseAt } from '../../src/walk/phases.ts';
import { curveOf, MEAN_CURVE, type StanceCurve } from '../../src/walk/stanceCurve.ts';
import { stridesAt } from '../../src/walk/step.ts';
import { walkingOf } from '../../src/walk/walking.ts';
import { designOf, job, JOBS, rocker } from '../exports/jobs.ts';
import { shapes } from '../support/cases.ts';
import { chanceFrom } from '../support/random.ts';
import { mean, stances } from './stances.ts';

/** A wheel with a corner at each end. */
const wheel = (radius: number, from: number, to: number): RollBody => {
  const end = (angle: number): Point => [radius * Math.sin(degrees(angle)), radius - radius * Math.cos(degrees(angle))];
  return { pieces: [
    { kind: 'corner', at: end(from), from: -UPRIGHT, to: degrees(from) }, { kind: 'arc', centre: [0, radius], radius, from: degrees(from), to: degrees(to) },
    { kind: 'corner', at: end(to), from: degrees(to), to: UPRIGHT },
  ] };
};

/** A shank that turns at one speed. */
const steady = (from: number, to: number): StanceCurve => {
  const rows = Array.from({ length: 101 }, (_, i) => ({ share: i / 100, shank: degrees(from + ((to - from) * i) / 100) }));
  return curveOf({ kind: 'table', rows });
};
const on = (body: RollBody, pivot: Point, curve: StanceCurve, flatWithin = 0): WalkOn =>
  ({ body, carried: { pivot, hip: [pivot[0], 900], ball: [140, 20] }, leg: 800, curve, rolls: drivenRolls(curve, { kind: 'locked', lean: 0, range: 0 }), flatWithin });

describe('a wheel of 100 about the pivot, driven at one speed', () => {
  const walk = on(wheel(100, -20, 30), [0, 100], steady(-25, 40)), step = stepFigures(walk);
  test('carries the share of stance that it covers of the turning', () => {
    expect(step.carried).toBeCloseTo(50 / 65, 9);
    expect(step.corners.map(({ corner, from, to, past }) => [corner, from, to, inDegrees(past)])).toEqual([
      ['rear corner', 0, expect.closeTo(5 / 65, 9), expect.closeTo(5, 9)], ['front corner', expect.closeTo(55 / 65, 9), 1, expect.closeTo(10, 9)],
    ]);
  });
  test('rolls over radius times angle of the floor, and keeps the pivot level on the way', () => {
    expect(step.rolled).toBeCloseTo(100 * degrees(50), 9);
    for (const share of [0.1, 0.3, 0.8]) expect(frameAt(walk, share).pivot[1]).toBeCloseTo(100, 9);
    expect(step.pivot.contact).toBeLessThan(100);
  });
  test('the push goes through the pivot while it rolls on the arc', () => {
    for (const share of [0.1, 0.5, 0.8]) expect(momentAbout([0, 100], frameAt(walk, share))).toBeCloseTo(0, 9);
    expect(momentAbout([0, 100], frameAt(walk, 0.99))).not.toBeCloseTo(0, 3);
  });
  test('half of 65° with 26° of movement left in the ankle is all within the sole', () => {
    const curve = steady(-25, 40), held = { ...walk, rolls: drivenRolls(curve, { kind: 'locked', lean: 0, range: degrees(26) }) };
    expect(stepFigures(held)).toMatchObject({ carried: 1, corners: [], strike: expect.closeTo(degrees(-12), 9) as number, toeOff: expect.closeTo(degrees(27), 9) as number });
  });
});

describe('an ordinary shoe, heel corner 50 mm behind a pivot 100 up', () => {
  const body = ordinaryBody({ pivot: [50, 100], hip: [50, 900], ball: [190, 20] }, 0);
  test('drops the pivot 11.070 mm from 20° toes up', () => expect(stepFigures(on(body, [50, 100], steady(-20, 20), FLAT_WITHIN)).pivotDrop).toBeCloseTo(11.07, 3));
  test('is pushed from the heel to the ball while it is flat', () => {
    const at = (share: number): number => frameAt(on(body, [50, 100], steady(-20, 20), FLAT_WITHIN), share).contact[0];
    expect([at(0), at(0.44), at(0.5), at(0.56), at(1)]).toEqual([0, 0, 95, 190, 190].map((x) => expect.closeTo(x, 6) as number));
  });
  test('walks barefoot heights through a drop like those of people who do: 2.3 to 11.2 mm', () => {
    const ankle = mean(stances('ankle_y').map((up) => up[50]!)), square = ordinaryBody({ pivot: [45, ankle], hip: [45, 900], ball: [180, 10] }, 0);
    const walk = { ...on(square, [45, ankle], MEAN_CURVE, FLAT_WITHIN), rolls: drivenRolls(MEAN_CURVE, { kind: 'free' }) };
    expect(stepFigures(walk).pivotDrop).toBeGreaterThan(2.3);
    expect(stepFigures(walk).pivotDrop).toBeLessThan(11.2);
  });
});

describe('a moment of stance', () => {
  const [, given] = Object.entries(shapes)[0]!, { face, pivot, stance } = solveRocker(given), body = bodyBetween(face, 1, given.last.length - 1);
  const walk: WalkOn = { ...on(body, pivot, MEAN_CURVE), leg: stance.leg };
  test('lays the shoe where rolling without sliding brings it, upright and mirrored by nothing', () => {
    const chance = chanceFrom(11);
    for (let i = 0; i < 40; i++) {
      const frame = frameAt(walk, chance.between(0, 1)), point: Point = [chance.between(0, 280), chance.between(0, 120)];
      expect(laid(frame.place, point)).toEqual(placedAt(body, point, frame.roll).map((x) => expect.closeTo(x, 9) as number));
    }
  });
  test('the leg is as long as ever and lies along its line; the push is as hard as the curve says', () => {
    for (const share of [0, 0.33, 1]) {
      const { pivot: [x, z], hip, push, contact } = frameAt(walk, share), line = MEAN_CURVE.legLine[share * 100]!;
      expect(Math.hypot(hip[0] - x, hip[1] - z)).toBeCloseTo(stance.leg, 9);
      expect(Math.atan2(hip[0] - x, hip[1] - z)).toBeCloseTo(line, 9);
      expect(push).toBeCloseTo(MEAN_CURVE.push[share * 100]!, 9);
      expect(contact[1]).toBe(0);
    }
  });
  test('is held to its ends, and turns no shoe further than upright', () => {
    expect(frameAt(walk, -3)).toEqual(frameAt(walk, 0));
    expect(frameAt(walk, 7)).toEqual(frameAt(walk, 1));
    expect(frameAt({ ...walk, rolls: walk.rolls.map(() => 2) }, 0.5).roll).toBe(UPRIGHT);
  });
  test('phases follow each other', () => {
    expect(MOMENTS.map(([, share]) => phaseAt(share))).toEqual(MOMENTS.map(([phase]) => phase));
  });
  test('its traces are the ways of pivot and hip', () => {
    const { pivot: pivots, hip } = tracesOf(walk);
    expect([pivots.length, hip.length]).toEqual([101, 101]);
    expect([pivots[40], hip[40]]).toEqual([frameAt(walk, 0.4).pivot, frameAt(walk, 0.4).hip]);
  });
});

describe('a pair', () => {
  const same = walkingOf(designOf(job('K-9', { left: rocker('left'), right: rocker('right') }))), mixed = walkingOf(designOf(JOBS.pair));
  test('that is alike walks without a difference', () => {
    const { downToLeft, downToRight, ...rest } = same.differences!;
    for (const one of Object.values(rest)) expect(one).toBe(0);
    expect(downToLeft).toBe(downToRight);
  });
  test('that is not differs, and says in what', () => {
    expect(mixed.differences!.pivotDrop).toBeLessThan(-3);
    expect(mixed.differences!.carried).toBeCloseTo(mixed.shoes[0]!.figures.carried - mixed.shoes[1]!.figures.carried, 12);
  });
  test('a locked shoe rolls by the shank less its lean, a matched one as the foot turns', () => {
    const [left, right] = mixed.shoes, { lean } = designOf(JOBS.pair).shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [shoe.rocker.stance] : []))[0]!;
    expect(left!.figures.strike).toBeCloseTo(MEAN_CURVE.shank[0]! - lean, 12);
    expect(inDegrees(right!.figures.strike)).toBeCloseTo(-13.51, 2);
    expect([left!.borrowed, right!.borrowed]).toEqual([false, true]);
  });
  test('the hips of a levelled pair stand level', () => {
    const [left, right] = mixed.shoes.map(({ own }) => own.carried.pivot[1] + own.leg);
    expect(Math.abs(left! - right!)).toBeLessThan(6);
  });

  test('walks on half a cycle apart: planted in stance, above the floor in the air, nowhere with a jump', () => {
    for (const which of ['own', 'ordinary'] as const) for (let i = 0; i < 130; i++) {
      const now = stridesAt(mixed, i / 100, which), next = stridesAt(mixed, (i + 0.001) / 100, which);
      expect(now.some(({ onFloor }) => onFloor), `${i}`).toBe(true);
      now.forEach((one, k) => {
        expect(Math.hypot(one.pivot[0] - next[k]!.pivot[0], one.pivot[1] - next[k]!.pivot[1])).toBeLessThan(1);
        expect(Math.abs(one.hip[1] - next[k]!.hip[1])).toBeLessThan(1);
        const lowest = mixed.shoes[k]![which].body.pieces.flatMap((piece) => (piece.kind === 'corner' ? [laid(one.place, piece.at)[1]] : []));
        expect(Math.min(...lowest)).toBeGreaterThan(-1e-9);
      });
    }
    const [a, b] = [stridesAt(mixed, 0.1), stridesAt(mixed, 1.1)];
    a.forEach(({ pivot }, k) => expect(b[k]!.pivot[0] - pivot[0]).toBeCloseTo(mixed.stride, 6));
    expect(stridesAt(mixed, 0.2).map(({ onFloor }) => onFloor)).toEqual([true, false]);
  });
});
