import { onceEach } from '../geometry/lately.ts';
import { inDegrees } from '../geometry/units.ts';
import { figuresOf, type FigureKey } from '../checks/figures.ts';
import { inputOf, type InputField } from '../checks/inputs.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import { isEstimated } from '../fitting/measure.ts';
import type { Side } from '../fitting/words.ts';
import type { MatchShoe, Pair, RockerShoe, Shoe } from '../pair/shoe.ts';
import { accuracyOf, erringFields, type Accuracy } from './accuracy.ts';
import { bandFrom, type Band } from './band.ts';
import { responseTo, varianceOf, type Response } from './slopes.ts';
import { ofKind, variantsOf, type Kind, type Numbers } from './variants.ts';
import { WATCHED, WATCHED_RAISE, type Watched } from './watched.ts';

/** One measure and what its error does. Angles in degrees, lengths in mm. */
export interface Influence {
  readonly field: InputField;
  /** Whose measure it is: a raise rests on those of the other shoe too. */
  readonly side: Side;
  readonly label: string;
  readonly unit: 'mm' | 'deg';
  readonly value: number;
  /** One standard deviation. */
  readonly accuracy: number;
  readonly accuracyFrom: Accuracy['from'];
  readonly estimated: boolean;
  /** What each result moves by for `step` more: 5 mm, or a degree. */
  readonly step: number;
  readonly moves: readonly Move[];
  /** Share of all that is unsure of the shoe, each result weighed by what matters of it, 0 to 1. */
  readonly share: number;
  /** Where measures off by no more than the accuracy leave no shape: how far off that was tried, less or more. */
  readonly noShape: { readonly less?: number; readonly more?: number };
}

/** What a measure does to one result: by how much for a step of it, and its share of the variance of that result. */
export interface Move { readonly key: FigureKey; readonly by: number; readonly share: number }

/** A result, and one standard deviation of it. */
export interface Uncertain extends Watched { readonly value: number; readonly deviation: number }

/** How sure a shoe is: each result's spread, and the measures ranked by what they decide of it. */
export interface ShoeSpread {
  readonly side: Side;
  readonly kind: Shoe['kind'];
  readonly results: readonly Uncertain[];
  readonly influences: readonly Influence[];
  /** Where the ground face may lie under the last; of a rocker. */
  readonly band: Band | undefined;
}

/** How much of a measure is spoken of: 5 mm or one degree. */
const STEP = { mm: 5, deg: 1 } as const;

/**
 * How sure the shoes of a pair are, worked out from each measure alone: both one-sided differences through the whole solve,
 * variances added up. The other shoe of two rockers is taken as it is. Cheap: some forty variants a shoe.
 */
export const linearSpread: (pair: Pair) => readonly ShoeSpread[] = onceEach(workOut);   // papers and numbers ask for that of the same pair

function workOut({ shoes, fitting }: Pair): readonly ShoeSpread[] {
  const sensitivities = new Map(shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [[shoe.side, sensitivitiesOf(shoe)]] : []))), [first = []] = sensitivities.values();
  return shoes.map((shoe) => (shoe.kind === 'rocker' ? ofRocker(shoe, sensitivities.get(shoe.side) ?? [], fitting) : ofMatch(shoe, first, fitting)));
}

/** A measure with its accuracy and how the numbers of a rocker answer to it. */
interface Sensitivity { readonly field: InputField; readonly shoe: ShoeFitting; readonly accuracy: Accuracy; readonly response: Response }

function sensitivitiesOf(shoe: RockerShoe): readonly Sensitivity[] {
  const { fitting } = shoe, vary = variantsOf(shoe), base = vary({});
  if (!base) return [];
  return erringFields(fitting).flatMap((field): Sensitivity[] => {
    const accuracy = accuracyOf(field, fitting), response = accuracy && responseTo(field, accuracy.deviation, base, vary);
    return response ? [{ field, shoe: fitting, accuracy, response }] : [];
  });
}

/** Of each only the numbers of one kind, which one shoe looks at. */
const only = (kind: Kind, { response: { less, more, noShape }, ...rest }: Sensitivity): Sensitivity =>
  ({ ...rest, response: { less: ofKind(kind, less), more: ofKind(kind, more), noShape } });

function ofRocker(shoe: RockerShoe, sensitivities: readonly Sensitivity[], fitting: Fitting): ShoeSpread {
  const faces = sensitivities.map((one) => only('face', one));
  return { ...spreadOver(shoe, WATCHED, sensitivities.map((one) => only('watched', one)), fitting), band: bandFrom(shoe, deviationsOf(faces)) };
}

/** A raise answers to what the other shoe rests on, and to its own heights as they are now: a millimetre more is one less to raise. */
function ofMatch(shoe: MatchShoe, sensitivities: readonly Sensitivity[], fitting: Fitting): ShoeSpread {
  const own = (['order.seatHeightNow', 'order.ballHeightNow'] as const).flatMap((field, i): Sensitivity[] => {
    const accuracy = accuracyOf(field, shoe.fitting), one = (by: number): Numbers => [0, 1].map((k) => (k === i ? by : 0));
    return accuracy ? [{ field, shoe: shoe.fitting, accuracy, response: { less: one(accuracy.deviation), more: one(-accuracy.deviation), noShape: {} } }] : [];
  });
  return { ...spreadOver(shoe, WATCHED_RAISE, [...sensitivities.map((one) => only('stands', one)), ...own], fitting), band: undefined };
}

const variances = ({ response: { less, more } }: Sensitivity): number[] => less.map((one, i) => varianceOf(one, more[i]!));

function deviationsOf(sensitivities: readonly Sensitivity[]): number[] {
  const all = sensitivities.map(variances);
  return (all[0] ?? []).map((_, i) => Math.sqrt(all.reduce((sum, one) => sum + one[i]!, 0)));
}

function spreadOver(shoe: Shoe, watched: readonly Watched[], sensitivities: readonly Sensitivity[], fitting: Fitting): Omit<ShoeSpread, 'band'> {
  const figures = new Map(figuresOf(shoe, fitting).map(({ key, value }) => [key, value])), deviations = deviationsOf(sensitivities);
  const results = watched.map((one, i): Uncertain => ({ ...one, value: figures.get(one.key) ?? NaN, deviation: deviations[i] ?? 0 }));
  const weights = sensitivities.map((one) => variances(one).reduce((sum, variance, i) => sum + variance / watched[i]!.matters ** 2, 0)), all = weights.reduce((sum, one) => sum + one, 0);
  const influences = sensitivities.map((one, i) => influenceOf(one, results, all > 0 ? weights[i]! / all : 0));
  return { side: shoe.side, kind: shoe.kind, results, influences: influences.filter(isFelt).sort((a, b) => b.share - a.share) };
}

function influenceOf({ field, shoe, accuracy: { deviation, from }, response }: Sensitivity, results: readonly Uncertain[], share: number): Influence {
  const { label, unit, of } = inputOf(field), measure = of(shoe)!, inUnit = (x: number): number => (unit === 'deg' ? inDegrees(x) : x), accuracy = inUnit(deviation);
  const moves = results.map(({ key, deviation: whole }, i): Move => {
    const less = response.less[i]!, more = response.more[i]!;
    return { key, by: ((more - less) / 2 / accuracy) * STEP[unit], share: whole > 0 ? varianceOf(less, more) / whole ** 2 : 0 };
  });
  const { less, more } = response.noShape, noShape = { ...(less === undefined ? {} : { less: less * accuracy }), ...(more === undefined ? {} : { more: more * accuracy }) };
  return { field, side: shoe.side, label, unit, value: inUnit(measure.value), accuracy, accuracyFrom: from, estimated: isEstimated(measure), step: STEP[unit], moves, share, noShape };
}

/** Below this a result does not move that anyone could measure. */
const LEAST_MOVE = 0.005;
const isFelt = ({ moves, noShape: { less, more } }: Influence): boolean =>
  less !== undefined || more !== undefined || moves.some(({ by }) => Math.abs(by) > LEAST_MOVE);
