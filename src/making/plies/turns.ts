import { windowRound } from '../../geometry/clip.ts';
import { turnedPath } from '../../geometry/turned.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import type { Side } from '../../fitting/words.ts';
import type { FlatPart } from '../flatPart.ts';
import { isWoven, waysOf } from '../../stiffener/fibres.ts';
import type { PlyLayer } from './layers.ts';

/** Room for the shears between two plies and to the selvedge. Common practice. */
export const CLOTH_APART: Mm = 5;
/** Nesting keeps up to this much more room than it is asked for. */
export const ROOMY: Mm = 0.5;

/** A ply with its outline on its own side. */
export interface PlyPart { readonly side: Side; readonly layer: PlyLayer; readonly part: FlatPart }

/**
 * How a ply may be turned so that its fibres still run along the roll or across it: a ply with fibres at 45° both ways all
 * four ways, every other one its first fibre along the warp, either end first.
 */
export function turnsOf({ side, layer }: Pick<PlyPart, 'side' | 'layer'>): Rad[] {
  const [first = 0] = waysOf(layer, side), diagonal = isWoven(layer.ply) && Math.abs(Math.abs(first) - Math.PI / 4) < 1e-3;
  const ends = (turn: Rad): Rad[] => [turn, turn + Math.PI];
  return diagonal ? [...ends(-first), ...ends(Math.PI / 2 - first)] : ends(-first);
}

/** The narrowest roll that takes a ply, turned as it may be. */
export const rollFor = (one: PlyPart): Mm => Math.min(...turnsOf(one).map((turn) => { const { least, most } = windowRound([turnedPath(one.part.outline, turn)]); return most[1] - least[1] + 2 * (CLOTH_APART + ROOMY); }));
