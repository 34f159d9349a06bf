import { onceEach } from '../../geometry/lately.ts';
import { GRAVITY, type Mm, type Rad } from '../../geometry/units.ts';
import { assess, type Asked, type Assessed } from '../../stiffener/assess.ts';
import { BENCH_MOMENT } from '../../stiffener/loads.ts';
import { addedLike, asHung, bare as unladen, readingsOf, type ReadingSpan } from '../../stiffener/reading.ts';
import type { PlacedPly, Plate, Stiffener } from '../../stiffener/stiffener.ts';
import type { LaidPack } from './layers.ts';

/** The clamp ends so far behind the tread line, so that a gauge has room on the line, mm. */
export const CLAMP_BEHIND: Mm = 10;
/** A loop is hung no nearer to the tip than this, or it slips off. */
const FROM_TIP: Mm = 10;
/** The strain a bare pack is put to, and what it may be when the mass is a round one. Common practice: well below what breaks it, and enough to be read. */
const STRAIN = 0.0015, STRAINS = [0.001, 0.002] as const;
/** No more is hung by hand, kg, and no more than this share of what first breaks a ply or the core. Common practice. */
const MOST_HUNG = 20, SHARE_OF_BREAKING = 0.5;
/** One hanging of a mass. Places are mm from the heel, `ball` is the tread line, square across where the last touches the bench; droops at the load line and at the tread line against the clamp. */
export interface Hanging {
  readonly of: 'bare pack' | 'finished shoe';
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
  /** Droop of a pack clamped right up to the tread line, as the sheet tells it, for each mm of this one. */
  readonly onSheet: number;
}

/** Readings of the bare pack that mean the same: droops, in times of the one reckoned, and the finished sole's bend at each end; the last one has no end. */
export interface ReadingRow { readonly span: ReadingSpan; readonly droop: readonly [from: Mm, to: Mm]; readonly bend: readonly [from: Rad, to: Rad] }

/** @property more what is added, where it is */
export interface BenchTest { readonly bare: Hanging; readonly finished: Hanging; readonly more: PlacedPly; readonly rows: readonly ReadingRow[] }

/** Whether a pack can be clamped behind the ball and loaded ahead of it. */
export const hasRoom = ({ plate: { from, to, ball }, assessed: { lever } }: Pick<LaidPack, 'plate' | 'assessed'>): boolean =>
  ball - CLAMP_BEHIND - from >= CLAMPED && Math.min(lever, to - FROM_TIP - ball) >= LEVER_LEAST;
/** What a clamp must hold, and the shortest lever that tells anything, mm. Common practice. */
const CLAMPED: Mm = 3 * CLAMP_BEHIND, LEVER_LEAST: Mm = 20;

/** The three lines square across a bare pack that its test is set up by; undefined where it has no room for one. */
export interface BenchLines { readonly clamp: Mm; readonly tread: Mm; readonly load: Mm }
export const benchLinesOf = (pack: Pick<LaidPack, 'plate' | 'assessed'>): BenchLines | undefined => {
  const { plate: { ball, to }, assessed: { lever } } = pack;
  return hasRoom(pack) ? { clamp: ball - CLAMP_BEHIND, tread: ball, load: Math.min(ball + lever, to - FROM_TIP) } : undefined;
};

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

/** A pack as it is hung on the bench: as it is, or without what lies on it in the shoe; a camber that is told stands whole. */
export const hungAs = (stiffener: Stiffener, of: Hanging['of']): Stiffener => (of === 'bare pack' ? unladen(asHung(stiffener)) : asHung(stiffener));

/** A plate held so far behind its tread line, the clamp where else the foot bears at the ball. */
export const clampedBehind = (plate: Plate, behind: Mm = CLAMP_BEHIND): Plate => {
  const ball = plate.ball - behind;
  return { ...plate, ball, heel: Math.min(plate.heel, ball - 2 * CLAMP_BEHIND) };
};

/** What a kg does at the load line of a pack clamped behind the ball. Reserves: how many of them first break something. */
interface PerKg { readonly droop: Mm; readonly atBall: Mm; readonly strain: number; readonly breaks: number }

function perKgOf(stiffener: Stiffener, plate: Plate, { mass, wanted }: Asked, loadAt: Mm, behind = CLAMP_BEHIND): PerKg | undefined {
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

function hangingOf({ plate, asked, stiffener: laid }: LaidPack, of: Hanging['of'], loadAt: Mm, good: ReadingSpan | undefined, massFor: (perKg: PerKg) => number): Hanging | undefined {
  const stiffener = hungAs(laid, of), perKg = perKgOf(stiffener, plate, asked, loadAt), atBall = perKgOf(stiffener, plate, asked, loadAt, 0);
  if (!perKg || !atBall) return undefined;
  const mass = massFor(perKg), droop = mass * perKg.droop;
  return {
    of, clampAt: plate.ball - CLAMP_BEHIND, ball: plate.ball, loadAt, mass, moment: (mass * GRAVITY * (loadAt - plate.ball)) / 1000, strain: mass * perKg.strain,
    droop, ...(good ? { band: [good.from * droop, good.to * droop] } : {}), atBall: mass * perKg.atBall, onSheet: atBall.droop / perKg.droop,
  };
}

/** The round mass nearest to the strain wanted, in steps that stand on weights; less where that is too much to hang. */
function roundMass({ strain, breaks }: PerKg): number {
  const most = Math.min(MOST_HUNG, SHARE_OF_BREAKING * breaks, STRAINS[1] / strain), wanted = Math.min(STRAIN / strain, most), step = [1, 0.5, 0.1, 0.05].find((one) => wanted >= 5 * one) ?? 0.01;
  return Math.max(Math.floor(Math.min(Math.round(wanted / step) * step, most) / step + 1e-9) * step, 0.01);
}
