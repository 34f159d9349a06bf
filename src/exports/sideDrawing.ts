import type { Side } from '../fitting/words.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { levelInWords } from '../pair/level.ts';
import { isLevel } from '../pair/raise.ts';
import { partsOf, type Shoe } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';
import type { Band } from '../spread/band.ts';
import { bandMarks } from './bandDrawing.ts';
import { LETTERS, stroke, words, type Box, type Drawing, type Mark, type Paper } from './drawing.ts';
import { labelled } from './labelled.ts';
import type { Choice } from './labels.ts';
import { part, pictureOf, together, type Part, type Picture, type Stand } from './picture.ts';
import { checkLines, drawingBox, sheetFrame, shoesInWords, stopMarks, type SheetNumber } from './sheetFrame.ts';
import { sideBody, standing } from './sideBody.ts';
import { BESIDE, ROWS_BELOW, sideDimensions } from './sideDimensions.ts';
import { sideProfile } from './sideProfile.ts';
import { sideRoll } from './sideRoll.ts';
import { scaleFor, type View } from './view.ts';

/** Room below the rows of dimensions for the name of the shoe and the sentence about the pair. */
const NAMES: Mm = 13;

/** The shoes of a job from the side on one ground line, left before right, toes to the right, as large as the sheet allows. */
export const sideDrawing = (design: Design, paper: Paper, sheet?: SheetNumber, bands: Bands = {}): Drawing => sideSheet(design, paper, { sheet, check: true, bands }).drawing;

/** Where the ground face of each shoe may lie, to be drawn with it. */
export type Bands = Partial<Readonly<Record<Side, Band>>>;

/**
 * The same for a screen, which needs no check lines.
 * @param before where the labels of the drawing before stood: while a hand drags they stay there as long as there is room
 */
export const sideOnScreen = (design: Design, paper: Paper, before?: readonly Choice[]): SideSheet => sideSheet(design, paper, { before, check: false });

/** A drawing, where each shoe stands on it in the order of the design, and where its labels stand. */
export interface SideSheet { readonly drawing: Drawing; readonly places: readonly View[]; readonly choices: readonly Choice[] }

interface Laying { readonly sheet?: SheetNumber | undefined; readonly check: boolean; readonly before?: readonly Choice[] | undefined; readonly bands?: Bands }

function sideSheet(design: Design, paper: Paper, { sheet = { n: 1, of: 1 }, check, before, bands = {} }: Laying): SideSheet {
  const { box, ground, by, places } = layout(design, paper), title = `${shoesInWords(design)}, side view`;
  const pictures = design.shoes.map((shoe, i) => pictureOf(shoe, design.fitting, places[i]!, box.top + BELOW_CHECK));
  const fixed = [
    ...(check ? checkLines([box.left + 4, box.top + 5]) : []), ...design.shoes.flatMap((shoe, i) => named(shoe, places[i]!)), ...stopMarks(design, box),
    words(levelInWords(design.fitting.wearer.legDifference), [box.left + 4, box.bottom - 2.5]),
  ];
  const edges = pictures.flatMap((picture) => bandEdges(picture, bands)), banded = legend(edges.length > 0, box);
  const { marks, choices } = labelled(together([...pictures.map(sideView), part({ shapes: edges })]), box, [...fixed, ...banded], before);
  const drawing = { paper, title: `${design.fitting.job.reference}: ${title}`, marks: [...sheetFrame(design, paper, title, by, sheet), ...groundMarks(box, ground), ...fixed, ...banded, ...marks] };
  return { drawing, places, choices };
}

/** What the dashes are, in the corner across from the sentence about the pair. */
const legend = (isBanded: boolean, { right, bottom }: Box): Mark[] =>
  (isBanded ? [words('Dashed: where the ground face may lie under the last, nine times in ten', [right - 4, bottom - 2.5], { anchor: 'end', ink: 'pencil' })] : []);

/** Only what is a rocker has a band. Shaded it would pass for foam that reaches into the floor. */
function bandEdges(picture: Picture | Stand, bands: Bands): readonly Mark[] {
  const band = bands[picture.shoe.side];
  return band ? bandMarks(band, picture.along, picture.view).edges : [];
}

interface Layout { readonly box: Box; readonly ground: Mm; readonly by: number; readonly places: readonly View[] }

function layout(design: Design, paper: Paper): Layout {
  const box = drawingBox(paper, design), ground = groundIn(box), spans = design.shoes.map(spanOf);
  const by = scaleFor((scale) => fits(spans, scale, box, ground));
  return { box, ground, by, places: placesOf(spans, 1 / by, box, ground) };
}

/** The pictures leave the upper corner to the check lines' lettering. */
const BELOW_CHECK: Mm = 13;

/** The ground line: as low as names and dimensions allow, a little higher where there is much room above. */
function groundIn({ top, bottom }: Box): Mm {
  const lowest = bottom - NAMES - ROWS_BELOW;
  return lowest - Math.max(0, lowest - top - 70) / 5;
}

/** From the rearmost to the foremost place of a shoe along the walking line, mm. */
export function spanOf(shoe: Shoe): readonly [Mm, Mm] {
  const parts = partsOf(shoe);
  if (!parts) return [0, shoe.last.length];
  const { back, tip } = sideProfile(parts.shape);
  return [Math.min(back.from[0], back.to[0]), Math.max(tip.from[0], tip.to[0])];
}

export const widthOf = ([from, to]: readonly [Mm, Mm], scale: number): Mm => BESIDE.left + (to - from) * scale + BESIDE.right;
/** Ankle pivot and the labels around it, above the ground. */
export const TALLEST: Mm = 150;

const fits = (spans: readonly (readonly [Mm, Mm])[], scale: number, { left, right, top }: Box, ground: Mm): boolean =>
  spans.reduce((sum, span) => sum + widthOf(span, scale), 0) <= right - left - 2 && TALLEST * scale <= ground - top;

/** The pictures side by side, what is left of the width shared out between them. */
export function placesOf(spans: readonly (readonly [Mm, Mm])[], scale: number, { left, right }: Box, ground: Mm): View[] {
  const spare = right - left - spans.reduce((sum, span) => sum + widthOf(span, scale), 0), gap = spare / (spans.length + 1);
  let x = left;
  return spans.map((span): View => {
    const zero: Point = [x + gap + BESIDE.left - span[0] * scale, ground];
    x += gap + widthOf(span, scale);
    return { zero, scale };
  });
}

/** The ground: one thick line through the whole sheet, hatched below. */
export function groundMarks({ left, right }: Box, y: Mm): Mark[] {
  const from = left + 3, to = right - 3, strokes = Math.floor((to - from - 3) / 4);
  return [
    stroke([from, y], [to, y], 'visible', 'ink'),
    ...Array.from({ length: strokes }, (_, i) => stroke([from + 3 + i * 4, y + 0.25], [from + 1 + i * 4, y + 2.25])),
  ];
}

function named(shoe: Shoe, { zero: [x, y] }: View): Mark[] {
  const kind = shoe.kind === 'rocker' ? 'rocker' : shoe.made ? 'raise' : isLevel(shoe.raise) ? 'level as it is, nothing to make' : 'as it is, no raise can be made';
  const turned = shoe.kind === 'rocker' && Math.abs(shoe.rocker.line.turn) > 1e-9;
  const note = turned ? ', seen square to the crest line: lengths along the shoe look a little short' : '';
  const name = words(`${shoe.side === 'left' ? 'Left' : 'Right'} shoe: ${kind}`, [x, y + ROWS_BELOW + 5.5], { size: LETTERS.heading, bold: true });
  return [name, ...(note ? [words(note.slice(2), [x, y + ROWS_BELOW + 9.7])] : [])];
}

/** Everything of one shoe from the side. */
function sideView(picture: Picture | Stand): Part {
  if (!('parts' in picture)) return standing(picture);
  const { shoe } = picture, body = sideBody(picture), dimensions = sideDimensions(picture);
  return together([body, dimensions, ...(shoe.kind === 'rocker' ? [sideRoll(picture, shoe)] : [])]);
}
