import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { BentBy } from './bentBy.ts';
import type { Pack } from './pack.ts';
import { heldSole, soleBeam } from './sole.ts';

/** The bent plate: [along, how far it moved up] from heel to toe, mm; its bend at the ball, and how far the tip moves from where the sole at the ball points to. */
export interface BentShape { readonly by: BentBy; readonly at: Mm; readonly shape: readonly Point[]; readonly bend: Rad; readonly tip: Mm }

/**
 * How the plate lies under one load of what was assessed, held as it was there: on the bench clamped up to the ball, else borne at
 * heel and ball. Of walking it is the moment that strains it most. A pack that was found softer on the bench bends by as much more.
 */
export function bentShape({ stiffener, plate, asked: { softer = 1 }, assessed }: Pick<Pack, 'stiffener' | 'plate' | 'asked' | 'assessed'>, by: BentBy): BentShape {
  const { load } = assessed[by], beam = soleBeam(stiffener, plate, [load.at]), { bent, bend, tip } = heldSole(beam, by === 'bench' ? 'bench' : 'foot')(load);
  return { by, at: load.at, shape: beam.nodes.map((x, i): Point => [x, bent.height[i]! * softer]), bend: bend * softer, tip: tip * softer };
}
