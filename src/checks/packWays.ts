import type { LengthUnit } from '../fitting/lengthUnit.ts';
import { alternativesTo } from '../stiffener/alternatives.ts';
import { PLIES_MOST } from '../stiffener/choices.ts';
import { leastToSpare } from '../stiffener/decides.ts';
import { bendTold, WALKING_RESERVE, WALKING_STRAIN } from '../stiffener/grades.ts';
import { laidIn } from '../stiffener/layers.ts';
import { BENCH_MOMENT, STUMBLE_WEIGHTS } from '../stiffener/loads.ts';
import type { Pack } from '../stiffener/pack.ts';
import type { Criterion, Keeps, Reserve, Tried } from '../stiffener/search.ts';
import { lesser, type Placed } from '../stiffener/strained.ts';
import { wouldKeep, type OrderChange, type Would } from '../stiffener/wouldKeep.ts';
import { foundOrLaid, inUnits, length } from './packWords.ts';
import { grams, mm, rounded, sentences } from './say.ts';

/** Other ways to a stiffener beside it, and what would keep to more, in words: the same in the terminal, on the page and among the findings. */

export const CRITERION_WORDS: Readonly<Record<Criterion, string>> = {
  bend: 'bend', stumble: 'plies in a stumble', walking: 'plies in walking', strain: 'strain in walking', wrinkling: 'wrinkling', 'core shear': 'core shear', yield: 'the strip of metal',
};
const KEEPS: Readonly<Record<Keeps, string>> = { all: 'all', must: 'what stops', not: 'no' };

/** "core shear", "strain in walking, if dished" */
export const reserveWords = ({ of, ifDished }: Reserve): string => `${CRITERION_WORDS[of]}${ifDished ? ', if dished' : ''}`;

/** What a row of `waysTo` tells after the way, with what it means and under which load. */
export const WAY_MEANS = {
  plies: 'layers of cloth, strips across the ball counted', thick: 'plies and core together', weight: 'all of it, resin in', resin: 'of the weight, what is mixed and stays in the plies',
  bends: `at the ball on the bench, under ${BENCH_MOMENT} N·m for each kg of body mass`, walks: 'the bend at the ball in walking, where it is bent most',
  strain: `how far the plies are stretched in walking, at most; more than ${rounded(100 * WALKING_STRAIN, 1)} % is too much for every day (common practice)`, stores: 'energy at the ball, each step of walking',
  'first ply': `how many times as hard a stumble (${STUMBLE_WEIGHTS} body weights on the tip) may be before a ply fails`, 'core shear': 'how many times walking and a stumble may grow before the core is sheared',
  wrinkling: 'how many times walking and a stumble may grow before a pressed face wrinkles',
  'least to spare': `how many times what it may bear it could bear, and of what: bend, plies in a stumble and in walking (of which ${WALKING_RESERVE} times are wanted), strain, core, faces; if dished: where a bottom whose camber nobody measured is dished as most are`,
  'keeps to': 'all that is asked; only all that stops; or not even that',
} as const;
export const WAY_HEADS = Object.keys(WAY_MEANS);

/** A way to a stiffener, and its numbers in the order of `WAY_HEADS`. */
export interface WayWords { readonly way: string; readonly numbers: readonly string[] }

/** The pack itself, then the best of each other kind, then what would keep to more. */
export function waysTo(pack: Pack, units: LengthUnit): WayWords[] {
  const other = (way: string, tried: Tried): WayWords => ({ way: `${inUnits(way, units)}: ${inUnits(laidIn(tried, pack.plate), units)}`, numbers: numbersOf(tried, pack, units) });
  return [
    { way: foundOrLaid(pack), numbers: numbersOf(pack, pack, units) },
    ...alternativesTo(pack).map(({ way, tried }) => other(way, tried)), ...wouldKeep(pack).map(({ change, tried }) => other(`with ${changeWords(change).map(({ text }) => text).join(' and ')}`, tried)),
  ];
}

type Numbers = Pick<Pack, 'plies' | 'thickness' | 'grams' | 'assessed' | 'keeps'>;
function numbersOf({ plies, thickness, grams: weight, assessed, keeps }: Numbers, { asked }: Pack, units: LengthUnit): string[] {
  const { bench, walking, stumble } = assessed, least = leastToSpare(assessed, asked), reserve = ({ times }: Placed): string => (Number.isFinite(times) ? rounded(times, 2) : '');
  return [
    String(plies), length(thickness, units, 1), grams(weight.pack), weight.resin === undefined ? '' : grams(weight.resin), bendTold(bench.bend), bendTold(walking.bend), `${rounded(Math.abs(walking.strain) * 100, 2)} %`,
    `${rounded(walking.energy, 2)} J`, reserve(stumble.firstPly), reserve(lesser(walking.coreShear, stumble.coreShear)), reserve(lesser(walking.wrinkling, stumble.wrinkling)), `${rounded(least.times, 2)} ${reserveWords(least)}`, KEEPS[keeps],
  ];
}

/** What else the sheet would say: in words, and the field of order.stiffener that says it. */
function changeWords({ core, coreThickness, cloth, edges, underFoam, thicknessAtMost, camber, plies }: OrderChange): readonly { readonly text: string; readonly field: string }[] {
  const one = (text: string, field: string) => [{ text, field }];
  return [
    ...(plies ? one(`${plies.length} plies`, 'plies') : []),
    ...(coreThickness === undefined ? [] : one(`${Number(coreThickness.toFixed(2))} mm of ${core ?? 'core'}`, core === undefined ? 'coreThickness' : 'core, coreThickness')),
    ...(cloth === undefined ? [] : one(cloth, 'cloth')),
    ...(edges === undefined ? [] : one(`edges turned up ${mm(edges, 0)}`, 'edges')),
    ...(underFoam === undefined ? [] : one(underFoam ? 'some plies under the foam body' : 'no ply under the foam body', 'underFoam')),
    ...(thicknessAtMost === undefined ? [] : one(`${mm(thicknessAtMost)} of room`, 'thicknessAtMost')),
    ...(camber === undefined ? [] : one(`a bottom cambered ${mm(camber, 0)} at the ball`, 'camber')),
  ];
}

const wouldWords = ({ change, tried }: Would, { plate }: Pack): string =>
  `${changeWords(change).map(({ text, field }) => `${text} (order.stiffener.${field})`).join(' and ')}: ${laidIn(tried, plate)}`;

const TRIED = 'other cores and cloths, edges turned up, plies under the foam body, more room, camber, more plies';

/** Some of what would keep to more than a pack that was sought, each put in; or that nothing of what was tried does. */
export function wouldHelp(pack: Pack): string {
  const would = wouldKeep(pack, 'some'), reached = (keeps: Would['keeps']): string => would.filter((one) => one.keeps === keeps).map((one) => wouldWords(one, pack)).join(', or by ');
  const all = reached('all'), must = reached('must');
  if (pack.keeps !== 'all' && would.length === 0) return `Nothing that was tried keeps to ${pack.keeps === 'must' ? 'all' : 'it'}: ${TRIED}${pack.keeps === 'must' ? '' : ', two of these at once'}`;
  return sentences(...(all === '' ? [] : [`Kept to in all by ${all}`]), ...(must === '' ? [] : [`With nothing left that stops by ${must}`]));
}

export const noneReaches = ({ by, keeps, order: { thicknessAtMost } }: Pack): string =>
  (by === 'search' && keeps !== 'all' ? `No pack of up to ${PLIES_MOST} plies within ${mm(thicknessAtMost)} keeps to ${keeps === 'must' ? 'all' : 'it'}; this one falls least short` : '');
