import { describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import type { Point } from '../../src/geometry/point.ts';
import { bodyBetween } from '../../src/roll/ofSole.ts';
import { anglesCovered, contactAt, cornersOf, edgesOf, placedAt, stretchAt, travelled, turnsBetween, UPRIGHT, type RollBody } from '../../src/roll/rollBody.ts';
import { solveRocker } from '../../src/profile/rocker.ts';
import { contactWhenRolled, heightWhenRolled, sampled } from '../judges/rolling.ts';
import { shapes } from '../support/cases.ts';
import { chanceFrom } from '../support/random.ts';

/** Plain mechanics, worked by hand: what a wheel, a corner and a board do. */
const wheel = (radius: number, from: number, to: number): RollBody => ({ pieces: [{ kind: 'arc', centre: [0, radius], radius, from: degrees(from), to: degrees(to) }] });

describe('a heel arc of 100 centred on the pivot', () => {
  const heel = wheel(100, -25, 0), pivot: Point = [0, 100];
  test.each([[20, 34.907], [25, 43.633]])('%d degrees back keep its height to 1e-9 and carry it %d mm back', (angle, way) => {
    const [forward, height] = placedAt(heel, pivot, degrees(-angle));
    expect(Math.abs(height - 100)).toBeLessThan(1e-9);
    expect(forward).toBeCloseTo(-way, 3);
    expect(travelled(heel, degrees(-angle))).toBeCloseTo(-way, 3);
  });
});

describe('a sharp corner 50 mm behind a pivot 100 up', () => {
  const board: RollBody = { pieces: [{ kind: 'corner', at: [-50, 0], from: -UPRIGHT, to: 0 }, { kind: 'edge', from: [-50, 0], to: [150, 0], angle: 0 }] };
  test('drops it 11.070 mm over 20 degrees', () => expect(placedAt(board, [0, 100], degrees(-20))[1] - 100).toBeCloseTo(11.07, 3));
  test('stands still on the floor while it turns', () => {
    for (const angle of [-60, -20, -1]) expect(placedAt(board, [-50, 0], degrees(angle))).toEqual([-50, 0].map((x) => expect.closeTo(x, 12) as number));
    expect(travelled(board, degrees(-1))).toBeCloseTo(-100, 12);
  });
  test('at rest touches with the whole board, middle in the middle', () => {
    expect(stretchAt(board, 0)).toEqual([[-50, 0], [150, 0]]);
    expect(contactAt(board, 0)).toEqual([50, 0]);
  });
});

describe('a mid arc of 900 centred on the hip', () => {
  const flat = (f: number): RollBody => ({ pieces: [
    { kind: 'arc', centre: [-f / 2, 900], radius: 900, from: degrees(-6), to: 0 }, ...(f > 0 ? [{ kind: 'edge', from: [-f / 2, 0], to: [f / 2, 0], angle: 0 } as const] : []),
    { kind: 'arc', centre: [f / 2, 900], radius: 900, from: 0, to: degrees(6) },
  ] });
  test.each([[2, 0.4873, 31.416], [4, 1.9488, 62.832], [5, 3.0442, 78.54]])('at %d degrees lets a pivot 100 up rise %d and travels %d', (angle, rise, way) => {
    for (const sign of [1, -1]) {
      expect(placedAt(flat(0), [0, 100], sign * degrees(angle))[1] - 100).toBeCloseTo(rise, 4);
      expect(travelled(flat(0), sign * degrees(angle))).toBeCloseTo(sign * way, 3);
    }
  });
  test.each([0, 30, 40])('keeps the hip to 1e-9, but for (f/2) sin of the roll with a flat of %d', (f) => {
    for (const angle of [-6, -3.3, -1e-3, 0, 0.5, 4]) {
      expect(Math.abs(placedAt(flat(f), [0, 900], degrees(angle))[1] - 900 - (f / 2) * Math.sin(degrees(Math.abs(angle))))).toBeLessThan(1e-9);
    }
  });
  test('the floor is covered once: the flat comes between the halves', () => expect(travelled(flat(40), degrees(2)) - travelled(flat(40), degrees(-2))).toBeCloseTo(40 + 2 * 31.416, 3));
});

test('a point of a rolling wheel draws a trochoid', () => {
  const body = wheel(120, -80, 80), chance = chanceFrom(5);
  for (let i = 0; i < 40; i++) {
    const away = chance.between(0, 200), start = chance.between(-3, 3), roll = degrees(chance.between(-80, 80));
    const [forward, height] = placedAt(body, [-away * Math.sin(start), 120 - away * Math.cos(start)], roll);
    expect(forward).toBeCloseTo(120 * roll - away * Math.sin(start + roll), 9);
    expect(height).toBeCloseTo(120 - away * Math.cos(start + roll), 9);
  }
});

describe.each(Object.entries(shapes))('%s', (_, given) => {
  const { face, pivot, hip, strikePoint } = solveRocker(given), back = 1, front = given.last.length - 1;
  const body = bodyBetween(face, back, front), outline = sampled(face, back, front, 4_000);
  test('rolls as a row of points does, over both ends too', () => {
    for (const angle of [-80, -40, -24, -10, -3, -0.2, 0.2, 2, 8, 20, 40, 80]) {
      const roll = degrees(angle);
      for (const point of [pivot, hip]) expect(Math.abs(placedAt(body, point, roll)[1] - heightWhenRolled(outline, point, roll))).toBeLessThan(1e-4);
      expect(Math.abs(contactAt(body, roll)[0] - contactWhenRolled(outline, roll))).toBeLessThan(0.2);
    }
  });
  test('does not slide: between two angles a point moves square to the line from the contact', () => {
    const step = 1e-6;
    for (const angle of [-70, -20, -2, 1.5, 15, 60]) {
      const roll = degrees(angle), floor = contactAt(body, 0)[0] + travelled(body, roll), [x, z] = placedAt(body, hip, roll);
      const [x0, z0] = placedAt(body, hip, roll - step), [x1, z1] = placedAt(body, hip, roll + step);
      expect((x1 - x0) / (2 * step)).toBeCloseTo(z, 2);
      expect((z1 - z0) / (2 * step)).toBeCloseTo(floor - x, 2);
    }
  });
  test('has one corner at the back and one at the tip, and covers what lies between', () => {
    expect(cornersOf(body).map(({ at }) => at[0])).toEqual([expect.closeTo(back, 9), expect.closeTo(front, 9)]);
    expect(edgesOf(body)).toHaveLength((strikePoint[0] > back ? 1 : 0) + (given.order.standingFlat > 0 ? 1 : 0) + (given.order.toe.endAngle === undefined ? 0 : 1));
    const { from, to } = anglesCovered(body);
    expect(turnsBetween(body)).toEqual({ from: -UPRIGHT, to: UPRIGHT });
    expect(contactAt(body, from - 0.01)[0]).toBeCloseTo(back, 9);
    expect(contactAt(body, to + 0.01)[0]).toBeCloseTo(front, 9);
    expect(contactAt(body, to - 0.01)[0]).toBeLessThan(front - 0.5);
  });
  test('at rest every point is where it was given', () => expect(placedAt(body, pivot, 0)).toEqual([expect.closeTo(pivot[0], 9), expect.closeTo(pivot[1], 9)]));
});

test('further than upright there is nothing to roll on', () => expect(() => contactAt(wheel(100, -20, 20), degrees(21))).toThrow(RangeError));
