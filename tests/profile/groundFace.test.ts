import { describe, expect, test } from 'vitest';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { areaBelow, endAngle, endOf, heightAt, lengthBetween, offsetInward, startAngle, startOf, type GroundFace, type RollArc } from '../../src/profile/groundFace.ts';
import { solveRocker } from '../../src/profile/rocker.ts';
import { shapes } from '../support/cases.ts';

/** Plain mathematics: segment of a circle, area R²/2 (t - sin t). */
const single = (radius: number, turn: number): GroundFace =>
  ({ pieces: [{ kind: 'arc', name: 'toe arc', centre: [0, radius], radius, from: 0, to: degrees(turn) }] });

describe('an arc of radius 100 turning 34 degrees', () => {
  const face = single(100, 34), arc = face.pieces[0] as RollArc, [x, z] = endOf(arc);
  test('is 59.341 mm long, its chord 58.474, its end rises 17.096', () => {
    expect(lengthBetween(face, 0, x)).toBeCloseTo(59.341, 3);
    expect(Math.hypot(x, z)).toBeCloseTo(58.474, 3);
    expect(z).toBeCloseTo(17.096, 3);
    expect(inDegrees(Math.atan2(z, x))).toBeCloseTo(17, 9);
  });
  test('cuts off a segment of 171.095 mm² (68.570 at 25 degrees)', () => {
    expect((x * z) / 2 - areaBelow(face, 0, x)).toBeCloseTo(171.095, 2);
    const shorter = single(100, 25), [x25, z25] = endOf(shorter.pieces[0]!);
    expect((x25 * z25) / 2 - areaBelow(shorter, 0, x25)).toBeCloseTo(68.57, 2);
  });
});

test('an arc of radius 900 over a chord of 120 turns 7.645 degrees and bulges 2.0022 mm', () => {
  const half = Math.asin(60 / 900);
  expect(inDegrees(2 * half)).toBeCloseTo(7.645, 3);
  const face = single(900, inDegrees(half));
  expect(heightAt(face, 60)).toBeCloseTo(2.0022, 4);
});

describe.each(Object.entries(shapes))('the ground face of %s', (_, given) => {
  const { face } = solveRocker(given), { length } = given.last;

  test('is tangent at every joint: no step, no kink', () => {
    face.pieces.slice(1).forEach((piece, i) => {
      const before = face.pieces[i]!, [ax, az] = endOf(before), [bx, bz] = startOf(piece);
      expect(Math.hypot(ax - bx, az - bz)).toBeLessThan(1e-9);
      expect(Math.abs(endAngle(before) - startAngle(piece))).toBeLessThan(1e-9);
    });
  });

  test('arcs that meet have centres as far apart as their radii differ', () => {
    const arcs = face.pieces.filter((piece): piece is RollArc => piece.kind === 'arc');
    face.pieces.slice(1).forEach((piece, i) => {
      const before = face.pieces[i]!;
      if (piece.kind !== 'arc' || before.kind !== 'arc') return;
      expect(Math.hypot(piece.centre[0] - before.centre[0], piece.centre[1] - before.centre[1])).toBeCloseTo(Math.abs(piece.radius - before.radius), 8);
    });
    expect(arcs.length).toBeGreaterThanOrEqual(3);
  });

  test('its length and area agree with a sum of 200 000 small steps', () => {
    let run = 0, area = 0;
    const steps = 200_000, dx = length / steps;
    for (let i = 0; i < steps; i++) {
      const a = heightAt(face, i * dx), b = heightAt(face, (i + 1) * dx);
      run += Math.hypot(dx, b - a);
      area += ((a + b) / 2) * dx;
    }
    expect(lengthBetween(face, 0, length)).toBeCloseTo(run, 5);
    expect(areaBelow(face, 0, length)).toBeCloseTo(area, 4);
  });

  test('set in by 3 mm, every point lies exactly 3 mm from it and no nearer', () => {
    const inner = offsetInward(face, 3);
    for (let x = 20; x < length - 20; x += 7.3) {
      const z = heightAt(inner, x);
      let nearest = Infinity;
      for (let k = -6000; k <= 6000; k++) nearest = Math.min(nearest, Math.hypot(k / 1000, heightAt(face, x + k / 1000) - z));
      expect(nearest).toBeCloseTo(3, 4);
    }
  });

  test('rests on the ground: lowest at zero and nowhere below', () => {
    const heights = Array.from({ length: 2821 }, (_, i) => heightAt(face, (i * length) / 2820));
    expect(Math.min(...heights)).toBeGreaterThan(-1e-12);
    expect(Math.min(...heights)).toBeLessThan(0.001);
  });
});

test('an arc tighter than the outsole is refused', () => {
  expect(() => offsetInward(single(2, 30), 3)).toThrow(RangeError);
});
