import { inUnit, type LengthUnit } from '../../keep/lengths.ts';
import type { Point3 } from './body.ts';

/** How finely a place can be pressed: tenths of a mm, hundredths of an inch. */
const DIGITS: Readonly<Record<LengthUnit, number>> = { mm: 1, in: 2 };

/** The way between two places, mm, and how much of it is along x (forward), y (across) and z (up), in the unit shown. */
export function wayWords(from: Point3, to: Point3, unit: LengthUnit): string {
  const [dx, dy, dz] = [0, 1, 2].map((k) => to[k]! - from[k]!) as [number, number, number], size = (mm: number): string => Math.abs(inUnit(mm, unit)).toFixed(DIGITS[unit]);
  return `${size(Math.hypot(dx, dy, dz))} ${unit} from place to place: ${size(dx)} along (dx), ${size(dy)} across (dy), ${size(dz)} up (dz).`;
}
