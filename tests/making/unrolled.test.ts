import { expect, test } from 'vitest';
import { enclosedArea, offsetRight, pathLength, pointAlong } from '../../src/geometry/path.ts';
import { distance } from '../../src/geometry/point.ts';
import { TRIM, unrolledOutsole } from '../../src/making/unrolled.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { angleAt } from '../../src/profile/groundFace.ts';
import { rollX, rollY } from '../../src/profile/rollLine.ts';
import { groundPoint } from '../../src/solid/groundLine.ts';
import { designOf, JOBS } from '../exports/jobs.ts';

const SHAPES = Object.entries(JOBS).flatMap(([name, fitting]) => designOf(fitting).shoes.flatMap((shoe) => {
  const parts = partsOf(shoe);
  return parts ? [{ name: `${name} ${shoe.side}`, shape: parts.shape }] : [];
}));

test.each(SHAPES)('$name: laid flat the outsole has the area of the bent face', ({ shape }) => {
  const flat = offsetRight(unrolledOutsole(shape), -TRIM), at = groundPoint(shape), count = 4000;
  // Slow judge: the area round the foot of the walls in plan, each strip stretched by the slope of the face above it.
  const round = Array.from({ length: count + 1 }, (_, i) => { const [x, y] = at((i / count) * shape.edge.length); return [rollX(shape.line, [x, y]), rollY(shape.line, [x, y])] as const; });
  let area = 0;
  for (let i = 0; i < count; i++) {
    const [a, ya] = round[i]!, [b, yb] = round[i + 1]!;
    area -= ((ya + yb) / 2) * (b - a) / Math.cos(angleAt(shape.face, (a + b) / 2));
  }
  expect(enclosedArea(flat) / area).toBeCloseTo(1, 3);
  expect(enclosedArea(flat)).toBeGreaterThan(enclosedArea(shape.edge) * 0.9);
});

test('the trim stands all round, so the outline is longer by a full turn of it', () => {
  const trimmed = unrolledOutsole(SHAPES[0]!.shape), bare = offsetRight(trimmed, -TRIM);
  expect(pathLength(trimmed) - pathLength(bare)).toBeCloseTo(2 * Math.PI * TRIM, 3);
  expect(distance(pointAlong(trimmed, 0), pointAlong(bare, 0))).toBeCloseTo(TRIM, 9);
});
