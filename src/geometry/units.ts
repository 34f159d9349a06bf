/** Millimetres. Every length inside src/ is in mm. */
export type Mm = number;
/** Radians. Every angle inside src/ is in radians; degrees live at the edges only (sheet, screen, papers). */
export type Rad = number;
/** Grams. */
export type Grams = number;

export const degrees = (d: number): Rad => (d * Math.PI) / 180;
export const inDegrees = (r: Rad): number => (r * 180) / Math.PI;

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
export const MM_PER_INCH: Mm = 25.4;

/** Standard gravity, N for each kg. Source: 3rd General Conference on Weights and Measures, 1901. */
export const GRAVITY = 9.80665;
