/**
 * What is searched, without a word of the trade: figures that hang on a few numbers, each number counted in whole steps
 * of the sheet, for a maker can write nothing between two of them.
 */
export type Figures = Readonly<Record<string, number>>;

/** What comes of a point. `piece` names what governs there: figures bend where it changes. */
export interface Seen { readonly figures: Figures; readonly piece: string }

/** A point of what is searched: steps along each axis, whole ones where it is to be written down. */
export type SearchPoint = readonly number[];

/**
 * One number that may be changed, from `low` to `high` in whole steps.
 * @property ordered where it stands now; it may lie between two steps or beyond the ends
 * @property dear what a step away from there costs: so little that it decides between equals alone
 */
export interface Axis { readonly low: number; readonly high: number; readonly ordered: number; readonly dear: number }

/** A figure that costs `weight` for each unit it lies past `past`, upwards (sign 1) or downwards (sign -1). */
export interface Term { readonly of: string; readonly sign: 1 | -1; readonly past: number; readonly weight: number }

/** A figure that must not lie past a limit; `scale` is how much past it is felt as one. */
export interface Bound { readonly of: string; readonly sign: 1 | -1; readonly limit: number; readonly scale: number }

export interface Task {
  readonly axes: readonly Axis[];
  /** Undefined where there is no shape. Works out each point once. */
  readonly look: (point: SearchPoint) => Seen | undefined;
  /** The same seen quickly, and some hundredths off: good enough to find the way. */
  readonly glance: (point: SearchPoint) => Seen | undefined;
  readonly terms: readonly Term[];
  readonly bounds: readonly Bound[];
  /** Figures that are the greatest of several smooth ones, one for each piece: seen from below, every piece holds everywhere. */
  readonly greatestOf: ReadonlySet<string>;
}

/**
 * Price of a limit passed by one scale. Hard, in what is found at last: it outweighs any loss there can be. On the way there a
 * softer one, still far above what a millimetre ever buys, lets a search cut a bend in a limit and come back to it.
 */
export const HARD = 1000, ON_THE_WAY = 30;
/** A limit is kept to within the rounding of the arithmetic. */
export const KEPT = 1e-9;

export const pastBy = ({ figures }: Seen, { of, sign, limit }: Bound): number => Math.max(0, sign * (figures[of]! - limit) - KEPT);
export const keeps = (seen: Seen, bounds: readonly Bound[]): boolean => bounds.every((bound) => pastBy(seen, bound) === 0);

export const lossOf = (seen: Seen, terms: readonly Term[]): number =>
  terms.reduce((sum, { of, sign, past, weight }) => sum + weight * Math.max(0, sign * (seen.figures[of]! - past)), 0);

/** What is to be least: the loss, a little for every change, and very much for a limit that is passed. */
export function meritOf({ look, terms, bounds, axes }: Task, point: SearchPoint, price = HARD): number {
  const seen = look(point);
  if (!seen) return Infinity;
  const changes = axes.reduce((sum, { ordered, dear }, i) => sum + dear * Math.abs(point[i]! - ordered), 0);
  return lossOf(seen, terms) + changes + bounds.reduce((sum, bound) => sum + (price * pastBy(seen, bound)) / bound.scale, 0);
}

/** The nearest place on an axis: a whole step, or where the number stands now, which no sheet has to be changed for. */
export function placed({ low, high, ordered }: Axis, at: number): number {
  const step = Math.min(high, Math.max(low, Math.round(at)));
  return ordered >= low && ordered <= high && Math.abs(at - ordered) <= 0.5 ? ordered : step;
}
