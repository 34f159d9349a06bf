import type { MouldOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import { rimFrom } from '../cavity.ts';
import { round } from '../places.ts';
import { outlineOf, type MouldLayout } from './layout.ts';
import { fromOutline } from './outline.ts';

/** Least walls of a mould, mm: round the cavity to the outside, under it and in the lid, and what stays beside bores. */
export interface Walls { readonly side: Mm; readonly floor: Mm; readonly bores: Mm }

export function wallsOf(layout: MouldLayout, { floor }: MouldOrder): Walls {
  const { rows, dowels, bolts, blocks: { border } } = layout, foot = outlineOf(layout, 'bottom'), open = outlineOf(layout, 'open'), rim = round(rows, rimFrom);
  const bores = [...dowels, ...bolts].map(({ at, diameter }) => Math.min(...[foot, rim, border].map((line) => fromOutline(line, at))) - diameter / 2);
  return { side: Math.min(...[...foot, ...open].map((at) => fromOutline(border, at))), floor, bores: Math.min(...bores) };
}
