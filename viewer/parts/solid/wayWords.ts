import type { Point3 } from './body.ts';

/** The way between two places, and how much of it is along x (forward), y (across) and z (up). Mm. */
export function wayWords(from: Point3, to: Point3): string {
  const [dx, dy, dz] = [0, 1, 2].map((k) => to[k]! - from[k]!) as [number, number, number], size = (value: number): string => Math.abs(value).toFixed(1);
  return `${size(Math.hypot(dx, dy, dz))} mm from place to place: ${size(dx)} along (dx), ${size(dy)} across (dy), ${size(dz)} up (dz).`;
}
