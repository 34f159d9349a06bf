import type { Mm, Rad } from '../geometry/units.ts';
import { bedUnder, type Bed } from './bed.ts';
import type { Layer } from './layer.ts';
import { contactAt, floorAt, type RollBody } from './rollBody.ts';

/**
 * A stiff body pressed into the floor through a soft layer. The layer is a bed of springs (Winkler's foundation: E. Winkler 1867;
 * K. L. Johnson, Contact Mechanics (1985) 4.3, from memory): each place gives by its own pressure alone. That suits a layer that
 * is thin against the contact; it holds as long as nothing is squashed by more than about a tenth of its thickness.
 */
export interface Squash {
  /** How far the body sinks, mm. */
  readonly depth: Mm;
  /** Both ends of what touches, along the walking line at rest, and the way on the floor between them, mm. */
  readonly from: Mm;
  readonly to: Mm;
  readonly length: Mm;
  /** Pressure where the contact was before anything gave, MPa, and the share of its thickness that the layer gives up there. */
  readonly pressure: number;
  readonly strain: number;
  /** How far the middle of the push lies ahead of that place, mm. */
  readonly ahead: Mm;
  /** How hard the floor resists a small turn, N·mm for each radian: the bed's second moment about its own middle. */
  readonly holds: number;
}

/** How closely a depth is found, and how many steps are ever taken to it. */
const NEAR: Mm = 1e-9, STEPS = 60;

/** How far a body sinks into its layer under an upright force, held at one roll angle. @param force N, greater than 0 */
export function squashUnder(body: RollBody, layer: Layer, force: number, roll: Rad = 0): Squash {
  let depth: Mm = 1, { over, by } = fromDepth(body, layer, depth, roll, force);
  for (; over < 0; { over, by } = fromDepth(body, layer, depth, roll, force)) depth *= 2;
  // The push grows faster the deeper it is, so that steps along its slope come down on the depth from above and never pass it.
  for (let i = 0; i < STEPS && by > NEAR; i++) { depth -= by; ({ by } = fromDepth(body, layer, depth, roll, force)); }
  return told(body, layer, depth, roll);
}

/** What a depth has too much of push, N, and how much less deep the slope of the push says it should be: as it sinks in more of the springs press, but the new ones not yet. */
function fromDepth(body: RollBody, layer: Layer, depth: Mm, roll: Rad, force: number): { readonly over: number; readonly by: Mm } {
  const bed = bedUnder(body, layer, depth, roll), over = pushOf(bed, depth) - force;
  return { over, by: over / bed.springs.reduce((sum, { stiffness }) => sum + stiffness, 0) };
}

/** What the springs of a bed push with, each by how far it is pressed, N. */
const pushOf = ({ springs }: Bed, depth: Mm): number => springs.reduce((sum, { stiffness, height }) => sum + stiffness * (depth - height), 0);

function told(body: RollBody, layer: Layer, depth: Mm, roll: Rad): Squash {
  const bed = bedUnder(body, layer, depth, roll), [under] = contactAt(body, roll), floor = floorAt(body, roll), push = pushOf(bed, depth);
  let moment = 0, whole = 0, first = 0, second = 0;
  for (const { stiffness, height, forward } of bed.springs) {
    const way = forward - floor;
    moment += stiffness * (depth - height) * way;
    whole += stiffness; first += stiffness * way; second += stiffness * way * way;
  }
  return {
    depth, from: bed.rear.along, to: bed.front.along, length: bed.front.forward - bed.rear.forward,
    pressure: depth / layer.give(under), strain: depth / layer.thick(under), ahead: moment / push, holds: second - (first * first) / whole,
  };
}
