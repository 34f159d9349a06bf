import { onceEach } from '../geometry/lately.ts';
import { inDegrees } from '../geometry/units.ts';
import { RESIN } from '../materials/stiffeners.ts';
import type { Asked, Assessed, Glanced } from './assess.ts';
import type { Bench, Open } from './choices.ts';
import { gradeOf, type Grade } from './grades.ts';
import { RESIN_USUAL } from './laying.ts';
import { inShort, laidIn } from './layers.ts';
import { onceForAlike, type Pack } from './pack.ts';
import { withResin, type Ply } from './ply.ts';
import { assessedOr, reservesOf, searched, softest, type Criterion, type Reserve, type Tried } from './search.ts';
import { countedAs, type Along, type Stiffener } from './stiffener.ts';

/** What decides a pack: which of all it is held to, which of the loads and materials that were taken as usual, and how sure its bend is. */

/** What a pack has least to spare of. @param of must: of what must be alone */
export const leastToSpare = (glance: Glanced, asked: Asked, of: 'must' | 'all' = 'all'): Reserve =>
  reservesOf(glance, asked).filter(({ must }) => must || of === 'all').reduce((least, one) => (one.times < least.times ? one : least));

/** Of all that was open the pack that bends most, yet keeps to what must be. */
export const softestOf: (pack: Pack) => Tried | undefined = onceForAlike(({ asked }, { open, bench }): Tried | undefined => softest(open, bench, asked), undefined);

/** The pack that would be found. @property changes whether that is another one; how many plies and grams it takes more */
export interface Otherwise { readonly tried: Tried; readonly changes: boolean; readonly plies: number; readonly grams: number }

export interface Held extends Otherwise { readonly without: Criterion }
const CRITERIA: readonly Criterion[] = ['bend', 'stumble', 'walking', 'strain', 'wrinkling', 'core shear'];

/** The pack that would be found if one thing were not asked of it, for each; the one that changes the pack most first. Nothing of a pack that is laid. */
export const withoutEach: (pack: Pack) => readonly Held[] = onceForAlike((pack, { open, bench }): readonly Held[] =>
  mostFirst(CRITERIA.flatMap((without) => otherwise(pack, searched(open, bench, pack.asked, { without })).map((one) => ({ ...one, without })))), []);

/** What was taken as usual and might be otherwise. @property value N·m for each kg, or body weights, where it is a number */
export interface Supposed extends Otherwise { readonly what: 'walking' | 'stumble' | 'soft cores' | 'camber none' | 'camber whole' | 'camber usual'; readonly value?: number }

/** Low, as people were measured barefoot at most, and high; N·m for each kg. Basis: as WALKING_MOMENT and WALKING_RANGE. */
const WALKING: readonly number[] = [0.25, 0.42, 0.8], STUMBLE = 1;

/** The pack that would be found if a load or a material were otherwise; the one that changes it most first. */
export const supposing: (pack: Pack) => readonly Supposed[] = onceForAlike((pack, { open, bench }): readonly Supposed[] => {
  const { walking: _, ...asked } = pack.asked, { camber, ...flat } = bench;
  const found = (what: Supposed['what'], ways: { readonly open?: Open; readonly bench?: Bench; readonly asked?: Asked }, value?: number): Supposed[] =>
    otherwise(pack, searched(ways.open ?? open, ways.bench ?? bench, ways.asked ?? pack.asked)).map((one) => ({ ...one, what, ...(value === undefined ? {} : { value }) }));
  return mostFirst([
    ...WALKING.flatMap((walkingMoment) => found('walking', { asked: { ...asked, walkingMoment } }, walkingMoment)),
    ...found('stumble', { asked: { ...pack.asked, stumbleWeights: STUMBLE } }, STUMBLE),
    ...(open.cores.some((core) => core && !core.foam) ? found('soft cores', { open: { ...open, cores: open.cores.map((core) => core && { ...core, count: 'least' }) } }) : []),
    ...(camber?.counted === 'half' ? found('camber none', { bench: flat }) : []),
    ...(camber && camber.counted !== 'whole' ? found(camber.counted === 'half' ? 'camber whole' : 'camber usual', { bench: { ...flat, camber: { ...camber, counted: 'whole' } } }) : []),
  ]);
}, []);

function otherwise({ stiffener, underFoam, plies, grams, plate }: Pack, tried: Tried | undefined): Otherwise[] {
  return tried ? [{ tried, changes: laidIn(tried, plate) !== inShort(stiffener, underFoam, plate), plies: tried.plies - plies, grams: tried.grams.pack - grams.pack }] : [];
}

const mostFirst = <T extends Otherwise>(all: readonly T[]): readonly T[] => [...all].sort((a, b) => Number(b.changes) - Number(a.changes) || Math.abs(b.plies) - Math.abs(a.plies) || Math.abs(b.grams) - Math.abs(a.grams));

/** A material that was taken as usual: how far the bend at the ball goes if it is otherwise, and at the softest what is strained and what a stumble leaves. */
export interface Assumption {
  readonly of: 'camber' | 'core' | 'resin';
  readonly text: string;
  readonly bends: readonly [worst: number, best: number];
  readonly grades: readonly [worst: Grade, best: Grade];
  readonly softest: Pick<Assessed, 'walking' | 'stumble'>;
}

/** Degrees of bend with each assumption at its worst and at its best, the pack's own between them; the one that moves it most first. Worked out once for each pack. */
export const assumptionsOf: (pack: Pack) => readonly Assumption[] = onceEach((pack) => {
  const { stiffener } = pack, { camber, core } = stiffener, found: Assumption[] = [];
  const cambered = (height: Along): Stiffener => ({ ...stiffener, camber: { height, counted: 'whole' } });
  if (camber?.counted === 'half') found.push(between(pack, 'camber', 'The camber counts half until the bench test was read: none of it at worst, all of it at best', cambered(0), cambered(camber.height)));
  if (core) found.push(between(pack, 'core', `The ${core.name} is as soft or as stiff as any sold under that name`, countedAs(stiffener, 'least'), countedAs(stiffener, 'most')));
  if ([...stiffener.below, ...stiffener.above].some(({ ply }) => ply.laidOf)) found.push(between(pack, 'resin', 'Resin laid by hand: more makes plies thicker and stiffer in bending, less thinner', wetter(pack, RESIN_USUAL.least), wetter(pack, RESIN_USUAL.most)));
  return found.sort((a, b) => b.bends[0] - b.bends[1] - (a.bends[0] - a.bends[1]));
});

/** Plies with another share of the resin they were told to have; as they are where so little or so much cannot be laid. */
function wetter({ stiffener }: Pack, usual: number): Stiffener {
  const as = (plies: Stiffener['below']): Stiffener['below'] => plies.map((placed) => ({ ...placed, ply: withResin(placed.ply, ((resinIn(placed.ply) ?? RESIN.byHand) * usual) / RESIN.byHand) }));
  return { ...stiffener, below: as(stiffener.below), above: as(stiffener.above) };
}
const resinIn = ({ laidOf }: Ply): number | undefined => (laidOf && laidOf.kind !== 'measured' ? laidOf.resin : undefined);

function between(pack: Pack, of: Assumption['of'], text: string, one: Stiffener, other: Stiffener): Assumption {
  const all = [pack.assessed, ...[one, other].map((stiffener) => assessedOr(stiffener, pack, pack.asked))].sort((a, b) => b.bench.bend - a.bench.bend), worst = all[0]!, best = all.at(-1)!;
  return { of, text, bends: [inDegrees(worst.bench.bend), inDegrees(best.bench.bend)], grades: [gradeOf(worst.bench.bend), gradeOf(best.bench.bend)], softest: worst };
}
