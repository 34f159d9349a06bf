import { cross, subtract, type Point } from '../geometry/point.ts';
import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { cos, sin } from '../geometry/trig.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { endAngle, pointAt, type GroundFace } from '../profile/groundFace.ts';
import { plain, type Plain } from './figure.ts';
import type { GroundReach } from './groundReach.ts';

/**
 * Height above the ground of a point that is fixed to the shoe, while the shoe is rolled (toe down positive).
 * @param point at rest, [along the walking line, height]
 */
function heightRolled({ pieces }: GroundFace, [x, z]: Point, roll: Rad): Mm {
  const piece = pieces.find((one) => endAngle(one) >= roll - 1e-12) ?? pieces[pieces.length - 1]!;
  const touching = piece.kind === 'arc' ? pointAt(piece, roll) : piece.from;
  return cross([cos(roll), sin(roll)], subtract([x, z], touching));
}

/**
 * What the arcs cannot keep level at once. The pivot keeps its height on the heel arc and rises over the mid arc; the
 * hip, with the leg held to the shoe, keeps its height on the mid arc and drops once the roll leaves it.
 */
export function rollHeights({ rocker: { pivot, hip, heelArc, apex }, shape: { face } }: RockerShoe, { backAngle, frontAngle }: GroundReach): readonly Plain[] {
  const begins = Math.max(heelArc?.to ?? backAngle, backAngle);
  const pivotAt = (roll: Rad): Mm => heightRolled(face, pivot, roll), dropAt = (roll: Rad): Mm => hip[1] - heightRolled(face, hip, roll);
  const taken = (figure: Plain, roll: Rad): Plain => ({ ...figure, rolled: inDegrees(roll) });
  return [
    taken(plain('pivotRise', 'Ankle pivot rises while the shoe rolls over the mid arc, up to the apex', pivotAt(apex.angle) - pivotAt(begins), 'mm'), apex.angle),
    taken(plain('hipDropStrike', 'Hip drops from standing back to heel strike, leg held to the shoe', dropAt(backAngle), 'mm'), backAngle),
    taken(plain('hipDropToeOff', 'Hip drops from standing to toe-off, leg held to the shoe', dropAt(frontAngle), 'mm'), frontAngle),
  ];
}
