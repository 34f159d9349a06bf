import type { Point } from '../../geometry/point.ts';
import type { Rad } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { laidPart } from '../nest/laid.ts';

/** Where a part lies: on which board, counted from 0, turned about its own zero to the left and then moved, mm. */
export interface Placed { readonly part: FlatPart; readonly sheet: number; readonly turn: Rad; readonly at: Point }

/** A part as it lies on its board; its lettering turns with it. */
export const laid = ({ part, sheet, turn, at }: Placed): FlatPart => laidPart(part, { part: 0, sheet, turn, at });
