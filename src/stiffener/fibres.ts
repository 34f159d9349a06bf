import type { Side } from '../fitting/words.ts';
import { inDegrees, type Rad } from '../geometry/units.ts';
import type { Ply } from './ply.ts';
import type { PlacedPly } from './stiffener.ts';

/** Which way the fibres of a laid ply run, and how that is told: the same on paper, in the terminal and on the page. */

/** Cloth whose fibres run both ways. */
export const isWoven = ({ lamina: { e1, e2 } }: Ply): boolean => e2 > e1 / 2;

/** How an angle is written, in whole degrees where it is whole; plus leans to the wearer's left as the toe points away. */
const degreesOf = (angle: Rad): string => { const whole = Number(inDegrees(angle).toFixed(1)); return `${whole > 0 ? '+' : whole < 0 ? '-' : ''}${Math.abs(whole)}`; };

/** "0/90°", "±45°", "0°", "+30/-60°": ways of the fibres on one's own side, against the long axis. */
export function directionWords({ ply, angle }: Pick<PlacedPly, 'ply' | 'angle'>, side: Side): string {
  const ways = waysOf({ ply, angle }, side);
  if (ways.length === 2 && ways.every((way) => Math.abs(Math.abs(inDegrees(way)) - 45) < 0.05)) return '±45°';
  if (ways.length === 2 && ways.some((way) => Math.abs(way) < 1e-3)) return '0/90°';
  return `${ways.map(degreesOf).join('/')}°`;
}

/** Directions of the fibres, each between −90° and 90°, on a shoe of this side: the right one is a mirror image. */
export function waysOf({ ply, angle }: Pick<PlacedPly, 'ply' | 'angle'>, side: Side): Rad[] {
  const own = side === 'left' ? angle : -angle, half = Math.PI, turn = (a: Rad): Rad => a - half * Math.round(a / half);
  return isWoven(ply) ? [turn(own), turn(own + half / 2)] : [turn(own)];
}
