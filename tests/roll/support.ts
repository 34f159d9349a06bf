import type { RockerShoe } from '../../src/pair/shoe.ts';
import { designOf, JOBS, SAMPLES } from '../exports/jobs.ts';

export { SAMPLES };
/** And one under a turned crest with leaning walls and an edge that stands out. */
export const ROLLED = { ...SAMPLES, 'turned job': JOBS.turned };

/** The rockers of one of them. */
export const rockersOf = (name: string): RockerShoe[] => designOf(ROLLED[name as keyof typeof ROLLED]!).shoes.filter((shoe): shoe is RockerShoe => shoe.kind === 'rocker');
