import { describe, expect, test } from 'vitest';
import { degrees, GRAVITY } from '../../src/geometry/units.ts';
import { bodyBetween } from '../../src/roll/ofSole.ts';
import { solveRocker } from '../../src/profile/rocker.ts';
import { drivenRolls } from '../../src/walk/drive.ts';
import { stepFigures } from '../../src/walk/figures.ts';
import type { WalkOn } from '../../src/walk/frame.ts';
import { MEAN_CURVE } from '../../src/walk/stanceCurve.ts';
import { walkOnRocker } from '../../src/walk/walking.ts';
import { featherLine } from '../../src/last/outline.ts';
import { upperFace } from '../../src/last/upperFace.ts';
import { camberUnder, plateUnder, SET_IN } from '../../src/stiffener/plate.ts';
import { loadAhead, rollLoads, stumbleAt, walkingAhead, WALKING_MOMENT } from '../../src/stiffener/loads.ts';
import { plainLast, workedCase } from '../support/cases.ts';
import { rockersOf } from '../roll/support.ts';
import { mean, stances } from '../walk/stances.ts';

const plate = plateUnder(plainLast, featherLine(plainLast), upperFace(plainLast));

describe('loads of the sole', () => {
  test('10 N·m at 80 kg 70 mm ahead are 142.86 N; a stumble is 1.2 body weights at the tip', () => {
    expect(loadAhead(200, 70, 0.125, 80)).toEqual({ at: 270, force: expect.closeTo(142.857, 3), moment: 10_000 });
    const { at, force, moment, over } = stumbleAt(200, 276, 80);
    expect(moment).toBeCloseTo(1.2 * 80 * GRAVITY * 76, 6);
    expect([at, over, force * (at - 200)]).toEqual([266, 20, expect.closeTo(moment, 6)]);
    expect(stumbleAt(200, 276, 80).shears).toBeCloseTo(1.2 * 80 * GRAVITY, 6);
  });
  test('a push is spread over 20 mm, on its place or, near the end of the plate, over its last stretch with the whole moment and no more push', () => {
    expect(walkingAhead({ ball: 200, to: 300 }, 70, 80)).toEqual({ at: 270, over: 20, force: expect.closeTo(48_000 / 70, 6), shears: expect.closeTo(48_000 / 70, 6), moment: 48_000 });
    expect(walkingAhead({ ball: 200, to: 268 }, 68, 80)).toEqual({ at: 258, over: 20, force: expect.closeTo(48_000 / 58, 6), shears: expect.closeTo(48_000 / 68, 6), moment: 48_000 });
    const { at, over = 0, force } = walkingAhead({ ball: 200, to: 206 }, 4, 80);
    expect([at - over / 2 >= 200, at + over / 2 <= 206 + 1e-9, force * (at - 200)]).toEqual([true, true, expect.closeTo(48_000, 6)]);
  });

  const rocker = solveRocker(workedCase), { stance, pivot, hip } = rocker;
  const worked = (ball: readonly [number, number]): WalkOn => ({
    body: bodyBetween(rocker.face, 0, plainLast.length), carried: { pivot, hip, ball }, leg: stance.leg, curve: MEAN_CURVE,
    rolls: drivenRolls(MEAN_CURVE, { kind: 'locked', lean: stance.lean, range: 0 }), flatWithin: 0,
  });
  test('the roll of the worked example with the measured push bends the ball by about what is usual, 0.6 N·m for each kg', () => {
    const on = worked([plainLast.tread, rocker.build + 4]), { ahead, waist } = rollLoads(on, 80, plate), most = Math.max(...ahead.map(({ moment }) => moment)) / 1000;
    expect(most / 80).toBeGreaterThan(stepFigures(on).aboutBall.most.value);
    expect(Math.abs(most / 80 / WALKING_MOMENT - 1)).toBeLessThan(0.1);
    for (const { at, force, moment } of ahead) { expect(force * (at - plate.ball)).toBeCloseTo(moment, 6); expect(at).toBeLessThanOrEqual(plate.to); }
    for (const { at, force } of waist) { expect(at).toBeGreaterThan(plate.heel); expect(at).toBeLessThan(plate.ball); expect(force).toBeLessThan(1.2 * 80 * GRAVITY); }
    expect(waist.length).toBeGreaterThan(10);
  });
  test('driven by each of the seven open stances, as many N·m at 80 kg on the worked example as were reckoned apart, 37 to 56, within a twentieth', () => {
    const shanks = stances('shank_deg'), pushes = stances('Fy');
    const peaks = shanks.map((shank, i) => {
      // Nobody was weighed: a body weighs what its feet carry, mean push over stance × 2 × share of stance in the cycle.
      const weight = mean(pushes[i]!) * 2 * 0.62, curve = { ...MEAN_CURVE, shank: shank.map(degrees), push: pushes[i]!.map((push) => push / weight) };
      const on = { ...worked([plainLast.tread, rocker.build + 4]), curve, rolls: drivenRolls(curve, { kind: 'locked', lean: stance.lean, range: 0 }) };
      return Math.max(...rollLoads(on, 80, plate).ahead.map(({ moment }) => moment)) / 1000;
    });
    expect(Math.abs(Math.min(...peaks) / 37 - 1)).toBeLessThan(0.05);
    expect(Math.abs(Math.max(...peaks) / 56 - 1)).toBeLessThan(0.05);
  });
  test('of a whole shoe they lie on its plate, the turned crest not excepted', () => {
    for (const shoe of [...rockersOf('market-gardener'), ...rockersOf('turned job')]) {
      const own = plateUnder(shoe.last, shoe.shape.feather, shoe.shape.upper), { ahead } = rollLoads(walkOnRocker(shoe).own, 80, own);
      expect(ahead.length).toBeGreaterThan(5);
      for (const { at, force } of ahead) { expect(at).toBeGreaterThan(own.ball); expect(at).toBeLessThanOrEqual(own.to); expect(force).toBeGreaterThan(0); }
    }
  }, 30_000);
});

describe('the plate under a last', () => {
  test('at the ball it is the ball width less what it is set in on both sides', () => {
    const widest = Math.max(...Array.from({ length: 60 }, (_, i) => plate.width(150 + i)));
    expect(widest).toBeGreaterThan(plainLast.ballWidth - 2 * SET_IN - 6);
    expect(widest).toBeLessThan(plainLast.ballWidth - 2 * SET_IN + 0.01);
  });
  test('from a heel end to a toe end inside the last, the waist narrower than both', () => {
    expect(plate.from).toBeGreaterThanOrEqual(SET_IN);
    expect(plate.to).toBeLessThanOrEqual(plainLast.length - SET_IN);
    expect(plate.width(0.42 * plainLast.length)).toBeLessThan(plate.width(plainLast.tread - 10));
    for (let x = plate.from; x <= plate.to; x += 1) expect(plate.width(x)).toBeGreaterThan(10);
  });
  test('it may begin under the middle of the heel', () => expect(plateUnder(plainLast, featherLine(plainLast), upperFace(plainLast), 30)).toMatchObject({ from: 30, heel: 30 }));
  test('a dished last cambers the plate by the square of its width', () => {
    const camber = camberUnder({ ...plainLast, camber: 3 }, plate);
    expect(camber(190)).toBeCloseTo(3 * (plate.width(190) / 95) ** 2, 9);
    expect(camber(115)).toBeLessThan(camber(190));
  });
});
