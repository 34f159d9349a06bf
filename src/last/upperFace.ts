import { smoothStep } from '../geometry/solve.ts';
import { steadyCurve } from '../geometry/steadyCurve.ts';
import type { Mm } from '../geometry/units.ts';
import type { Last } from './last.ts';

/** Height of the face the sole is glued to, above the tread plane, at a place in plan. */
export type UpperFace = (x: Mm, y: Mm) => Mm;

/**
 * The last's bottom: level seat at the pitch, a smooth shank down to the tread, then the toe spring rising with the
 * square of the way to the tip and running on straight beyond it. Measured heights take its place where given.
 * Camber dishes it across on one parabola along the whole length, so narrow parts are dished less.
 */
export function upperFace(last: Last): UpperFace {
  const along = last.heights ? steadyCurve(last.heights) : plainBottom(last);
  if (last.camber === 0) return along;
  const halfBall = last.ballWidth / 2;
  return (x, y) => along(x) + last.camber * (y / halfBall) ** 2;
}

function plainBottom({ pitch, seatLength, tread, length, toeSpring }: Last): (x: Mm) => Mm {
  return (x) => {
    if (x <= tread) return pitch * (1 - smoothStep((x - seatLength) / (tread - seatLength)));
    const t = (x - tread) / (length - tread);
    return toeSpring * (t <= 1 ? t * t : 2 * t - 1);
  };
}
