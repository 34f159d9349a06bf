import { onceEach } from '../../geometry/lately.ts';
import { GRAVITY, type Mm, type Rad } from '../../geometry/units.ts';
import { assess } from '../../stiffener/assess.ts';
import { benchLinesOf, CLAMP_BEHIND, hasRoom, hungAs, perKgOf, type HungAs, type PerKg } from '../../stiffener/hung.ts';
import { BENCH_MOMENT } from '../../stiffener/loads.ts';
import { addedLike, readingsOf, type ReadingSpan } from '../../stiffener/reading.ts';
import type { PlacedPly } from '../../stiffener/stiffener.ts';
import type { LaidPack } from './layers.ts';

/** The strain a bare pack is put to, and what it may be when the mass is a round one. Common practice: well below what breaks it, and enough to be read. */
const STRAIN = 0.0015, STRAINS = [0.001, 0.002] as const;
/** No more is hung by hand, kg, and no more than this share of what first breaks a ply or the core. Common practice. */
const MOST_HUNG = 20, SHARE_OF_BREAKING = 0.5;
/** One hanging of a mass. Places are mm from the heel, `ball` is the tread line, square across where the last touches the bench; droops at the load line and at the tread line against the clamp. */
export interface Hanging {
  readonly of: HungAs;
  readonly clampAt: Mm;
  readonly ball: Mm;
  readonly loadAt: Mm;
  /** Kg; N·m about the tread line. */
  readonly mass: number;
  readonly moment: number;
  /** Of the plies. */
  readonly strain: number;
  readonly droop: Mm;
  /** Read anywhere between these the pack is good; undefined where even one as reckoned does not keep to what must be. */
  readonly band?: readonly [least: Mm, most: Mm];
  readonly atBall: Mm;
}

/** Readings of the bare pack that mean the same: droops, in times of the one reckoned, and the finished sole's bend at each end; the last one has no end. */
export interface ReadingRow { readonly span: ReadingSpan; readonly droop: readonly [from: Mm, to: Mm]; readonly bend: readonly [from: Rad, to: Rad] }

/** @property more what is added, where it is */
export interface BenchTest { readonly bare: Hanging; readonly finished: Hanging; readonly more: PlacedPly; readonly rows: readonly ReadingRow[] }

/** The bench test of a pack, worked out once; undefined where it has no room for one. */
export const benchTestOf: (pack: LaidPack) => BenchTest | undefined = onceEach((pack) => (hasRoom(pack) ? workedOut(pack) : undefined));

function workedOut(pack: LaidPack): BenchTest | undefined {
  const { plate, plate: { ball }, assessed: { lever } } = pack, { softer: _, ...asked } = pack.asked, stiffener = hungAs(pack.stiffener, 'finished shoe');
  // As reckoned, whatever was read of it since.
  const reckoned = assess(stiffener, plate, asked), spans = readingsOf({ stiffener, plate, asked }), good = spans.find(({ reading }) => reading.means === 'good');
  const bare = hangingOf(pack, 'bare pack', benchLinesOf(pack)!.load, good, roundMass);
  const finished = hangingOf(pack, 'finished shoe', ball + lever, good, () => (BENCH_MOMENT * asked.mass * 1000) / (GRAVITY * lever));
  if (!bare || !finished || !reckoned.ok) return undefined;
  const { bench: { bend } } = reckoned.value;
  return { bare, finished, more: addedLike(stiffener), rows: spans.map((span) => ({ span, droop: [span.from * bare.droop, span.to * bare.droop], bend: [span.from * bend, span.to * bend] })) };
}

function hangingOf({ plate, asked, stiffener: laid }: LaidPack, of: HungAs, loadAt: Mm, good: ReadingSpan | undefined, massFor: (perKg: PerKg) => number): Hanging | undefined {
  const stiffener = hungAs(laid, of), perKg = perKgOf(stiffener, plate, asked, loadAt);
  if (!perKg) return undefined;
  const mass = massFor(perKg), droop = mass * perKg.droop;
  return {
    of, clampAt: plate.ball - CLAMP_BEHIND, ball: plate.ball, loadAt, mass, moment: (mass * GRAVITY * (loadAt - plate.ball)) / 1000, strain: mass * perKg.strain,
    droop, ...(good ? { band: [good.from * droop, good.to * droop] } : {}), atBall: mass * perKg.atBall,
  };
}

/** The round mass nearest to the strain wanted, in steps that stand on weights; less where that is too much to hang. */
function roundMass({ strain, breaks }: PerKg): number {
  const most = Math.min(MOST_HUNG, SHARE_OF_BREAKING * breaks, STRAINS[1] / strain), wanted = Math.min(STRAIN / strain, most), step = [1, 0.5, 0.1, 0.05].find((one) => wanted >= 5 * one) ?? 0.01;
  return Math.max(Math.floor(Math.min(Math.round(wanted / step) * step, most) / step + 1e-9) * step, 0.01);
}
