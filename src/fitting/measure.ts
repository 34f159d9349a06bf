/** Where a number comes from. Anything but 'measured' and 'chosen' is said wherever the number is shown. */
export type Origin = 'measured' | 'converted' | 'estimated' | 'chosen' | 'default';

/**
 * One number of the fitting with its story. Lengths in mm, angles in radians, mass in kg.
 * An estimate names its rule and, where known, its standard error in the same unit.
 */
export interface Measure {
  readonly value: number;
  readonly origin: Origin;
  /** The rule an estimate, default or conversion follows, in words a maker can check. */
  readonly rule?: string;
  readonly error?: number;
  /** How it was taken, in the maker's words. */
  readonly how?: string;
  /** How far off a reading may be, as the maker says, in the same unit: one standard deviation, two readings of three lie within it. */
  readonly accuracy?: number;
  /** The maker took it twice and both readings agree. */
  readonly twice?: boolean;
}

export const isEstimated = ({ origin }: Measure): boolean => origin === 'estimated' || origin === 'default';
