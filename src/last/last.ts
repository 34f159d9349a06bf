import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';

import type { ToeShape } from '../fitting/words.ts';

/**
 * The last's bottom in plain numbers, mm. Everything here and below describes a LEFT shoe (outer side at +y);
 * the right one is its mirror image, made when the solid or the drawing leaves.
 */
export interface Last {
  readonly length: Mm;
  /** Seat above tread. */
  readonly pitch: Mm;
  /** Tip of the last's bottom above the tread plane. */
  readonly toeSpring: Mm;
  /** Length of the flat heel part. */
  readonly seatLength: Mm;
  /** x where the bottom bears at the ball. */
  readonly tread: Mm;
  /** How far the foot's heel back lies behind the last's bottom. */
  readonly heelBack: Mm;
  /** How much lower the middle of the bottom lies than its edges at the ball. */
  readonly camber: Mm;
  readonly ballWidth: Mm;
  readonly heelWidth: Mm;
  /** x of the inner and outer toe joints (on the last). */
  readonly innerBall: Mm;
  readonly outerBall: Mm;
  readonly toeShape: ToeShape;
  /** How far the toe is set to the inner side. Negative is out-flare. */
  readonly inflare: Mm;
  /** All that stays between the foot and the face the sole is glued to, without the stiffener. */
  readonly insole: Mm;
  /** Measured heights of the bottom above the tread plane, [x, z] with rising x, instead of pitch and spring; or none. */
  readonly heights?: readonly Point[];
}

/** How far apart seat centre and tread lie: the span over which the pitch tilts the foot. */
export const pitchSpan = ({ tread, seatLength }: Last): Mm => tread - seatLength / 2;
