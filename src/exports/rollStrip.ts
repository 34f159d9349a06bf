import { balanceCaution } from '../checks/cautions.ts';
import type { Design } from '../checks/design.ts';
import { deg, rounded } from '../checks/say.ts';
import { walkFigures, type ShoeWalkFigures } from '../checks/walkFigures.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { add, between, distance, type Point } from '../geometry/point.ts';
import { partsOf, type Shoe } from '../pair/shoe.ts';
import { frameAt, laidPath, type Frame } from '../walk/frame.ts';
import { laidOrdinary } from '../walk/ordinaryShape.ts';
import { MOMENTS } from '../walk/phases.ts';
import { arrowHead, ARROW_LENGTH, circle, drawn, filled, LETTERS, polyline, stroke, WIDER, words, type Box, type Drawing, type Mark, type Paper } from './drawing.ts';
import { wrapped } from './letters.ts';
import { drawnTable, ruleLines, stripTable, tableHeight, tableWidth } from './rollTable.ts';
import { checkLines, drawingBox, sheetFrame, shoesInWords, stopMarks, type SheetNumber } from './sheetFrame.ts';
import { sideOutline, sideProfile } from './sideProfile.ts';
import { onPaper, spot, type View } from './view.ts';

/** Widest a shoe gets while it rolls, and how far above the floor a picture must reach for the ankle pivot, mm. */
const WIDEST: Mm = 320, TALLEST: Mm = 215;
/** Scales a strip is drawn at; no length is taken from it, so one between those of technical drawings may stand. */
const SCALES = [5, 7.5, 10] as const;
/** Room on paper: left for the check lines, over a row for the name, under its ground for three lines of words. */
const LEFT: Mm = 13, NAME: Mm = 5, UNDER: Mm = 14, TOP: Mm = 11.5;

interface Row { readonly figures: ShoeWalkFigures; readonly shoe: Shoe; readonly ground: Mm; readonly up: Mm }
interface Strip { readonly box: Box; readonly by: number; readonly column: Mm; readonly rows: readonly Row[] }

/** Six moments of a step for each shoe, from the side, an ordinary shoe as a thin ghost behind; its numbers and the caution below. */
export function rollStrip(design: Design, paper: Paper, sheet: SheetNumber = { n: 1, of: 1 }): Drawing {
  const figures = walkFigures(design), title = `${shoesInWords(design)}, six moments of a step`, box = drawingBox(paper, design), below = footOf(design, figures, box), strip = layOut(design, box, figures, below.height);
  return {
    paper, title: `${design.fitting.job.reference}: rolling`,
    marks: [
      ...sheetFrame(design, paper, title, strip.by, sheet), ...checkLines([box.left + 4, box.top + 5]), ...stopMarks(design, box),
      ...strip.rows.flatMap((row) => rowMarks(row, strip)), ...below.marks,
    ],
  };
}

function layOut(design: Design, box: Box, figures: readonly ShoeWalkFigures[], below: Mm): Strip {
  const column = (box.right - box.left - LEFT - 3) / MOMENTS.length, room = (box.bottom - box.top - TOP - below) / Math.max(1, figures.length);
  const up = room - NAME - UNDER, by = SCALES.find((scale) => WIDEST / scale <= column && TALLEST / scale <= up) ?? 10;
  return {
    box, by, column, rows: figures.flatMap((one, i): Row[] => {
      const shoe = design.shoes.find(({ side }) => side === one.side);
      return shoe ? [{ figures: one, shoe, ground: box.top + TOP + (i + 1) * room - UNDER, up }] : [];
    }),
  };
}

function rowMarks(row: Row, strip: Strip): Mark[] {
  const { box, column } = strip, { shoe: { side, kind }, ground, up } = row, from = box.left + LEFT;
  const name = words(`${side === 'left' ? 'Left' : 'Right'} shoe: ${kind === 'rocker' ? 'rocker' : 'matched'}`, [from, ground - up - 0.5], { bold: true });
  return [name, stroke([from, ground], [box.right - 3, ground], 'visible', 'ink'), ...MOMENTS.flatMap((moment, i) => momentMarks(row, strip, moment, from + i * column))];
}

/** One moment: ghost, shoe, leg line, push and words. */
function momentMarks(row: Row, { by, column }: Strip, [phase, share]: (typeof MOMENTS)[number], left: Mm): Mark[] {
  const { figures: { walk }, ground, up } = row, frame = frameAt(walk.own, share), ghost = frameAt(walk.ordinary, share);
  const view: View = { scale: 1 / by, zero: [left + (column - (walk.shape.fore[1]![0] + walk.shape.rear[4]![0]) / by) / 2, ground] };
  const at = (line: number): Point => [left + 1, ground + 5.2 + 3.5 * line], small = { size: 2.7 };
  return [
    ...(row.shoe.kind === 'rocker' ? ghostMarks(row, view, ghost) : []), ...shoeMarks(row, view, frame), ...legMarks(view, frame, ground - up), ...pushMarks(view, frame, up),
    words(`${phase}, ${rounded(100 * share, 0)} %`, at(0), { ...small, bold: true }),
    words(`roll ${deg(inDegrees(frame.roll))}`, at(1), small), words(`pivot ${rounded(frame.pivot[1], 0)}, hip ${rounded(frame.hip[1], 0)}${row.figures.own[0]?.estimated ? ' est.' : ''}`, at(2), small),
  ];
}

function ghostMarks({ figures: { walk: { shape } } }: Row, view: View, { place, pivot }: Frame): Mark[] {
  const { rear, fore } = laidOrdinary(shape, place), on = (points: readonly Point[]): Point[] => points.map((point) => spot(view, point));
  return [drawn(polyline(on(rear), true), 'phantom', 'pencil'), drawn(polyline(on(fore), true), 'phantom', 'pencil'), drawn(circle(spot(view, pivot), 0.6), 'thin', 'pencil')];
}

/** A rocker as it is cut; a matched shoe, which bends at the ball, in two parts. */
function shoeMarks({ shoe, figures: { walk: { shape } } }: Row, view: View, { place }: Frame): Mark[] {
  const parts = shoe.kind === 'rocker' ? partsOf(shoe) : undefined;
  if (parts) { const outline = onPaper(view, laidPath(place, sideOutline(sideProfile(parts.shape)))); return [filled(outline, 'foam'), drawn(outline, 'visible')]; }
  const { rear, fore } = laidOrdinary(shape, place);
  return [rear, fore].flatMap((points) => { const outline = polyline(points.map((point) => spot(view, point)), true); return [filled(outline, 'foam'), drawn(outline, 'visible')]; });
}

/** Longer than this on the shoe no leg line is drawn: it would lie over the next moment. */
const LEG_DRAWN: Mm = 200;

/** The leg line from the pivot towards the hip, as far up as there is room. */
function legMarks(view: View, { pivot, hip }: Frame, top: Mm): Mark[] {
  const from = spot(view, pivot), to = spot(view, hip), part = Math.min(LEG_DRAWN / distance(pivot, hip), (from[1] - top) / (from[1] - to[1]));
  return [stroke(from, between(from, to, Math.max(0, part)), 'centre', 'computed'), drawn(circle(from, 0.9), 'thin', 'computed')];
}

/** One body weight is drawn half as high as a picture. */
function pushMarks(view: View, { contact, push }: Frame, up: Mm): Mark[] {
  const foot = spot(view, contact), length = push * up * 0.5, tip = add(foot, [0, -length]);
  const mark = filled(polyline([foot, add(foot, [1.1, 2]), add(foot, [-1.1, 2])], true), 'governs');
  return length < ARROW_LENGTH ? [mark] : [mark, stroke(foot, tip, 'thin', 'governs'), arrowHead(tip, [0, -1], 'governs')];
}

const GAP: Mm = 2, LINE: Mm = 3.3, MARGIN: Mm = 8;

/** The table on the left; on the right what drives the roll and what is drawn; the caution over the whole width below. */
function footOf(design: Design, figures: readonly ShoeWalkFigures[], box: Box): { readonly height: Mm; readonly marks: readonly Mark[] } {
  const table = stripTable(design, figures), left = box.left + MARGIN, split = left + tableWidth(table) + 5, told = { size: 2.4 };
  const rules = ruleLines(figures).flatMap((line) => wrapped(line, (box.right - split - 3) / WIDER, told)), upper = Math.max(tableHeight(table), rules.length * LINE) + GAP;
  const { text, loud = false } = balanceCaution(design.fitting.wearer.risks), lettering = { size: loud ? LETTERS.heading : LETTERS.label, bold: true }, line = lettering.size * 1.25;
  const caution = wrapped(text, (box.right - left - 3) / WIDER, lettering), height = GAP + upper + caution.length * line + GAP, top = box.bottom - height + GAP;
  return { height, marks: [
    ...drawnTable(table, [left, top]), ...rules.map((one, i) => words(one, [split, top + 2.4 + i * LINE], told)),
    ...caution.map((one, i) => words(one, [left, top + upper + 0.8 * line + i * line], lettering)),
  ] };
}
