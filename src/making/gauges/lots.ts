import type { Pair } from '../../pair/shoe.ts';
import type { Lot } from '../cut/beyondBoard.ts';
import { gaugesFor } from './gauges.ts';

/** The gauges of each shoe, as they are laid on boards. */
export const gaugeLots = (pair: Pair): Lot[] => gaugesFor(pair).map(({ side, parts }) => ({ side, what: 'gauges', parts }));
