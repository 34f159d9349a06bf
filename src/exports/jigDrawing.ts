import type { Design } from '../checks/design.ts';
import { windowRound } from '../geometry/clip.ts';
import { pointAlong, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { JigOrder } from '../fitting/making.ts';
import { routerReach } from '../making/jig/routerReach.ts';
import { STRINGER } from '../making/jig/frame.ts';
import { letterOf } from '../making/jig/letters.ts';
import type { ShoeJig } from '../making/jig/ordered.ts';
import { uprightTop } from '../making/jig/rail.ts';
import { overBench } from '../making/jig/runOn.ts';
import { endOf, startOf } from '../profile/groundFace.ts';
import { planPoint, rollX, rollY } from '../profile/rollLine.ts';
import { clearWords, drawn, LETTERS, polyline, words, type Drawing, type LineKind, type Mark, type Paper } from './drawing.ts';
import { mm } from '../checks/say.ts';
import { checkLines, drawingBox, sheetFrame, type SheetNumber } from './sheetFrame.ts';
import { onPaper, scaleFor, spot, type View } from './view.ts';

/** Room over a view for its name, round it, and for the letters of the ribs below it, on paper. */
const OVER: Mm = 11, ROUND: Mm = 12, BELOW: Mm = 7;

/** A view of the jig: its name, its size, and what is drawn of it. */
interface JigView { readonly name: string; readonly least: Point; readonly most: Point; readonly marks: (view: View) => readonly Mark[] }

/** The jig put together: from the side, from above, and its ribs and bridges from the toe. */
export function jigDrawing(design: Design, made: ShoeJig, paper: Paper, sheet: SheetNumber): Drawing {
  const title = `Jig for the ${made.side} shoe, sole up`, box = drawingBox(paper, design), views = [sideView(made), planView(made), crossView(made)], room = box.right - box.left - 2 * ROUND;
  const highOf = ({ least, most }: JigView, scale: number): Mm => OVER + (most[1] - least[1]) * scale + BELOW, widest = Math.max(...views.map(({ least, most }) => most[0] - least[0]));
  const by = scaleFor((scale) => widest * scale <= room && views.reduce((sum, view) => sum + highOf(view, scale), 0) <= box.bottom - box.top - OVER);
  let y = box.top + OVER;
  const marks = views.flatMap((view): Mark[] => {
    const { least, most, name } = view, scale = 1 / by, zero: Point = [(box.left + box.right - (least[0] + most[0]) * scale) / 2, y + OVER + most[1] * scale];
    y += highOf(view, scale);
    return [words(name, [spot({ zero, scale }, least)[0], zero[1] - most[1] * scale - 5], { size: LETTERS.heading, bold: true }), ...view.marks({ zero, scale })];
  });
  return { paper, title, marks: [...sheetFrame(design, paper, title, by, sheet), ...checkLines([box.left + 4, box.top + 5]), ...marks] };
}

const line = (view: View, path: Path, kind: LineKind): Mark => drawn(onPaper(view, path), kind);
const box = (x0: Mm, y0: Mm, x1: Mm, y1: Mm): Path => polyline([[x0, y0], [x1, y0], [x1, y1], [x0, y1]], true);
const tag = (view: View, text: string, at: Point, aside: Point = [0, 0]): Mark[] => { const [x, y] = spot(view, at); return clearWords(words(text, [x + aside[0], y + aside[1]], { anchor: 'middle' })); };

/** Heel left, as the side drawing of the shoe, but upside down. */
function sideView({ jig: { frame }, shape, board: { thickness } }: ShoeJig): JigView {
  const { zero, run, railFoot, ribs, rails, sole } = frame, edge = overBench(rails, zero), half = thickness / 2;
  const bottom = Array.from({ length: 61 }, (_, i): Point => { const x = sole.from + ((sole.to - sole.from) * i) / 60; return [x, zero - shape.upper(...planPoint(shape.line, x, 0)) - shape.build]; });
  const ends: Path = polyline([[run.from, zero - startOf(rails.pieces[0]!)[1]], [run.from, railFoot], [run.to, railFoot], [run.to, zero - endOf(rails.pieces.at(-1)!)[1]]]);
  return {
    name: 'From the side', least: [run.from, 0], most: [run.to, zero],
    marks: (view) => [
      ...ribs.map((x) => line(view, box(x - half, 0, x + half, uprightTop(frame, x, thickness)), 'hidden')), line(view, box(run.from, 0, run.to, STRINGER), 'thin'),
      line(view, [...edge, ...ends], 'visible'), line(view, polyline(bottom), 'phantom'),
      ...ribs.flatMap((x, i) => tag(view, letterOf(i), [x, 0], [0, 4.2])), ...tag(view, 'bottom of the last', bottom[38]!, [0, 5]),
      ...tag(view, 'rail', [(run.from + run.to) / 2, zero], [0, -1.4]), ...tag(view, 'heel', [run.from, railFoot / 2 + STRINGER / 2], [-6, 0]), ...tag(view, 'toe', [run.to, railFoot / 2 + STRINGER / 2], [6, 0]),
    ],
  };
}

/** From above, heel left: the outer side of a left shoe is below, for it lies on its upper. */
function planView({ side, jig: { frame }, shape, board: { thickness } }: ShoeJig): JigView {
  const { run, ribs, railsAt, stringersAt, slot } = frame, half = thickness / 2, way = side === 'left' ? 1 : -1, reach = Math.max(...railsAt.map(Math.abs)) + slot / 2 + 15;
  const rib = (x: Mm): Path => box(x - half, way * (railsAt[0] - slot / 2 - 15), x + half, way * (railsAt[1] + slot / 2 + 15));
  const along = (y: Mm): Path => box(run.from, way * y - half, run.to, way * y + half), edge = Array.from({ length: shape.edge.length * 4 }, (_, i): Point => { const at = pointAlong(shape.edge, i / 4); return [rollX(shape.line, at), -way * rollY(shape.line, at)]; });
  return {
    name: 'From above', least: [run.from, -reach], most: [run.to, reach],
    marks: (view) => [
      ...ribs.map((x) => line(view, rib(x), 'thin')), ...stringersAt.map((y) => line(view, along(y), 'hidden')), ...railsAt.map((y) => line(view, along(y), 'visible')), line(view, polyline(edge, true), 'phantom'),
      ...ribs.flatMap((x, i) => tag(view, letterOf(i), [x, -reach], [0, 3.6])), ...tag(view, 'outer side', [(run.from + run.to) / 2, way * railsAt[0]], [0, way > 0 ? -2 : 4.6]), ...tag(view, 'inner side', [(run.from + run.to) / 2, way * railsAt[1]], [0, way > 0 ? 4.6 : -2]),
    ],
  };
}

/** The rib under the ball and the bridge over it, seen from the toe. */
function crossView({ side, jig: { parts, frame, bush }, board: { thickness } }: ShoeJig): JigView {
  const bridges = parts.filter(({ kind }) => kind === 'bridge'), ball = bridges.at(-1)!, ribs = parts.filter(({ kind }) => kind === 'rib');
  const rib = ribs.reduce((best, one) => (Math.abs(one.stand.at - ball.stand.at) < Math.abs(best.stand.at - ball.stand.at) ? one : best)), flip = (path: Path): Path => (side === 'right' ? mirroredAcross(path) : path);
  const outline = flip(rib.part.outline), over = flip(ball.part.outline), { least } = windowRound([outline, over]), { most } = windowRound([over]), reach = Math.max(-least[0], windowRound([outline]).most[0], most[0]);
  const foot = frame.railFoot, top = uprightTop(frame, rib.stand.at, thickness) + 5;
  return {
    name: `Rib ${letterOf(ribs.indexOf(rib))} and the bridge over the ball, from the toe`, least: [-reach, 0], most: [reach, bush ? Math.max(most[1], top + bush.diameter / 2 + BASE) : most[1]],
    marks: (view) => [
      ...(bush ? routerMarks(view, bush, frame, thickness, (side === 'right' ? -frame.railsAt[1] : frame.railsAt[0]), top) : []),
      line(view, outline, 'visible'), line(view, over, 'thin'), ...frame.railsAt.map((y) => (side === 'right' ? -y : y)).map((y) => line(view, box(y - thickness / 2, foot, y + thickness / 2, top), 'hidden')),
      ...tag(view, 'bridge', [bush ? most[0] / 2 : 0, most[1]], [0, 5]), ...tag(view, 'the lasted upper hangs here', [0, (STRINGER + foot) / 2 + 12]),
    ],
  };
}

/** Half of a router's base, and how thick it is drawn. */
const BASE: Mm = 70, PLATE: Mm = 10;

/** How a router with a guide bush is held at the left rail: base on the ends of the ribs, bush on the edge, cutter to the middle. @param edge height of the rail */
function routerMarks(view: View, { diameter, cutter }: NonNullable<JigOrder['bush']>, frame: ShoeJig['jig']['frame'], thickness: Mm, rail: Mm, edge: Mm): Mark[] {
  const { railTo, fromBase } = routerReach(frame, thickness), base = rail + thickness / 2 - railTo, axis = edge + diameter / 2;
  return [
    line(view, box(base - PLATE, axis - BASE, base, axis + BASE), 'phantom'), line(view, box(base, edge, base + railTo, edge + diameter), 'phantom'),
    line(view, box(base + railTo, axis - cutter / 2, base + fromBase, axis + cutter / 2), 'phantom'), line(view, polyline([[base - 4 * PLATE, axis], [base + fromBase + PLATE, axis]]), 'centre'),
    ...tag(view, 'router on its side', [base - PLATE, axis], [-17, 1]),
  ];
}

const mirroredAcross = (path: Path): Path => path.map((piece) => piece.kind === 'line'
  ? { kind: 'line', from: [-piece.from[0], piece.from[1]], to: [-piece.to[0], piece.to[1]] }
  : { ...piece, centre: [-piece.centre[0], piece.centre[1]], start: Math.PI - piece.start, sweep: -piece.sweep });

/** How much room it needs on the bench. */
export const jigSize = ({ jig: { frame: { run, zero, railsAt, slot } } }: ShoeJig): string => `${mm(run.to - run.from, 0)} long, ${mm(railsAt[1] - railsAt[0] + slot + 30, 0)} wide, ${mm(zero, 0)} high`;
