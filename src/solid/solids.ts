import type { Mesh } from '../geometry/mesh.ts';
import type { Mm } from '../geometry/units.ts';
import { jointsOf } from '../profile/groundFace.ts';
import { meshOf, type Body } from './body.ts';
import { groundRim } from './groundRim.ts';
import { foamFace, sweptSurface, upperSurface, type SoleShape } from './soleShape.ts';

/** The parts a sole is made of, as bodies between exact faces. */
export interface Bodies {
  readonly whole: Body;
  /** Without the stiffener above and the outsole below. */
  readonly foam: Body;
  /** The outsole as it lies on the finished shoe, curved. */
  readonly outsole: Body;
}

/** @throws Infeasible when the walls would cross above the ground */
export function bodiesOf(shape: SoleShape): Bodies {
  const inner = foamFace(shape), rim = groundRim(shape, shape.face);
  return {
    whole: { shape, upper: upperSurface(shape, 0), lower: shape.face, rim, upperJoints: [] },
    foam: { shape, upper: upperSurface(shape, shape.stiffener), lower: inner, rim: groundRim(shape, inner), upperJoints: [] },
    outsole: { shape, upper: sweptSurface(inner, shape.line), lower: shape.face, rim, upperJoints: jointsOf(inner).map(([x]) => x) },
  };
}

/** The three solids of one sole, LEFT shoe, mm. */
export interface Solids { readonly whole: Mesh; readonly foam: Mesh; readonly outsole: Mesh }

/** @param chordGap largest distance between a facet and the true face, mm */
export function solidsOf(bodies: Bodies, chordGap: Mm): Solids {
  const known = meshed.get(bodies), solids = known?.chordGap === chordGap ? known.solids : meshAll(bodies, chordGap);
  meshed.set(bodies, { chordGap, solids });
  return solids;
}

/** The last solids of each sole that is still there. */
const meshed = new WeakMap<Bodies, { readonly chordGap: Mm; readonly solids: Solids }>();

const meshAll = ({ whole, foam, outsole }: Bodies, chordGap: Mm): Solids =>
  ({ whole: meshOf(whole, chordGap), foam: meshOf(foam, chordGap), outsole: meshOf(outsole, chordGap) });
