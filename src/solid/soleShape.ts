import type { Path } from '../geometry/path.ts';
import type { Mm } from '../geometry/units.ts';
import type { Tapers } from '../fitting/fitting.ts';
import type { UpperFace } from '../last/upperFace.ts';
import type { Last } from '../last/last.ts';
import { heightsOf, offsetInward, type GroundFace } from '../profile/groundFace.ts';
import { rollX, type RollLine } from '../profile/rollLine.ts';

/**
 * A full-length sole as exact faces, LEFT shoe, mm: the stack from the last down is stiffener, foam, outsole.
 * A raise for the other shoe is the same thing without a stiffener.
 */
export interface SoleShape {
  readonly last: Last;
  readonly upper: UpperFace;
  /** Height of the tread plane above the ground. */
  readonly build: Mm;
  readonly face: GroundFace;
  readonly line: RollLine;
  readonly feather: Path;
  readonly edge: Path;
  readonly taper: Tapers;
  readonly stiffener: Mm;
  readonly outsole: Mm;
  /** Places along the walking line that must be met exactly, beside the joints of the face. */
  readonly stations: readonly Mm[];
}

/** Height above the ground at a place in plan, mm. NaN where the face does not reach. */
export type Surface = (x: Mm, y: Mm) => Mm;

/** The face under the last, set down by a depth (0: the face itself; the stiffener: the top of the foam). */
export const upperSurface = ({ upper, build }: SoleShape, depth: Mm): Surface => (x, y) => upper(x, y) + build - depth;

export function sweptSurface(face: GroundFace, line: RollLine): Surface {
  const height = heightsOf(face);
  return (x, y) => height(rollX(line, [x, y]));
}

/** The underside of the foam: the ground face set in by the outsole, exactly. */
export const foamFace = ({ face, outsole }: SoleShape): GroundFace => offsetInward(face, outsole);
