import type { RockerShoe } from '../../src/pair/shoe.ts';
import { designOf, SAMPLES } from '../exports/jobs.ts';

export { SAMPLES };

/** The rockers of a sample that comes with the project. */
export const rockersOf = (name: string): RockerShoe[] => designOf(SAMPLES[name]!).shoes.filter((shoe): shoe is RockerShoe => shoe.kind === 'rocker');
