import type { RackSheet } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import type { FlatPart } from '../flatPart.ts';
import { wasteOf, type SheetUse } from '../nest/nest.ts';
import type { Blank } from './pieces.ts';
import type { PlannedLayer } from './plan.ts';

/** Soles built up from the sheets in the rack. */
export interface Stacks {
  readonly shoes: readonly ShoeStack[];
  readonly sheets: readonly CutSheet[];
}

/** A stack under one shoe. Volumes in mm³. */
export interface ShoeStack {
  readonly side: Side;
  /** From the face downwards; where zones part, zone by zone. */
  readonly layers: readonly Layer[];
  /** The foam body when it is ground, glue lines counted in. */
  readonly body: number;
  readonly glue: number;
  /** All blanks as they are cut. */
  readonly blanks: number;
}

/** What is ground away: all blanks less what of the body is foam. */
export const groundAway = ({ blanks, body, glue }: ShoeStack): number => blanks - (body - glue);

/** @property number counted from the face down, `of` so many under this zone  @property joint area of the joint above it, mm², once  @property foam what of it stays in the body, mm³ */
export interface Layer extends PlannedLayer { readonly number: number; readonly of: number; readonly joint: number; readonly foam: number; readonly pieces: readonly Piece[] }

/** A blank of a layer. @property area mm²  @property file number of the sheet it is cut from */
export interface Piece extends Blank { readonly area: number; readonly file: number }

/** A sheet of the rack with the blanks laid on it, each on its own side. */
export interface CutSheet { readonly number: number; readonly sheet: RackSheet; readonly parts: readonly FlatPart[]; readonly use: SheetUse }

/** What is left over of the sheets, neither blank nor whole strip, mm³. */
export const leftOver = ({ sheets }: Pick<Stacks, 'sheets'>): number => sheets.reduce((sum, { sheet, use }) => sum + wasteOf(use, sheet) * sheet.thickness, 0);
