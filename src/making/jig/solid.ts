import { together, type Mesh } from '../../geometry/mesh.ts';
import type { Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { flatSolid } from '../cut/flatSolid.ts';
import type { Jig, JigPart } from './jig.ts';

/** Parts that touched each other would share edges, and no reader would find them closed: boards without clearance are shown this much thinner. */
const TOUCHING: Mm = 0.01;

/** The jig as it stands on the bench, each part a closed solid of its own; the bridges are laid aside. */
export const jigSolid = ({ parts, frame: { slot } }: Jig, thickness: Mm, chordGap: Mm): Mesh =>
  together(parts.filter(({ kind }) => kind !== 'bridge').map((part) => standing(part, Math.min(thickness, slot - TOUCHING), chordGap)));

/** A part where it stands, its drawn face to the toe or to the middle of the jig. */
export function standing({ part, stand: { way, at, heelRight } }: JigPart, thickness: Mm, chordGap: Mm): Mesh {
  const { positions, triangles } = flatSolid(part, thickness, chordGap), half = thickness / 2, put = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) put.set(placed(positions[i]!, positions[i + 1]!, positions[i + 2]! - half), i);
  return { positions: put, triangles };

  function placed(x: Mm, y: Mm, out: Mm): Point3 {
    if (way === 'across') return [at + out, x, y];
    return heelRight ? [-x, at + out, y] : [x, at - out, y];
  }
}
