import { describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import type { Layer } from '../../src/roll/layer.ts';
import type { RollBody } from '../../src/roll/rollBody.ts';
import { squashUnder } from '../../src/roll/squash.ts';

/** A layer of one width, 20 mm thick, of 4 MPa. */
const even = (width: number, thick = 20, modulus = 4): Layer => ({ width: () => width, give: () => thick / modulus, thick: () => thick });
const wheel = (radius: number, flat = 0): RollBody => ({ pieces: [
  { kind: 'arc', centre: [-flat / 2, radius], radius, from: -0.3, to: 0 }, ...(flat > 0 ? [{ kind: 'edge', from: [-flat / 2, 0], to: [flat / 2, 0], angle: 0 } as const] : []),
  { kind: 'arc', centre: [flat / 2, radius], radius, from: 0, to: 0.3 },
] });

/**
 * A stiff cylinder on springs of k N/mm³: each presses with k (d - x²/2R) over a half width a = √(2Rd), so all with
 * (4/3) k d a for each mm of width. Plain integration; a circle for the parabola differs by d/R.
 */
describe('a cylinder of 900 on an even bed', () => {
  test.each([100, 400, 785])('under %d N sinks as the closed form says', (force) => {
    const { depth, length, ahead, pressure, strain } = squashUnder(wheel(900), even(65), force), k = 4 / 20, a = Math.sqrt(2 * 900 * depth);
    expect(((4 / 3) * k * depth * a * 65) / force).toBeCloseTo(1, 3);
    expect(length / (2 * a)).toBeCloseTo(1, 3);
    expect([ahead, pressure, strain]).toEqual([0, k * depth, depth / 20].map((value) => expect.closeTo(value, 6) as number));
  });
  test('resists a turn by force times radius, like the wheel it is: what a body needs whose middle is the hub, no more', () => {
    expect(squashUnder(wheel(900), even(65), 785).holds / (785 * 900)).toBeCloseTo(1, 2);
  });
  test('8 MPa of foam 20 mm thick under 200 kPa gives 0.5 mm, 3 MPa 1.3 mm', () => {
    const block: RollBody = { pieces: [{ kind: 'edge', from: [0, 0], to: [100, 0], angle: 0 }] };
    expect(squashUnder(block, even(50, 20, 8), 0.2 * 5000).depth).toBeCloseTo(0.5, 6);
    expect(squashUnder(block, even(50, 20, 3), 0.2 * 5000).depth).toBeCloseTo(4 / 3, 6);
  });
});

describe('with a flat of 40', () => {
  const force = 785, { depth, length, holds } = squashUnder(wheel(900, 40), even(65), force), k = (65 * 4) / 20, a = Math.sqrt(2 * 900 * depth);
  test('flat and both wings carry', () => expect((k * depth * 40 + (4 / 3) * k * depth * a) / force).toBeCloseTo(1, 3));
  test('the contact is the flat and two wings long, and resists as a bed so long: k L³/12', () => {
    expect(length / (40 + 2 * a)).toBeCloseTo(1, 3);
    expect(holds / ((k * (40 + 2 * a) ** 3) / 12)).toBeCloseTo(1, 3);
    expect(holds).toBeGreaterThan(force * 900);
  });
});

test('the resistance is the turning moment that a small turn brings', () => {
  const body = wheel(900, 30), layer: Layer = { width: (x) => 60 + x / 4, give: (x) => 5 - x / 60, thick: () => 20 }, step = 1e-4;
  // Rolled by a little from rest, the contact itself goes to an end of the flat, and the middle of the push is told from there.
  const from = (roll: number): number => Math.sign(roll) * 15 + 900 * roll + squashUnder(body, layer, 785, roll).ahead;
  expect((785 * (from(step) - from(-step))) / (2 * step) / squashUnder(body, layer, 785).holds).toBeCloseTo(1, 2);
});

describe('steadily', () => {
  const sunk = (force: number, thick: number, width: number, radius: number, flat: number): number => squashUnder(wheel(radius, flat), even(width, thick), force).depth;
  test('more weight and thicker foam sink more; more width, more radius and a flat sink less', () => {
    const now = sunk(600, 20, 60, 900, 0);
    expect([sunk(700, 20, 60, 900, 0), sunk(600, 25, 60, 900, 0)].every((deeper) => deeper > now)).toBe(true);
    expect([sunk(600, 20, 70, 900, 0), sunk(600, 20, 60, 1000, 0), sunk(600, 20, 60, 900, 20)].every((less) => less < now)).toBe(true);
  });
  test('a short sole is pressed no further than its ends', () => {
    const short: RollBody = { pieces: [{ kind: 'arc', centre: [0, 900], radius: 900, from: -0.02, to: 0.03 }] }, { from, to } = squashUnder(short, even(60), 2000);
    expect([from, to]).toEqual([-900 * Math.sin(0.02), 900 * Math.sin(0.03)].map((value) => expect.closeTo(value, 6) as number));
  });
  test('rolled on an even bed a wheel sinks the same', () => expect(squashUnder(wheel(900), even(60), 600, degrees(3)).depth).toBeCloseTo(sunk(600, 20, 60, 900, 0), 6));
});
