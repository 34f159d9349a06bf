import { lately } from '../geometry/lately.ts';
import type { LastMeasures } from '../fitting/fitting.ts';
import type { Last } from './last.ts';

/** The last in plain numbers; where each came from stays in the fitting. */
export function lastFrom(measures: LastMeasures): Last {
  const { toeShape, heights, length, pitch, toeSpring, seatLength, tread, heelBack, camber, ballWidth, heelWidth, innerBall, outerBall, inflare, insole } = measures;
  const numbers = { length, pitch, toeSpring, seatLength, tread, heelBack, camber, ballWidth, heelWidth, innerBall, outerBall, inflare, insole };
  const values = Object.fromEntries(Object.entries(numbers).map(([name, measure]) => [name, measure.value])) as Record<keyof typeof numbers, number>;
  return theVerySame({ ...values, toeShape, ...(heights ? { heights } : {}) });
}

/** The same measures give the very same last, so that the outline drawn for it serves again when other things of the sheet change. */
const theVerySame = lately(4, (last: Last): Last => last);
