import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { tipOf } from '../last/outline.ts';
import { heightAt } from '../profile/groundFace.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { rollX } from '../profile/rollLine.ts';
import type { Closeness } from '../profile/thinnest.ts';
import { solveRocker, thicknessAt, type Rocker, type RockerCase } from '../profile/rocker.ts';
import { bodyBetween } from '../roll/ofSole.ts';
import { anglesCovered, placedAt, type RollBody } from '../roll/rollBody.ts';
import { seatOf, shapeOf } from '../solid/fromRocker.ts';
import { groundRim, type GroundRim } from '../solid/groundRim.ts';
import { bodiesOf } from '../solid/solids.ts';
import type { SoleShape } from '../solid/soleShape.ts';

/** What is looked at of a shoe: mm, degrees and g, as its figures have them. */
export const LOOKED_AT = ['seatHeight', 'ballHeight', 'ballThickness', 'tip', 'toeSpring', 'weight', 'seatDifference', 'strike', 'toeOff', 'dropStrike', 'dropToeOff', 'flat', 'lean'] as const;
export type LookedAt = (typeof LOOKED_AT)[number];
export type RockerOutcome = { readonly figures: Readonly<Record<LookedAt, number>>; readonly piece: string; readonly rocker: Rocker; readonly shape: SoleShape };

/** What cannot be read off the rocker alone: the weight, where a limit asks for it, and where the other shoe's seat stands. */
export interface Beside {
  /** g; not worked out where nothing asks for it. */
  readonly weigh?: (shape: SoleShape) => number;
  /** How high the seat would stand level with the other shoe's, insole and leg difference counted. */
  readonly levelSeat?: Mm;
}

/** Solves a case and reads off what is looked at; undefined where there is no shape. Nothing is meshed. */
export function rockerOutcome(given: RockerCase, beside: Beside, closeness: Closeness = 'exact'): RockerOutcome | undefined {
  const made = orInfeasible(() => {
    const rocker = solveRocker(given, closeness), shape = shapeOf(rocker, given);
    return { rocker, shape, rim: rimOf(shape) };
  });
  if (made instanceof Infeasible) return undefined;
  const { rocker, shape, rim } = made, { governs } = rocker;
  return { figures: figuresOf(rocker, shape, bodyBetween(shape.face, rim.start, rim.end), beside), piece: typeof governs === 'string' ? governs : `${governs.zone}, ${governs.by}`, rocker, shape };
}

/** Leaning walls may meet under the foam and not under the sole; upright ones stand in the outline, which is one line for every rocker on a last. */
const rimOf = (shape: SoleShape): GroundRim => (Object.values(shape.taper).every((lean) => lean === 0) ? groundRim(shape, shape.face) : bodiesOf(shape).whole.rim);

function figuresOf(rocker: Rocker, shape: SoleShape, body: RollBody, { weigh, levelSeat }: Beside): RockerOutcome['figures'] {
  const { last, upper, build, face, line } = shape, tip = tipOf(last), ground = heightAt(face, rollX(line, tip)), seatHeight = seatOf({ shape });
  const { from, to } = anglesCovered(body), dropAt = (roll: Rad): Mm => rocker.hip[1] - placedAt(body, rocker.hip, roll)[1];
  return {
    seatHeight, ballHeight: upper(last.tread, 0) + build, ballThickness: thicknessAt(rocker, last.tread), tip: upper(...tip) + build - ground, toeSpring: ground,
    weight: weigh?.(shape) ?? 0, seatDifference: levelSeat === undefined ? 0 : Math.abs(seatHeight + last.insole - levelSeat),
    strike: inDegrees(-from), toeOff: inDegrees(to),
    dropStrike: dropAt(from), dropToeOff: dropAt(to),
    flat: rocker.mid.frontX - rocker.mid.rearX, lean: inDegrees(rocker.stance.lean),
  };
}
