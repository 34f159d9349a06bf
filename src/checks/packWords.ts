import { LENGTH_DIGITS, type LengthUnit } from '../fitting/lengthUnit.ts';
import type { Side } from '../fitting/words.ts';
import { inDegrees, MM_PER_INCH, type Mm } from '../geometry/units.ts';
import type { BentBy } from '../stiffener/bentBy.ts';
import type { BentShape } from '../stiffener/bentShape.ts';
import { BEND_MOST, bendTold } from '../stiffener/grades.ts';
import { inShort, layersDown } from '../stiffener/layers.ts';
import { BENCH_MOMENT } from '../stiffener/loads.ts';
import type { Pack } from '../stiffener/pack.ts';
import type { Keeps } from '../stiffener/search.ts';
import { capital, deg, inInches, mm, rounded } from './say.ts';

/** How a stiffener is laid and bends, in words: the same in the terminal and on the page. */

export const length = (value: Mm, units: LengthUnit, digits = 2): string => (units === 'in' ? `${rounded(value / MM_PER_INCH, LENGTH_DIGITS.in)} in` : mm(value, digits));
export const inUnits = (text: string, units: LengthUnit): string => (units === 'in' ? inInches(text) : text);

export const foundOrLaid = ({ by }: Pick<Pack, 'by'>): string => (by === 'sheet' ? 'as laid' : 'as found');
export const packInShort = ({ stiffener, underFoam, plate }: Pick<Pack, 'stiffener' | 'underFoam' | 'plate'>, units: LengthUnit): string => inUnits(inShort(stiffener, underFoam, plate), units);

/** A layer in words; the angle is empty where it has none. */
export interface LayerWords { readonly name: string; readonly thickness: string; readonly angle: string; readonly where: string }
export const layerWords = (pack: Pack, units: LengthUnit): LayerWords[] => layersDown(pack).map(({ name, thickness, fibres = '', over }) => ({
  name: inUnits(name, units), thickness: length(thickness, units), angle: fibres, where: over ? `${length(over.from, units, 0)} to ${length(over.to, units, 0)}` : 'all along',
}));

/** Said once where plies lie slanting on a right shoe. */
export const MIRRORED = 'Angles are those of a left shoe, as on the sheet; on this right one they lie mirrored.';
export const isSlanted = (pack: Pack, side: Side): boolean => side === 'right' && layersDown(pack).some(({ angle = 0 }) => Math.abs(angle) % 90 !== 0);

const ASKED_KEPT: Readonly<Record<Keeps, string>> = {
  all: 'It keeps to all that is asked.', must: 'Nothing of it stops, but it does not keep to all that is asked: see the checks.', not: 'It does not keep to what is asked: see the checks.',
};

/** How stiff it is, on the bench and in walking, and whether that is what is asked. @param est behind what rests on an estimate */
export function gradeWords({ assessed: { grade, bench, walking: { bend, load: { moment } } }, asked: { mass }, keeps }: Pack, est: string): string {
  return `${capital(grade)}: the ball bends ${bendTold(bench.bend)}${est} on the bench, under ${BENCH_MOMENT} N·m for each kg, and ${bendTold(bend)}${est} in walking, under ${rounded(moment / 1000 / mass, 2)} N·m for each kg. ${ASKED_KEPT[keeps]}`;
}

const UNDER: Readonly<Record<BentBy, string>> = { bench: 'On the bench, clamped up to the ball', walking: 'Where walking strains it most', stumble: 'In a stumble on the tip' };
/** Beyond so much of bend straight reckoning tells more than there would be, degrees; beyond `BEND_MOST` it tells nothing but that a pack is far too soft. */
const TELLS_MORE = 15;
export const isFarTooSoft = ({ bend }: Pick<BentShape, 'bend'>): boolean => bend > BEND_MOST;

/** "On the bench, clamped up to the ball: bends 0.28° at the ball, the tip droops 0.3 mm." */
export function bentWords({ by, bend, tip }: Pick<BentShape, 'by' | 'bend' | 'tip'>, units: LengthUnit, est: string): string {
  if (isFarTooSoft({ bend })) return `${UNDER[by]}: bends ${bendTold(bend)} at the ball, so far that nothing else can be told of it: it is far too soft.`;
  const [went, seen] = by === 'bench' ? ['droops', ''] : ['gives way by', ', seen from the sole at the ball'], more = inDegrees(bend) > TELLS_MORE ? ` Beyond ${deg(TELLS_MORE, 0)} this tells rather more than there would be.` : '';
  return `${UNDER[by]}: bends ${deg(inDegrees(bend), 2)}${est} at the ball, the tip ${went} ${length(tip, units, 1)}${est}${seen}.${more}`;
}

/** Plies and core together. */
export const thickWords = ({ thickness }: Pick<Pack, 'thickness'>, units: LengthUnit): string => length(thickness, units, 1);
