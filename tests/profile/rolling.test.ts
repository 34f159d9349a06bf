import { describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import type { Point } from '../../src/geometry/point.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { solveRocker } from '../../src/profile/rocker.ts';
import { shapes, withOrder, workedCase } from '../support/cases.ts';
import { contactWhenRolled, heightWhenRolled, sampled } from '../judges/rolling.ts';

/** Plain mechanics: identities of a wheel, worked by hand. The judge shares no formula with the profile. */
const arcPoints = (centre: Point, radius: number, from: number, to: number): Point[] =>
  Array.from({ length: 40_001 }, (_, i): Point => {
    const angle = from + ((to - from) * i) / 40_000;
    return [centre[0] + radius * Math.sin(angle), centre[1] - radius * Math.cos(angle)];
  });

describe('the judge itself', () => {
  test('a heel arc of 100 about the pivot keeps it at 100 and carries it 34.907 mm forward in 20 degrees', () => {
    const heel = arcPoints([0, 100], 100, degrees(-25), 0);
    expect(heightWhenRolled(heel, [0, 100], degrees(-20))).toBeCloseTo(100, 6);
    expect(100 * degrees(20)).toBeCloseTo(34.907, 3);
    expect(contactWhenRolled(heel, degrees(-20))).toBeCloseTo(-100 * Math.sin(degrees(20)), 2);
  });

  test('a sharp heel corner 50 mm behind the pivot lets it drop 11.070 mm', () => {
    const corner: Point[] = [[-50, 0], [150, 0]];
    const drop = heightWhenRolled(corner, [0, 100], degrees(-20)) - heightWhenRolled(corner, [0, 100], 0);
    expect(drop).toBeCloseTo(11.07, 3);
  });

  test('on a mid arc of 900 about the hip the hip stays and a pivot 100 up rises by 800 (1 - cos)', () => {
    const mid = arcPoints([0, 900], 900, degrees(-6), degrees(6));
    for (const [angle, rise] of [[2, 0.4873], [4, 1.9488], [5, 3.0442]] as const) {
      expect(heightWhenRolled(mid, [0, 900], degrees(-angle))).toBeCloseTo(900, 4);
      expect(heightWhenRolled(mid, [0, 100], degrees(-angle)) - 100).toBeCloseTo(rise, 3);
    }
    expect([2, 4, 5].map((angle) => +(900 * degrees(angle)).toFixed(3))).toEqual([31.416, 62.832, 78.54]);
  });
});

describe.each(Object.entries(shapes))('rolling %s', (_, given) => {
  const rocker = solveRocker(given), { face, pivot, hip, heelArc, mid } = rocker;
  const outline = sampled(face, -10, given.last.length);

  test('the ankle pivot neither drops nor rises over the heel arc', () => {
    for (const share of [0, 0.3, 0.6, 1]) {
      const roll = heelArc!.from + (heelArc!.to - heelArc!.from) * share;
      expect(heightWhenRolled(outline, pivot, roll)).toBeCloseTo(heelArc!.radius, 4);
    }
  });

  test('the hip stays level over the mid arc, but for the flat', () => {
    const flat = given.order.standingFlat;
    for (const share of [0.25, 0.5, 1]) {
      const roll = heelArc!.to * share;
      expect(heightWhenRolled(outline, hip, roll)).toBeCloseTo(mid.radius + (flat / 2) * Math.sin(Math.abs(roll)), 4);
    }
  });

  test('each roll angle has its own point on the ground', () => {
    const roll = (rocker.apex.angle + rocker.toeArc.to) / 2, toe = rocker.toeArc;
    expect(contactWhenRolled(outline, roll)).toBeCloseTo(toe.centre[0] + toe.radius * Math.sin(roll), 1);
  });
});

test('the check can fail: another point does move over the heel arc', () => {
  const { face, pivot, heelArc } = solveRocker(workedCase), outline = sampled(face, -10, 282), other: Point = [pivot[0] + 20, pivot[1]];
  expect(Math.abs(heightWhenRolled(outline, other, heelArc!.from) - heightWhenRolled(outline, other, heelArc!.to))).toBeGreaterThan(1);
});

test('a flat of 40 mm lifts the hip by 1.15 mm at -3.3 degrees', () => {
  const { face, hip } = solveRocker(withOrder(workedCase, { standingFlat: 40, apexX: 190 })), outline = sampled(face, -10, 282);
  expect(heightWhenRolled(outline, hip, degrees(-2)) - heightWhenRolled(outline, hip, 0)).toBeCloseTo(20 * Math.sin(degrees(2)), 4);
  expect(20 * Math.sin(degrees(3.3))).toBeCloseTo(1.15, 2);
});

test('where the pivot is nearer than half a flat, the rear half stands on the pivot and there is no mid arc behind', () => {
  const { face, mid, pivot, heelArc } = solveRocker(withOrder({ ...workedCase, foot: { ...workedCase.foot, stance: { kind: 'locked', ankleAngle: degrees(-2.9) } } }, { standingFlat: 60 }));
  expect(mid.rearX).toBe(pivot[0]);
  expect(heelArc!.to).toBeCloseTo(0, 12);
  expect(heelArc!.radius).toBeCloseTo(pivot[1], 9);
  expect(face.pieces.map(({ name }) => name)).not.toContain('mid arc, rear');
});

test('a strike angle the mid arc already turns past leaves no heel arc, and the face runs straight on behind it', () => {
  const { face, heelArc, strikePoint } = solveRocker(withOrder(workedCase, { strike: degrees(2) }));
  expect(heelArc).toBeUndefined();
  expect(face.pieces[0]!.name).toBe('behind the strike point');
  expect(contactWhenRolled(sampled(face, -10, 282), degrees(-2.001))).toBeLessThanOrEqual(strikePoint[0] + 0.1);
});

describe.each([75, 95, 110])('under a crest turned to %d°, rolled as a solid about that crest', (crest) => {
  const rocker = solveRocker(withOrder(workedCase, { crestAngle: degrees(crest) })), { face, line, heelArc, stance, build } = rocker;
  const turn = degrees(crest - 90);
  /** The underside over a stretch of ground, each place by its way square to the crest. Seen along the crest it is one outline. */
  const underside = Array.from({ length: 3_400 }, (_, i) => -20 + i * 0.1).flatMap((x): Point[] => [-40, 0, 40].map((y): Point =>
    [x * Math.cos(turn) + y * Math.sin(turn), heightAt(face, rollX(line, [x, y]))]));
  const onAxis = (x: number, z: number): Point => [x * Math.cos(turn), z];
  const pivot = onAxis(stance.pivot[0], stance.pivot[1] + build), hip = onAxis(stance.standing, stance.pivot[1] + build + stance.hipUp);

  test('the ankle pivot keeps its height over the heel arc, and the hip over the mid arc', () => {
    for (const share of [0.05, 0.4, 0.8, 1]) {
      const roll = heelArc!.from + (heelArc!.to - heelArc!.from) * share;
      expect(Math.abs(heightWhenRolled(underside, pivot, roll) - heelArc!.radius)).toBeLessThan(0.01);
    }
    for (const roll of [heelArc!.to, 0, rocker.apex.angle]) expect(Math.abs(heightWhenRolled(underside, hip, roll) - hip[1])).toBeLessThan(0.01);
  });
  test('standing, it touches the ground right under the hip', () => {
    expect(Math.abs(contactWhenRolled(underside, 0) - hip[0])).toBeLessThan(0.5);
  });
});
