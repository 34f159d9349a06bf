import type { Mm } from './units.ts';

/** Arcs are joined by formula; a larger gap between neighbours is a bug. */
export const SAME_POINT: Mm = 1e-6;
/** Default chord gap of a mesh: below what a hand finish on foam can show. */
export const CHORD_GAP: Mm = 0.05;
/** How far an outline drawn as tangent arcs may lie off the true curve: a tenth of a pencil line. */
export const OUTLINE_GAP: Mm = 0.01;
/** Roots are solved to this; everything written is rounded to WRITTEN, so nothing hangs on the last digit. */
export const SOLVED: Mm = 1e-10;
/** Step to which numbers are rounded before they are written to a file. */
export const WRITTEN = 1e-6;
