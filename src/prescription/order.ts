import type { EdgeWidths, Foot, Minima, OutsoleOrder, SheetRocker, Tapers, ToeOrder } from '../fitting/fitting.ts';
import type { FoamName } from '../materials/materials.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { tan } from '../geometry/trig.ts';

/** A rocker order with nothing left open: what the maker wrote, and the trade's default for the rest. */
export interface RockerOrder {
  /** Where the toe arc takes over, mm from the rearmost point of the last's bottom. */
  readonly apexX: Mm;
  /** True when the maker left the apex to the default. */
  readonly apexByDefault: boolean;
  readonly toe: ToeOrder;
  /** Length of the level part under the standing point, mm. */
  readonly standingFlat: Mm;
  /** Apex line against the long axis; a right angle is square across. */
  readonly crestAngle: Rad;
  /** Roll angle at heel strike that the heel arc must reach, as a positive angle. */
  readonly strike: Rad;
  readonly minima: Minima;
  readonly stiffener: Mm;
  /** What the stiffener weighs, g, where its plies are known. */
  readonly packGrams?: number;
  readonly outsole: OutsoleOrder;
  readonly foam: FoamName;
  readonly taper: Tapers;
  readonly edgeBeyond: EdgeWidths;
  /** None: as low as the minima allow. */
  readonly seatAtLeast?: SeatHeight;
}

/** Least height above the ground of the face the sole is glued to, at the centre of the seat, and who asks for it. */
export interface SeatHeight { readonly height: Mm; readonly by: 'order' | 'other shoe' }

/** Default apex as a share of the last's length from the heel; common practice of the trade. */
const APEX = 0.65;
/** The short toe arc of `pivot-height` needs a later start, or the ball grows thick. */
const APEX_PIVOT_HEIGHT = 0.78;
/** A stiff toe joint is rolled over behind the joint, never over it. */
const BEHIND_JOINT: Mm = 8;

/** What of a last decides where an apex goes, mm. */
interface ApexLast { readonly length: Mm; readonly innerBall: Mm; readonly ballWidth: Mm }

/**
 * How far forward an apex may lie for a stiff toe joint; further on, the joint would have to bend before the shoe rolls.
 * The joint lies half a ball width to the inner side, where a turned crest may pass further forward than on the long axis.
 */
export function apexBehindJoint({ innerBall, ballWidth }: ApexLast, crestAngle: Rad): Mm {
  return innerBall - BEHIND_JOINT - Math.max(0, tan(crestAngle - Math.PI / 2)) * (ballWidth / 2);
}

function defaultApex({ toe, crestAngle }: SheetRocker, foot: Foot, last: ApexLast): Mm {
  const usual = (toe.rule === 'pivot-height' ? APEX_PIVOT_HEIGHT : APEX) * last.length;
  return foot.joint === 'toe joint' ? Math.min(usual, apexBehindJoint(last, crestAngle)) : usual;
}

/** Completes an order for a foot and the last it is made on. */
export function completeOrder(order: SheetRocker, foot: Foot, last: ApexLast): RockerOrder {
  const { apex, toe, standingFlat, crestAngle, minima, stiffener, outsole, foam, taper, edgeBeyond, seatHeightAtLeast, packGrams } = order;
  return {
    apexX: apex === undefined ? defaultApex(order, foot, last) : apex * last.length,
    apexByDefault: apex === undefined,
    toe, standingFlat, crestAngle, minima, stiffener, outsole, foam, taper, edgeBeyond,
    strike: foot.strikeAngle.value,
    ...(packGrams === undefined ? {} : { packGrams }),
    ...(seatHeightAtLeast === undefined ? {} : { seatAtLeast: { height: seatHeightAtLeast, by: 'order' } }),
  };
}
