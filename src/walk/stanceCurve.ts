import type { Walk } from '../fitting/fitting.ts';
import type { Point } from '../geometry/point.ts';
import { clamp } from '../geometry/solve.ts';
import { steadyCurve } from '../geometry/steadyCurve.ts';
import { degrees, type Rad } from '../geometry/units.ts';
import { MEAN_CREDIT, MEAN_STANCE } from './meanStance.ts';

/**
 * One stance of one leg, a value for each percent from heel contact to toe-off. Angles in radians from upright, forward
 * positive; share of stance runs from 0 to 1 wherever it is asked for.
 */
export interface StanceCurve {
  readonly shank: readonly Rad[];
  /** The straight line from ankle pivot to hip. */
  readonly legLine: readonly Rad[];
  /** What an ankle that is free to bend adds to the shank, toes up positive. */
  readonly ankle: readonly Rad[];
  /** The floor's upright push in body weights; what pushes fore and aft is left out. */
  readonly push: readonly number[];
  readonly source: CurveSource;
  /** Where the push comes from. */
  readonly pushSource: 'mean' | 'table';
}
export type CurveSource = 'mean' | 'angles' | 'table';

/** Whether nothing of it, or only three angles, was seen on this client. */
export const isEstimatedCurve = ({ source }: StanceCurve): boolean => source !== 'table';

/** Whether this client was seen to walk. */
export const isMeasured = ({ source }: StanceCurve): boolean => source !== 'mean';

/** Where a curve comes from, in words. */
export const SOURCE_WORDS: Readonly<Record<CurveSource, string>> = {
  mean: `walk not measured, so the ${MEAN_CREDIT} (est.)`,
  angles: `three angles from a side video, between them the shape of the ${MEAN_CREDIT} (est.)`,
  table: 'walk as in its table',
};

/** One percent of stance. */
const PERCENTS = MEAN_STANCE.length - 1;

const column = (of: (row: (typeof MEAN_STANCE)[number]) => number): readonly number[] => MEAN_STANCE.map(of);
const SHANK = column(([shank]) => degrees(shank)), LEG_LINE = column(([, leg]) => degrees(leg)), FOOT = column(([, , foot]) => degrees(foot)), PUSH = column(([, , , push]) => push);

/** A value of a curve between two percents, on the straight line between theirs. */
export function valueAt(values: readonly number[], share: number): number {
  const at = clamp(share, 0, 1) * PERCENTS, i = Math.min(PERCENTS - 1, Math.floor(at)), before = values[i]!;
  return before + (values[i + 1]! - before) * (at - i);
}

export const MEAN_CURVE: StanceCurve = withShank(SHANK, 'mean');

/**
 * The curve a leg walks on: as the client was seen to walk, else the mean. Three angles keep the shape of the mean: its
 * angles are carried over to the client's by a rising curve through the three. Knee and, where it is free, ankle bend
 * at each percent as the mean walker's do.
 */
export function curveOf(walk: Walk | undefined): StanceCurve {
  switch (walk?.kind) {
    case undefined: return MEAN_CURVE;
    case 'angles': {
      const over = heldCurve([[SHANK[0]!, walk.contact.value], [SHANK[PERCENTS / 2]!, walk.midStance.value], [SHANK[PERCENTS]!, walk.toeOff.value]]);
      return withShank(SHANK.map(over), 'angles');
    }
    case 'table': {
      const shank = everyPercent(walk.rows.map(({ share, shank: angle }): Point => [share, angle]));
      const pushes = walk.rows.flatMap(({ share, push }): Point[] => (push === undefined ? [] : [[share, push]]));
      return { ...withShank(shank, 'table'), ...(pushes.length > 1 ? { push: everyPercent(pushes), pushSource: 'table' } : {}) };
    }
  }
}

/** A curve through points that stays as it is beyond the first and the last of them: nothing was seen there. */
function heldCurve(points: readonly Point[]): (x: number) => number {
  const curve = steadyCurve(points), first = points[0]![0], last = points[points.length - 1]![0];
  return (x) => curve(clamp(x, first, last));
}

const everyPercent = (points: readonly Point[]): number[] => {
  const through = heldCurve(points);
  return Array.from({ length: PERCENTS + 1 }, (_, i) => through(i / PERCENTS));
};

function withShank(shank: readonly Rad[], source: CurveSource): StanceCurve {
  return {
    shank, source, pushSource: 'mean', push: PUSH,
    legLine: shank.map((angle, i) => angle - (SHANK[i]! - LEG_LINE[i]!)),
    ankle: SHANK.map((angle, i) => angle + FOOT[i]!),
  };
}
