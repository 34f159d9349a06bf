import { enclosedArea } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { endOf, firstRoom, shapesOf, topOf, type Laid } from './room.ts';

/** @property length along x, from the corner where laying begins  @property width along y */
export interface SheetSize { readonly length: Mm; readonly width: Mm }

/** @property apart least distance between two parts and from a part to the edge of the sheet  @property turns how a part may be turned from the way it is drawn; one list for each part where they differ */
export interface NestOrder { readonly apart: Mm; readonly turns: readonly Rad[] | readonly (readonly Rad[])[] }

/** Where a part lies: turned about its own origin, then set off by `at` from the corner of the sheet. `part` and `sheet` count from 0. */
export interface Placing { readonly part: number; readonly sheet: number; readonly turn: Rad; readonly at: Point }

export interface Nest {
  readonly placed: readonly Placing[];
  /** Parts that no empty sheet takes, however they are turned. */
  readonly left: readonly number[];
  readonly sheets: readonly SheetUse[];
}

/**
 * How one sheet is used up. Areas in mm².
 * @property parts of the true parts, without their holes  @property clear length at the far end that stays whole
 * @property beside width of the strip that stays whole beside the parts, as far along as they reach
 */
export interface SheetUse { readonly area: number; readonly parts: number; readonly clear: Mm; readonly beside: Mm }

/** What is neither part nor a strip that goes back to the rack, mm². */
export const wasteOf = ({ area, parts, clear, beside }: SheetUse, { length, width }: SheetSize): number => area - parts - clear * width - beside * (length - clear);

/**
 * Lays parts on as few sheets of one size as it finds, by their true shape, so that soles lie head to toe: the largest
 * first, each as far towards the start of a sheet as it goes. The same parts always come to lie the same way. Up to 0.4 mm
 * more than `apart` may be left between two parts.
 */
export function nest(parts: readonly FlatPart[], sheet: SheetSize, order: NestOrder): Nest {
  const shapes = parts.map(({ outline, around = outline }, i) => shapesOf(around, turnsFor(order, i), order.apart));
  const areas = parts.map(areaOf), largestFirst = parts.map((_, i) => i).sort((a, b) => areas[b]! - areas[a]! || a - b);
  const sheets: Laid[][] = [], placed: Placing[] = [], left: number[] = [];
  for (const part of largestFirst) {
    const found = firstRoom([...sheets, []], shapes[part]!, sheet, order.apart);
    if (!found) { left.push(part); continue; }
    (sheets[found.sheet] ??= []).push(found.laid);
    placed.push({ part, sheet: found.sheet, turn: found.laid.shape.turn, at: found.laid.at });
  }
  return { placed, left, sheets: sheets.map((laid, i) => useOf(sheet, laid, placed.filter((one) => one.sheet === i).map(({ part }) => areas[part]!), order.apart)) };
}

function turnsFor({ turns }: NestOrder, part: number): readonly Rad[] {
  const own = turns[part];
  return typeof own === 'object' ? own : turns.filter((turn) => typeof turn === 'number');
}

export const areaOf = ({ outline, holes }: FlatPart): number => [outline, ...holes].reduce((sum, line) => sum + enclosedArea(line), 0);

function useOf({ length, width }: SheetSize, laid: readonly Laid[], areas: readonly number[], apart: Mm): SheetUse {
  const left = (most: Mm, reach: (one: Laid) => Mm): Mm => Math.max(0, most - Math.max(...laid.map(reach)) - apart);
  return { area: length * width, parts: areas.reduce((sum, area) => sum + area, 0), clear: left(length, endOf), beside: left(width, topOf) };
}
