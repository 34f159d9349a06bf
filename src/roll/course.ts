import type { Point } from '../geometry/point.ts';
import { degrees, type Mm, type Rad } from '../geometry/units.ts';
import { leverAbout, type Carried } from './carried.ts';
import { anglesCovered, contactAt, placing, travelled, type RollBody } from './rollBody.ts';

/** The shoe at one roll angle. Heights above the floor; forward on the floor counts as along the walking line at rest. */
export interface CoursePoint {
  readonly roll: Rad;
  /** The contact on the sole, where it lies at rest, and how far it has come on the floor since rest. */
  readonly contact: Point;
  readonly travelled: Mm;
  /** Ankle pivot and hip, [forward on the floor, height]; the leg is held to the shoe. */
  readonly pivot: Point;
  readonly hip: Point;
  /** How far ahead of ankle pivot and ball the floor pushes up; behind is negative. */
  readonly leverPivot: Mm;
  readonly leverBall: Mm;
}

/** The roll as curves, at any angles asked for. @throws RangeError beyond the angles the body can be at */
export const courseOf = (body: RollBody, { pivot, hip, ball }: Carried, rolls: readonly Rad[]): CoursePoint[] => rolls.map((roll) => {
  const place = placing(body, roll);
  return {
    roll, contact: contactAt(body, roll), travelled: travelled(body, roll), pivot: place(pivot), hip: place(hip),
    leverPivot: leverAbout(body, pivot, roll), leverBall: leverAbout(body, ball, roll),
  };
});

/** From strike to toe-off: both ends, and every whole step between them, rest among them. */
export function rollsOf(body: RollBody, step: Rad = degrees(1)): Rad[] {
  const { from, to } = anglesCovered(body), whole: Rad[] = [];
  for (let i = Math.ceil(from / step); i * step <= to; i++) whole.push(i * step);
  const apart = (roll: Rad): boolean => whole.every((one) => Math.abs(one - roll) > step * 1e-6);
  return [...[from].filter(apart), ...whole, ...[to].filter(apart)];
}
