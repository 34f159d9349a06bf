import { GRAVITY, type Mm } from '../geometry/units.ts';
import { assess, type Asked, type Assessed } from './assess.ts';
import { BENCH_MOMENT } from './loads.ts';
import { asHung, bare } from './reading.ts';
import type { Plate, Stiffener } from './stiffener.ts';

/** A pack hung on the bench: where it is clamped and loaded, and what a kg does to it. The one set-up of the bench card and of a reading on the sheet. */

/** The clamp ends so far behind the tread line, so that a gauge has room on the line, mm. */
export const CLAMP_BEHIND: Mm = 10;
/** A loop is hung no nearer to the tip than this, or it slips off. */
const FROM_TIP: Mm = 10;
/** What of a pack says where it is hung. */
interface Hangable { readonly plate: Plate; readonly assessed: { readonly lever: Mm } }

/** Whether a pack can be clamped behind the ball and loaded ahead of it. */
export const hasRoom = ({ plate: { from, to, ball }, assessed: { lever } }: Hangable): boolean =>
  ball - CLAMP_BEHIND - from >= CLAMPED && Math.min(lever, to - FROM_TIP - ball) >= LEVER_LEAST;
/** What a clamp must hold, and the shortest lever that tells anything, mm. Common practice. */
const CLAMPED: Mm = 3 * CLAMP_BEHIND, LEVER_LEAST: Mm = 20;

/** The three lines square across a bare pack that its test is set up by; undefined where it has no room for one. */
export interface BenchLines { readonly clamp: Mm; readonly tread: Mm; readonly load: Mm }
export const benchLinesOf = (pack: Hangable): BenchLines | undefined => {
  const { plate: { ball, to }, assessed: { lever } } = pack;
  return hasRoom(pack) ? { clamp: ball - CLAMP_BEHIND, tread: ball, load: Math.min(ball + lever, to - FROM_TIP) } : undefined;
};

export type HungAs = 'bare pack' | 'finished shoe';

/** A pack as it is hung on the bench: as it is, or without what lies on it in the shoe; a camber that is told stands whole. */
export const hungAs = (stiffener: Stiffener, of: HungAs): Stiffener => (of === 'bare pack' ? bare(asHung(stiffener)) : asHung(stiffener));

/** A plate held so far behind its tread line, the clamp where else the foot bears at the ball. */
export const clampedBehind = (plate: Plate, behind: Mm = CLAMP_BEHIND): Plate => {
  const ball = plate.ball - behind;
  return { ...plate, ball, heel: Math.min(plate.heel, ball - 2 * CLAMP_BEHIND) };
};

/** What a kg does at the load line of a pack clamped behind the ball. Reserves: how many of them first break something. */
export interface PerKg { readonly droop: Mm; readonly atBall: Mm; readonly strain: number; readonly breaks: number }

export function perKgOf(stiffener: Stiffener, plate: Plate, { mass, wanted }: Asked, loadAt: Mm, behind = CLAMP_BEHIND): PerKg | undefined {
  const clamped = clampedBehind(plate, behind), lever = loadAt - clamped.ball, read = assess(stiffener, clamped, { mass, wanted, lever });
  if (!read.ok) return undefined;
  const { bench, along } = read.value, share = (GRAVITY * lever) / (BENCH_MOMENT * mass * 1000);
  const { firstPly, wrinkling, coreShear, yields } = bench, breaks = Math.min(firstPly.times, wrinkling.times, coreShear.times, yields.times) / share;
  return { droop: share * bench.bend * lever, atBall: share * deflectionAt(along, plate.ball), strain: share * Math.abs(bench.strain), breaks };
}

/** Between the middles of the stretches it is told at. */
function deflectionAt(along: Assessed['along'], x: Mm): Mm {
  const next = along.findIndex((one) => one.x >= x), b = along[next], a = along[next - 1];
  return a && b ? a.deflection + ((b.deflection - a.deflection) * (x - a.x)) / (b.x - a.x) : b?.deflection ?? 0;
}
