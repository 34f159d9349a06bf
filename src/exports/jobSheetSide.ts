import type { Design } from '../checks/design.ts';
import type { Mm } from '../geometry/units.ts';
import { isLevel } from '../pair/raise.ts';
import type { Shoe } from '../pair/shoe.ts';
import { LETTERS, words, type Box, type Mark } from './drawing.ts';
import { labelled } from './labelled.ts';
import { NoRoom, type Wish } from './labels.ts';
import { part, pictureOf, together, type Part, type Picture, type Stand } from './picture.ts';
import { groundMarks, placesOf, spanOf, TALLEST, widthOf } from './sideDrawing.ts';
import { sideBody, standing } from './sideBody.ts';
import { FEW_ROWS_BELOW, fewDimensions } from './sideDimensions.ts';
import { rollInShort } from './sideRoll.ts';
import { scaleFor, type View } from './view.ts';

/** Room for the name of a shoe under its rows of dimensions. */
const NAME: Mm = 6.5;

/** The side drawing of a job sheet: both shoes on one ground line with the dimensions a maker works to. One to `by`. */
export interface SheetDrawing { readonly marks: readonly Mark[]; readonly by: number }

/** @param box what it may take, from side to side of the sheet */
export function sheetDrawing(design: Design, box: Box): SheetDrawing {
  const { shoes, fitting } = design, ground = box.bottom - FEW_ROWS_BELOW - NAME, spans = shoes.map(spanOf), room = box.right - box.left - 2;
  const by = scaleFor((scale) => spans.reduce((sum, span) => sum + widthOf(span, scale), 0) <= room && TALLEST * scale <= ground - box.top);
  const places = placesOf(spans, 1 / by, box, ground), pictures = shoes.map((shoe, i) => pictureOf(shoe, fitting, places[i]!, box.top));
  const fixed = shoes.map((shoe, i) => nameOf(shoe, places[i]!));
  return { by, marks: [...groundMarks(box, ground), ...fixed, ...labelsIn(pictures, box, fixed)] };
}

/** With every label that tells a number or what sets the height; where they find no room, with the few that matter most. */
function labelsIn(pictures: readonly (Picture | Stand)[], box: Box, fixed: readonly Mark[]): readonly Mark[] {
  const all = together(pictures.map(viewOf)), first = all.wishes.filter(({ label }) => label.of !== undefined || label.bold).sort((a, b) => rank(a) - rank(b));
  for (const wishes of [first, first.filter((wish) => rank(wish) < 2)]) {
    try { return labelled({ ...all, wishes }, box, fixed).marks; } catch (error) { if (!(error instanceof NoRoom)) throw error; }
  }
  return labelled(part({ ...all, wishes: [] }), box, fixed).marks;
}

/** What sets the height and the ankle pivot take their places first: they have fewest. */
const rank = ({ label: { bold, of } }: Wish): number => (bold ? 0 : of?.endsWith('.pivotHeight') ? 1 : 2);

function viewOf(picture: Picture | Stand): Part {
  if (!('parts' in picture)) return standing(picture);
  const { shoe } = picture;
  return together([sideBody(picture), fewDimensions(picture), ...(shoe.kind === 'rocker' ? [rollInShort(picture, shoe)] : [])]);
}

function nameOf(shoe: Shoe, { zero: [x, y] }: View): Mark {
  const kind = shoe.kind === 'rocker' ? 'rocker' : shoe.made ? 'raise' : isLevel(shoe.raise) ? 'level as it is, nothing to make' : 'as it is, no raise can be made';
  const turned = shoe.kind === 'rocker' && Math.abs(shoe.rocker.line.turn) > 1e-9 ? ', seen square to the crest line' : '';
  return words(`${shoe.side === 'left' ? 'Left' : 'Right'} shoe: ${kind}${turned}`, [x, y + FEW_ROWS_BELOW + 5.2], { size: LETTERS.heading, bold: true });
}
