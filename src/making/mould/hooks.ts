import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { onAxis } from '../places.ts';
import { outlineOf, type MouldLayout } from './layout.ts';
import type { Outline } from './outline.ts';

/**
 * Where a half of a split cavity holds the cast though it parts sideways: its tip, or the back of its heel, lies beside the
 * long axis, so that the half it lies in reaches round it. @property by how far, along the shoe, mm  @property at the tip itself
 */
export interface Hook { readonly end: 'heel' | 'toe'; readonly half: 'inner' | 'outer'; readonly by: Mm; readonly at: Point }

/** The end that is held most; what walls lean between ground line and edge lies between those two. */
export function worstHook(layout: MouldLayout): Hook {
  const hooks = (['bottom', 'edge'] as const).flatMap((on) => (['heel', 'toe'] as const).map((end) => hookAt(end, outlineOf(layout, on))));
  return hooks.reduce((worst, hook) => (hook.by > worst.by ? hook : worst));
}

/** Elsewhere the outline runs away from the long axis or along it, and holds nothing. */
function hookAt(end: Hook['end'], outline: Outline): Hook {
  const way = end === 'toe' ? 1 : -1, at = outline.reduce((best, point) => (way * point[0] > way * best[0] ? point : best));
  return { end, half: at[1] < 0 ? 'inner' : 'outer', by: way * at[0] - Math.max(...onAxis(outline).map((x) => way * x)), at };
}
