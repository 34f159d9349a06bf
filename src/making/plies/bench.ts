import { onceEach } from '../../geometry/lately.ts';
import { GRAVITY, type Mm, type Rad } from '../../geometry/units.ts';
import { assess, type Asked, type Assessed } from '../../stiffener/assess.ts';
import { gradeOf, type Grade } from '../../stiffener/grades.ts';
import { BENCH_MOMENT } from '../../stiffener/loads.ts';
import { limitOf } from '../../stiffener/search.ts';
import { countedAs, type PlacedPly, type Plate, type Stiffener } from '../../stiffener/stiffener.ts';
import { isWoven, type LaidPack } from './layers.ts';

/** The clamp ends so far behind the ball line, so that a gauge has room on the line, mm. */
export const CLAMP_BEHIND: Mm = 10;
/** A loop is hung no nearer to the tip than this, or it slips off. */
const FROM_TIP: Mm = 10;
/** The strain a bare pack is put to, and what it may be when the mass is a round one. Common practice: well below what breaks it, and enough to be read. */
const STRAIN = 0.0015, STRAINS = [0.001, 0.002] as const;
/** No more is hung by hand, kg, and no more than this share of what first breaks a ply or the core. Common practice. */
const MOST_HUNG = 20, SHARE_OF_BREAKING = 0.5;
/** How far plies laid by hand may be off in what they bend, either way. Common practice: a tenth of a millimetre on 1.4 mm is more than that. */
export const HAND_LAID_WITHIN = 0.15;

/** One hanging of a mass. Places are mm from the heel, droops at the load line and at the ball line against the clamp. */
export interface Hanging {
  readonly of: 'bare pack' | 'finished shoe';
  readonly clampAt: Mm;
  readonly ball: Mm;
  readonly loadAt: Mm;
  /** Kg; N·m about the ball line. */
  readonly mass: number;
  readonly moment: number;
  /** Of the plies. */
  readonly strain: number;
  readonly droop: Mm;
  /** Read anywhere between these the pack is as it was meant. */
  readonly band: readonly [least: Mm, most: Mm];
  readonly atBall: Mm;
  /** Droop of a pack clamped right up to the ball line, as the sheet tells it, for each mm of this one. */
  readonly onSheet: number;
}

/** What a reading of the bare pack means: droop, how much softer it is than reckoned (a share; stiffer is negative), the finished sole's bend and grade then, and what to add. */
export interface ReadingRow { readonly droop: Mm; readonly softer: number; readonly bend: Rad; readonly grade: Grade; readonly add: Addition | 'nothing' | undefined }
/** Plies laid on a pack that has cured. @property ply cloth and way of its fibres  @property bends the finished sole's bend against what it was */
export interface Addition { readonly words: string; readonly ply: string; readonly under: number; readonly over: number; readonly bends: number }

export interface BenchTest { readonly bare: Hanging; readonly finished: Hanging; readonly additions: readonly Addition[]; readonly rows: readonly ReadingRow[] }

/** Whether a pack can be clamped behind the ball and loaded ahead of it. */
export const hasRoom = ({ plate: { from, to, ball }, assessed: { lever } }: Pick<LaidPack, 'plate' | 'assessed'>): boolean =>
  ball - CLAMP_BEHIND - from >= CLAMPED && Math.min(lever, to - FROM_TIP - ball) >= LEVER_LEAST;
/** What a clamp must hold, and the shortest lever that tells anything, mm. Common practice. */
const CLAMPED: Mm = 3 * CLAMP_BEHIND, LEVER_LEAST: Mm = 20;

/** The bench test of a pack, worked out once; undefined where it has no room for one. */
export const benchTestOf: (pack: LaidPack) => BenchTest | undefined = onceEach((pack) => (hasRoom(pack) ? workedOut(pack) : undefined));

function workedOut(pack: LaidPack): BenchTest | undefined {
  const { stiffener, plate: { ball, to }, asked: { mass, wanted }, assessed: { lever } } = pack, naked: Stiffener = { ...stiffener, attached: [] };
  const bare = hangingOf(pack, naked, 'bare pack', Math.min(ball + lever, to - FROM_TIP), ({ perKg }) => roundMass(perKg));
  const finished = hangingOf(pack, stiffener, 'finished shoe', ball + lever, () => (BENCH_MOMENT * mass * 1000) / (GRAVITY * lever));
  if (!bare || !finished) return undefined;
  // As reckoned, whatever was read of it since.
  const reckoned = assess(stiffener, pack.plate, { mass, wanted, lever });
  if (!reckoned.ok) return undefined;
  const additions = additionsTo(pack, reckoned.value);
  return { bare, finished, additions, rows: rowsOf(pack, reckoned.value, bare, additions) };
}

/** What a kg does at the load line of a pack clamped behind the ball. Reserves: how many of them first break something. */
interface PerKg { readonly droop: Mm; readonly atBall: Mm; readonly strain: number; readonly breaks: number }

function perKgOf(stiffener: Stiffener, plate: Plate, { mass, wanted }: Asked, loadAt: Mm, behind = CLAMP_BEHIND): PerKg | undefined {
  const clampAt = plate.ball - behind, lever = loadAt - clampAt;
  const read = assess(stiffener, { ...plate, ball: clampAt, heel: Math.min(plate.heel, clampAt - 2 * CLAMP_BEHIND) }, { mass, wanted, lever });
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

function hangingOf({ plate, asked }: LaidPack, stiffener: Stiffener, of: Hanging['of'], loadAt: Mm, massFor: (found: { readonly perKg: PerKg }) => number): Hanging | undefined {
  const hung = (one: Stiffener, behind = CLAMP_BEHIND): PerKg | undefined => perKgOf(one, plate, asked, loadAt, behind);
  const perKg = hung(stiffener), atBall = hung(stiffener, 0), soft = hung(softest(stiffener)), stiff = hung(stiffest(stiffener));
  if (!perKg || !atBall || !soft || !stiff) return undefined;
  const mass = massFor({ perKg });
  return {
    of, clampAt: plate.ball - CLAMP_BEHIND, ball: plate.ball, loadAt, mass, moment: (mass * GRAVITY * (loadAt - plate.ball)) / 1000, strain: mass * perKg.strain,
    droop: mass * perKg.droop, band: [mass * stiff.droop * (1 - HAND_LAID_WITHIN), mass * soft.droop * (1 + HAND_LAID_WITHIN)], atBall: mass * perKg.atBall, onSheet: atBall.droop / perKg.droop,
  };
}

/** As soft, and as stiff, as what is sold under the core's name; a camber nobody has read may stand whole. */
const softest = (stiffener: Stiffener): Stiffener => countedAs(stiffener, 'least');
const stiffest = ({ camber, ...rest }: Stiffener): Stiffener => countedAs({ ...rest, ...(camber ? { camber: { ...camber, counted: 'whole' } } : {}) }, 'most');

/** The round mass nearest to the strain wanted, in steps that stand on weights; less where that is too much to hang. */
function roundMass({ strain, breaks }: PerKg): number {
  const most = Math.min(MOST_HUNG, SHARE_OF_BREAKING * breaks, STRAINS[1] / strain), wanted = Math.min(STRAIN / strain, most), step = [1, 0.5, 0.1, 0.05].find((one) => wanted >= 5 * one) ?? 0.01;
  return Math.max(Math.floor(Math.min(Math.round(wanted / step) * step, most) / step + 1e-9) * step, 0.01);
}

/** More plies like the first that runs through, with their fibres along the shoe: under a cured pack, or on both of its faces. */
function additionsTo({ stiffener, plate, asked }: LaidPack, { lever, bench: { bend } }: Assessed): Addition[] {
  const all = [...stiffener.below, ...stiffener.above], like = all.find(({ over }) => over === undefined) ?? all[0];
  if (!like) return [];
  const more: PlacedPly = { ply: like.ply, angle: 0 };
  return TRIES.flatMap(([under, over]): Addition[] => {
    const read = assess(withPlies(stiffener, more, under, over), plate, { mass: asked.mass, wanted: asked.wanted, lever });
    return read.ok ? [{ words: wordsOf(under, over), ply: `${like.ply.name}, ${isWoven(like.ply) ? '0/90°' : '0°'}`, under, over, bends: read.value.bench.bend / bend }] : [];
  });
}

function withPlies(stiffener: Stiffener, more: PlacedPly, under: number, over: number): Stiffener {
  const many = (n: number): PlacedPly[] => Array.from({ length: n }, () => more), below = [...many(under), ...stiffener.below];
  return stiffener.above.length > 0 || stiffener.core ? { ...stiffener, below, above: [...stiffener.above, ...many(over)] } : { ...stiffener, below: [...below, ...many(over)] };
}

/** [under, over] */
const TRIES = [[1, 0], [2, 0], [1, 1], [2, 2], [3, 3]] as const;

function wordsOf(under: number, over: number): string {
  const count = (n: number): string => `${n} ${n === 1 ? 'ply' : 'plies'}`;
  return over === 0 ? `${count(under)} under it` : `${count(under)} under and ${count(over)} over it`;
}

/** Readings that are looked up: shares of the droop that was reckoned. */
const SHARES = [0.8, 1, 1.15, 1.3, 1.5, 1.75, 2] as const;

function rowsOf({ asked }: LaidPack, { bench }: Assessed, { droop }: Hanging, additions: readonly Addition[]): ReadingRow[] {
  const most = limitOf(asked), least = [...additions].sort((a, b) => a.under + a.over - b.under - b.over || b.bends - a.bends);
  return SHARES.map((share): ReadingRow => {
    const bend = bench.bend * share;
    return { droop: droop * share, softer: 1 - 1 / share, bend, grade: gradeOf(bend), add: bend <= most ? 'nothing' : least.find(({ bends }) => bend * bends <= most) };
  });
}
