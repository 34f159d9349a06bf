import type { Foot } from '../fitting/fitting.ts';
import { pitchSpan, type Last } from '../last/last.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { asin, atan2, cos, sin, tan } from '../geometry/trig.ts';

/** What of the foot decides the rocker, in plain numbers (mm, radians), barefoot. */
export interface FootNumbers {
  readonly pivotForward: Mm;
  readonly pivotHeight: Mm;
  readonly hipHeight: Mm;
  readonly stance: { readonly kind: 'locked'; readonly ankleAngle: Rad } | { readonly kind: 'free'; readonly hipAhead: Mm };
}

/** The foot standing in the shoe. Heights are above the tread plane, so they do not hang on the build. */
export interface ShoeStance {
  /** Nose-down tilt of the foot on its seat and tread. */
  readonly tilt: Rad;
  /** Ankle pivot [x, height above the tread plane]. */
  readonly pivot: Point;
  /** Pivot to hip. */
  readonly leg: Mm;
  /** Leg ahead of upright, positive forward. */
  readonly lean: Rad;
  readonly hipAhead: Mm;
  readonly hipUp: Mm;
  /** x of the standing point, right under the hip. */
  readonly standing: Mm;
}

export function footNumbers(foot: Foot): FootNumbers {
  const stance = foot.stance.kind === 'locked'
    ? { kind: 'locked', ankleAngle: foot.stance.ankleAngle.value } as const
    : { kind: 'free', hipAhead: foot.stance.hipAhead.value } as const;
  return { pivotForward: foot.pivotForward.value, pivotHeight: foot.pivotHeight.value, hipHeight: foot.hipHeight.value, stance };
}

/**
 * Carries the foot into the shoe. It rests on the middle of the seat and on the tread, so the pitch tilts it; a foot
 * tilted by 4 degrees carries its pivot about 5 mm forward.
 * A locked ankle ties the leg to the foot: it leans by the ankle angle and the tilt. A free ankle leans as measured.
 * @throws RangeError when the hip is said to be further ahead than the leg is long
 */
export function standInShoe(foot: FootNumbers, last: Last): ShoeStance {
  const tilt = atan2(last.pitch, pitchSpan(last));
  const { pivotForward: b } = foot, up = foot.pivotHeight + last.insole;
  const pivot: Point = [
    b * cos(tilt) - last.heelBack + up * sin(tilt),
    last.pitch + (last.seatLength / 2) * tan(tilt) - b * sin(tilt) + up * cos(tilt),
  ];
  const leg = foot.hipHeight - foot.pivotHeight;
  const lean = foot.stance.kind === 'locked' ? foot.stance.ankleAngle + tilt : asin(foot.stance.hipAhead / leg);
  if (!Number.isFinite(lean)) throw new RangeError(`the hip cannot stand further ahead of the ankle than the leg is long (${leg} mm)`);
  const hipAhead = leg * sin(lean);
  return { tilt, pivot, leg, lean, hipAhead, hipUp: leg * cos(lean), standing: pivot[0] + hipAhead };
}

/** The pitch that would make a locked ankle lean by the wanted angle. */
export const pitchForLean = (ankleAngle: Rad, wanted: Rad, last: Last): Mm => pitchSpan(last) * tan(wanted - ankleAngle);
