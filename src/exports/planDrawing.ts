import { pointOn, type Path, type PathLine } from '../geometry/path.ts';
import { between, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { partsOf, type Shoe, type SoleParts } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';
import type { FigureKey } from '../checks/figures.ts';
import { levelDimension, uprightDimension, type Dimension } from './dimension.ts';
import { about, circle, drawn, LETTERS, roomFor, stroke, words, type Box, type Drawing, type Mark, type Paper } from './drawing.ts';
import { labelled } from './labelled.ts';
import type { Place, Wish } from './labels.ts';
import { bare, bareMeasure, figureBook, type FigureBook } from './numbers.ts';
import { part, segmentsOf, together, type Part } from './picture.ts';
import { planLines, type PlanLines } from './planLines.ts';
import { checkLines, drawingBox, sheetFrame, shoesInWords, stopMarks, type SheetNumber } from './sheetFrame.ts';
import { onPaper, scaleFor, spot, type View } from './view.ts';

/** Room for dimensions beside and below a sole seen from above, and for the name over it, on paper. */
const BESIDE: Mm = 17, BELOW: Mm = 26, OVER: Mm = 18, CORNER: Mm = 12;

interface Plan { readonly shoe: Shoe; readonly parts: SoleParts; readonly lines: PlanLines; readonly book: FigureBook; readonly reach: Reach }
interface Reach { readonly from: Mm; readonly to: Mm; readonly low: Mm; readonly high: Mm }

/** The soles from above, toes to the right: the left one, then the right one below it, as they lie when both feet stand. */
export const planDrawing = (design: Design, paper: Paper, sheet?: SheetNumber): Drawing => planSheet(design, paper, sheet).drawing;

/** A plan, and each sole on it: its lines, and where it lies. */
export interface PlanSheet { readonly drawing: Drawing; readonly soles: readonly PlanSole[] }
export interface PlanSole { readonly shoe: Shoe; readonly lines: PlanLines; readonly view: View }

/** The plan for a screen, where more is laid over its soles. */
export function planSheet(design: Design, paper: Paper, sheet: SheetNumber = { n: 1, of: 1 }): PlanSheet {
  const box = drawingBox(paper, design), title = `${shoesInWords(design)}, seen from above`, plans = design.shoes.flatMap((shoe) => planOf(shoe, design));
  const by = scaleFor((scale) => heightOf(plans, scale) <= box.bottom - box.top && plans.every(({ reach: { from, to } }) => (to - from) * scale + 2 * BESIDE <= box.right - box.left - CORNER));
  const views = viewsOf(plans, 1 / by, box), fixed = [
    ...checkLines([box.left + 4, box.top + 5]), ...stopMarks(design, box),
    ...plans.map((plan, i) => nameOf(plan, views[i]!)),
  ];
  const drawing = {
    paper, title: `${design.fitting.job.reference}: ${title}`,
    marks: [...sheetFrame(design, paper, title, by, sheet), ...fixed, ...labelled(together(plans.map((plan, i) => planView(plan, views[i]!))), box, fixed).marks],
  };
  return { drawing, soles: plans.map(({ shoe, lines }, i) => ({ shoe, lines, view: views[i]! })) };
}

function planOf(shoe: Shoe, design: Design): Plan[] {
  const parts = partsOf(shoe);
  if (!parts) return [];
  const lines = planLines(shoe, parts.shape), points = [...lines.edge, ...lines.ground].flatMap((piece) => [0, 0.25, 0.5, 0.75].map((t) => pointOn(piece, t)));
  const xs = points.map(([x]) => x), ys = points.map(([, y]) => y);
  return [{ shoe, parts, lines, book: figureBook(shoe, design.fitting), reach: { from: Math.min(...xs), to: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) } }];
}

const heightOf = (plans: readonly Plan[], scale: number): Mm => plans.reduce((sum, { reach: { low, high } }) => sum + (high - low) * scale + OVER + BELOW, 0);

function viewsOf(plans: readonly Plan[], scale: number, { left, right, top, bottom }: Box): View[] {
  const gap = (bottom - top - heightOf(plans, scale)) / (plans.length + 1);
  let y = top;
  return plans.map(({ reach: { from, to, low, high } }): View => {
    const view: View = { scale, zero: [(left + CORNER + right - (from + to) * scale) / 2, y + gap + OVER + high * scale] };
    y += gap + OVER + BELOW + (high - low) * scale;
    return view;
  });
}

const nameOf = ({ shoe: { side }, reach: { from, high } }: Plan, view: View): Mark => {
  const [x, y] = spot(view, [from, high]);
  return words(`${side === 'left' ? 'Left' : 'Right'} shoe`, [x, y - 4], { size: LETTERS.heading, bold: true });
};

function planView(plan: Plan, view: View): Part {
  const { lines: { feather, edge, ground, crest, ball, centre } } = plan, on = (path: Path): Path => onPaper(view, path);
  const long: PathLine = { kind: 'line', from: between(centre.from, centre.to, -0.03), to: between(centre.from, centre.to, 1.03) };
  const shapes = [
    drawn(on(ground), 'hidden'), drawn(on(feather), 'thin', 'ink'), drawn(on(edge), 'visible'),
    drawn(on([long]), 'centre', 'computed'), drawn(on([ball]), 'phantom', 'ink'), ...(crest ? [about(figureOf(plan, 'crestAngle'), drawn(on([crest]), 'centre', 'governs'))] : []),
  ];
  return together([
    part({ shapes, lines: [edge, ground, [long], [ball], ...(crest ? [[crest]] : [])].flatMap((path) => segmentsOf(view, path)) }),
    pivotMark(plan, view), dimensions(plan, view), part({ wishes: lineNames(plan, view) }),
  ]);
}

const figureOf = ({ shoe: { side } }: Pick<Plan, 'shoe'>, key: FigureKey): string => `${side}.${key}`;

/** Pivot and standing point lie on the long axis. */
function pivotMark({ shoe, book }: Plan, view: View): Part {
  if (shoe.kind === 'match') return part({});
  const marks = [['pivotX', shoe.rocker.stance.pivot[0], 'pivot'], ['standingPoint', shoe.rocker.stance.standing, 'standing point']] as const;
  return together(marks.map(([key, along, name]) => {
    const of = figureOf({ shoe }, key), text = `${name} ${bare(book(key)!)}`;
    const [x, y] = spot(view, [along, 0]), width = roomFor(text), rows = [-2.2, 5, -7, 10, -11];
    const places = rows.flatMap((row): Place[] => [{ at: [x + 1.5, y + row] }, { at: [x - 1.5 - width, y + row] }]);
    return part({
      shapes: [drawn(circle([x, y], 1), 'thin', 'computed'), stroke([x, y - 4], [x, y + 4], 'thin', 'computed')].map((mark) => about(of, mark)),
      wishes: [{ label: about(of, words(text, [x, y], { ink: 'computed' })), places }],
    });
  }));
}

/** Length, apex and joints below; widths of heel and ball at the ends. */
function dimensions({ shoe, book, lines: { ball, feather }, reach: { low, from, to } }: Plan, view: View): Part {
  const { last } = shoe.fitting, base = spot(view, [0, low])[1], row = (i: number): Mm => base + 7.5 + i * 6.3;
  const along = (x: Mm, i: number, text: string) => levelDimension(spot(view, [0, low]), spot(view, [x, low]), row(i), text);
  const across = ([x0, y0]: Point, [x1, y1]: Point, lineX: Mm, text: string) => uprightDimension(spot(view, [x0, y0]), spot(view, [x1, y1]), lineX, text);
  const widest = extremes(feather, last.length.value * 0.3), ends = [ball.from, ball.to] as const;
  const apex = shoe.kind === 'rocker' ? [dimensionOf(figureOf({ shoe }, 'apex'), along(shoe.order.apexX, 0, `apex ${bare(book('apex')!)} (${bare(book('apexShare')!)} % from the heel)`))] : [];
  return part({
    dimensions: [
      ...apex, along(last.length.value, apex.length, `last ${bareMeasure(last.length)}`),
      across(...widest, spot(view, [from, 0])[0] - 6, `heel ${bareMeasure(last.heelWidth)}`),
      across(...ends, spot(view, [to, 0])[0] + 12, `ball ${bareMeasure(last.ballWidth)}`),
    ],
  });
}

const dimensionOf = (of: string, { marks, label }: Dimension): Dimension => ({ marks: marks.map((mark) => about(of, mark)), label: about(of, label) });

/** The widest places of a path behind a place x, one on each side. */
function extremes(path: Path, before: Mm): [Point, Point] {
  const points = path.flatMap((piece) => [0, 0.5].map((t) => pointOn(piece, t))).filter(([x]) => x < before);
  const pick = (sign: 1 | -1): Point => points.reduce((best, point) => point[1] * sign > best[1] * sign ? point : best);
  return [pick(-1), pick(1)];
}

/** Which line is which: names over the sole on leaders, and the sides and the axis written within. */
function lineNames({ shoe, shoe: { side }, parts: { shape }, lines: { feather, ground, crest, ball, centre }, book, reach: { high } }: Plan, view: View): Wish[] {
  const upright = Object.values(shape.taper).every((lean) => lean === 0), flush = shape.edge === shape.feather, { length } = shape.last;
  const names: readonly (readonly [text: string, at: Point, of?: string])[] = [
    [flush ? 'edge, flush with the feather line' : 'feather line', topOf(feather, length * 0.34)],
    ...(crest ? [[`crest ${bare(book('crestAngle')!)}°`, upperEnd(crest, 0.85), figureOf({ shoe }, 'crestAngle')] as const] : []),
    ['ball line', upperEnd(ball, 0.9)], [upright ? 'ground line, under the edge' : 'ground line', topOf(ground, length * 0.86)],
  ];
  const [upper, lower] = side === 'left' ? ['outer side', 'inner side'] : ['inner side', 'outer side'], forepart = length * 0.74;
  return [
    within('long axis', spot(view, between(centre.from, centre.to, 0.08)), -1), within(upper, spot(view, topOf(feather, forepart)), 1), within(lower, spot(view, topOf(feather, forepart, -1)), -1),
    ...names.map(([text, point, of]) => tied(text, spot(view, point), spot(view, [0, high])[1], of)),
  ];
}

/** The point of a closed path near a place x, on the upper or the lower side of the paper. */
function topOf(path: Path, x: Mm, side: 1 | -1 = 1): Point {
  const points = path.flatMap((piece) => [0, 0.25, 0.5, 0.75].map((t) => pointOn(piece, t))).filter(([, y]) => y * side > 0);
  return points.reduce((best, point) => Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best);
}

const upperEnd = ({ from, to }: PathLine, share: number): Point => from[1] > to[1] ? between(to, from, share) : between(from, to, share);

/** A word inside the sole, above (-1) or below a point. */
function within(text: string, [x, y]: Point, way: 1 | -1): Wish {
  const rows = [way > 0 ? 5 : -2.5, way > 0 ? 9 : -6.5, way > 0 ? 13 : -10.5];
  return { label: words(text, [x, y], { ink: 'computed' }), places: rows.flatMap((row) => [0, 6, -6, 14, -14, 22].map((aside): Place => ({ at: [x + aside, y + row] }))) };
}

/** A name over the sole with a leader to a point. */
function tied(text: string, [x, y]: Point, high: Mm, of?: string): Wish {
  const plain = words(text, [x, y], { anchor: 'middle', ink: 'computed' }), label = of === undefined ? plain : about(of, plain);
  const places = Array.from({ length: 8 }, (_, step) => [0, 8, -8, 16, -16, 26, -26].map((aside): Place => {
    const foot: Point = [x + aside, high - 2 - step * 2];
    return { at: [foot[0], foot[1] - 1], leader: [foot, [x, y]] };
  })).flat();
  return { label, places };
}
