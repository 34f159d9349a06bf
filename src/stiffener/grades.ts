import { degrees, inDegrees, type Rad } from '../geometry/units.ts';

/** How far a stiffened sole bends at the ball. Common practice of the trade, at `BENCH_MOMENT` for each kg. */
export type Grade = 'rigid' | 'slight flex' | 'flexible';
export const GRADE_UP_TO: Readonly<Record<Exclude<Grade, 'flexible'>, Rad>> = { rigid: degrees(1.5), 'slight flex': degrees(5) };
/** The most a pack is to bend: what is asked in degrees, else the limit of the grade. */
export const limitOf = ({ bendAtMost, wanted }: { readonly bendAtMost?: Rad; readonly wanted: Exclude<Grade, 'flexible'> }): Rad => bendAtMost ?? GRADE_UP_TO[wanted];
export const gradeOf = (bend: Rad): Grade => (bend <= GRADE_UP_TO.rigid ? 'rigid' : bend <= GRADE_UP_TO['slight flex'] ? 'slight flex' : 'flexible');

/** Beyond this straight reckoning tells far more than there would be: no number is told. */
export const BEND_MOST: Rad = degrees(30);
export const bendTold = (bend: Rad, digits = 2): string => (bend > BEND_MOST ? `more than ${inDegrees(BEND_MOST).toFixed(0)}°` : `${inDegrees(bend).toFixed(digits)}°`);

/** Walked on every day, plies are to strain no more. Common practice. */
export const WALKING_STRAIN = 0.003;
/** Walked on every day, a pack is to bear this many times that load before a ply first fails. Common practice. */
export const WALKING_RESERVE = 1.5;
