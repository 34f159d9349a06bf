import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../src/checks/figures.ts';
import { rollNumbers } from '../../src/exports/rollNumbers.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { designOf, JOBS, SAMPLES } from './jobs.ts';

interface Read {
  course: { rollDeg: number; travelledMm: number; pivotHeightMm: number; hipHeightMm: number; leverBallMm: number }[];
  ordinary: { what: string; course: { rollDeg: number; pivotHeightMm: number }[] };
  turningDeg: Record<string, number>; wholeRoll: { radiusMm: number };
  standing: { sway: Record<string, { backMm: number; forwardMm: number }>; slopes: { uphillDeg: number; aheadOfPlumbMm: number }[]; squash: string | { foam: string; feet: number; depthMm: number; holdsNmPerDeg: number; needsNmPerDeg: number }[] };
}
const read = (shoe: RockerShoe, fitting: Parameters<typeof rollNumbers>[1]): Read => JSON.parse(JSON.stringify(rollNumbers(shoe, fitting))) as Read;

describe.each([['K-204', JOBS.pair], ['ferry pilot', SAMPLES['ferry-pilot']!]])('the roll of %s as numbers', (_, fitting) => {
  const shoe = designOf(fitting).shoes.find((one): one is RockerShoe => one.kind === 'rocker')!, roll = read(shoe, fitting);
  const figure = (key: string): number => figuresOf(shoe, fitting).find((one) => one.key === key)!.value;
  test('says what the figures say', () => {
    const first = roll.course[0]!, last = roll.course.at(-1)!, rest = roll.course.find(({ rollDeg }) => rollDeg === 0)!;
    expect([-first.rollDeg, last.rollDeg]).toEqual([expect.closeTo(figure('strikeReached'), 6), expect.closeTo(figure('toeOff'), 6)]);
    expect([rest.hipHeightMm - first.hipHeightMm, rest.hipHeightMm - last.hipHeightMm]).toEqual([expect.closeTo(figure('hipDropStrike'), 6), expect.closeTo(figure('hipDropToeOff'), 6)]);
    expect(Object.values(roll.turningDeg)).toEqual(['turnHeel', 'turnMid', 'turnToe'].map((key) => expect.closeTo(figure(key), 6) as number));
    expect(Math.max(...roll.course.map(({ leverBallMm }) => leverBallMm))).toBeCloseTo(figure('leverBall'), 0);
    expect([roll.wholeRoll.radiusMm, roll.standing.sway.mid!.forwardMm]).toEqual([expect.closeTo(figure('rollOverRadius'), 6), expect.closeTo(figure('swayArcFront'), 6)]);
  });
  test('goes on by a degree, on the floor always forward, and the ordinary shoe goes with it', () => {
    for (let i = 1; i < roll.course.length; i++) {
      expect(roll.course[i]!.rollDeg - roll.course[i - 1]!.rollDeg).toBeLessThanOrEqual(1 + 1e-6);
      expect(roll.course[i]!.travelledMm).toBeGreaterThan(roll.course[i - 1]!.travelledMm);
    }
    expect(roll.ordinary.course.map(({ rollDeg }) => rollDeg)).toEqual(roll.course.map(({ rollDeg }) => rollDeg));
    expect(roll.ordinary.what).toContain('bending at the ball');
  });
  test('stands on slopes from 5 down to 5 up, and squashes at both ends of its foam on one foot and two', () => {
    expect(roll.standing.slopes.map(({ uphillDeg }) => Math.round(uphillDeg))).toEqual([-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5]);
    if (typeof roll.standing.squash === 'string') throw new Error('the client of this job was weighed');
    expect(roll.standing.squash.map(({ foam, feet }) => [foam, feet])).toEqual([['softest', 1], ['softest', 2], ['hardest', 1], ['hardest', 2]]);
    expect(roll.standing.squash[0]!.depthMm).toBeCloseTo(figure('squashSoft'), 6);
    expect(roll.standing.squash[3]!.holdsNmPerDeg / roll.standing.squash[3]!.needsNmPerDeg).toBeCloseTo(figure('steadyHard'), 6);
  });
});

test('without a body mass squash is left out, and that is said', () => {
  const shoe = designOf(JOBS.turned).shoes.find((one): one is RockerShoe => one.kind === 'rocker')!;
  expect(read(shoe, JOBS.turned).standing.squash).toBe('left out: no body mass on the sheet (wearer.mass)');
});
