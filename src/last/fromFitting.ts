import type { LastMeasures } from '../fitting/fitting.ts';
import type { Last } from './last.ts';

/** The last in plain numbers; where each came from stays in the fitting. */
export function lastFrom(measures: LastMeasures): Last {
  const { toeShape, heights, length, pitch, toeSpring, seatLength, tread, heelBack, camber, ballWidth, heelWidth, innerBall, outerBall, inflare, insole } = measures;
  const numbers = { length, pitch, toeSpring, seatLength, tread, heelBack, camber, ballWidth, heelWidth, innerBall, outerBall, inflare, insole };
  const values = Object.fromEntries(Object.entries(numbers).map(([name, measure]) => [name, measure.value])) as Record<keyof typeof numbers, number>;
  return { ...values, toeShape, ...(heights ? { heights } : {}) };
}
