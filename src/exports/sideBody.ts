import type { FigureKey } from '../checks/figures.ts';
import { pointOn, reversed, type Path } from '../geometry/path.ts';
import { subtract, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { drawn, filled, polyline, stroke, words, type Box, type Mark } from './drawing.ts';
import { bare } from './numbers.ts';
import { above, ofFigure, onSheet, part, segmentsOf, together, upperAt, type Part, type Picture, type Stand } from './picture.ts';
import { sideOutline } from './sideProfile.ts';
import { onPaper } from './view.ts';

/** What both kinds of sole show: the body in its layers, thickness where a caliper goes, and where the foot stands. */
export const sideBody = (picture: Picture): Part => together([layers(picture), stations(picture), standing(picture), undersideLabel(picture)]);

const startOf = (path: Path): Point => pointOn(path[0]!, 0);
const endOf = (path: Path): Point => pointOn(path.at(-1)!, 1);

/** Foam, outsole and stiffener shaded, the outline thick. Its upper line is the underside of the last. */
function layers({ profile, view, skyline }: Picture): Part {
  const { upper, ground, foam, stiffener } = profile, outline = onPaper(view, sideOutline(profile));
  const band = (over: Path, under: Path): Path => onPaper(view, [
    ...under, { kind: 'line', from: endOf(under), to: endOf(over) }, ...reversed(over), { kind: 'line', from: startOf(over), to: startOf(under) },
  ]);
  return part({
    shapes: [
      filled(outline, 'foam'), filled(band(foam, ground), 'rubber'), ...(stiffener ? [filled(band(upper, stiffener), 'carbon')] : []),
      drawn(outline, 'visible'),
    ],
    lines: [...segmentsOf(view, upper), ...segmentsOf(view, ground)],
    bodies: bodyBoxes(skyline, outline, view.zero[1]),
  });
}

/** Everything from the upper face down to the ground, in upright strips, walls that stand out at the ends counted. */
function bodyBoxes(skyline: readonly Point[], outline: Path, ground: Mm): Box[] {
  const ends = outline.map((piece) => pointOn(piece, 0)[0]), top = ([, y]: Point): Point[] => [[Math.min(...ends), y], [Math.max(...ends), y]];
  const line = [top(skyline[0]!)[0]!, ...skyline, top(skyline.at(-1)!)[1]!];
  return line.slice(1).map(([right, y], i): Box => ({ left: line[i]![0], right, top: Math.min(y, line[i]![1]), bottom: ground }));
}

const STATIONS = [
  ['thicknessBack', 'back'], ['thicknessPivot', 'pivot'], ['thicknessSeatEnd', 'seat end'],
  ['thicknessApex', 'apex'], ['thicknessTread', 'tread'], ['thicknessTip', 'tip'],
] as const satisfies readonly (readonly [FigureKey, string])[];

/** Other labels leave the way up from a station free. */
const KEPT_FREE: Mm = 12;

/** A line through the sole where a maker puts the caliper, the value above it. */
function stations(picture: Picture): Part {
  const { book, profile: { ground } } = picture, [from] = onSheet(picture, startOf(ground)), [to] = onSheet(picture, endOf(ground));
  return together(STATIONS.flatMap(([key, name]) => {
    const figure = book(key);
    if (figure?.at === undefined) return [];
    const top = upperAt(picture, figure.at), head = onSheet(picture, top), foot = onSheet(picture, subtract(top, [0, figure.value])), [x, y] = head;
    return [ofFigure(picture, key, part({
      shapes: x > from + 0.1 && x < to - 0.1 ? [stroke(foot, head)] : [],
      wishes: [above(picture, words(`${bare(figure)} thick, ${name}`, head, { anchor: 'middle' }), head)],
      lines: [[foot, [x, y - KEPT_FREE]]],
    }))];
  }));
}

/** Where the foot stands, insole counted: the same two marks on both shoes tell whether the pair is level. */
export function standing(picture: Stand): Part {
  const { shoe: { stands, last }, book, along } = picture, half: Mm = 1.3, arm: Mm = 4;
  return together(([[last.seatLength / 2, stands.seat, 'standsSeat'], [last.tread, stands.ball, 'standsBall']] as const).map(([at, height, key]) => {
    const [x, y] = onSheet(picture, [along(at), height]);
    const label = words(`foot stands ${bare(book(key)!)} high`, [x, y], { anchor: 'middle', ink: 'computed' });
    const shapes: Mark[] = [drawn(polyline([[x, y], [x + half, y - 2 * half], [x - half, y - 2 * half]], true), 'thin', 'computed'), stroke([x - arm, y], [x + arm, y], 'thin', 'computed')];
    return ofFigure(picture, key, part({ shapes, wishes: [above(picture, label, [x, y - 2 * half])], boxes: [{ left: x - arm, right: x + arm, top: y - 2 * half, bottom: y }] }));
  }));
}

/** Says once whose underside the upper line is. */
function undersideLabel(picture: Picture): Part {
  const { shoe: { kind, last } } = picture, on = onSheet(picture, upperAt(picture, (last.seatLength + last.tread) / 2));
  const text = kind === 'rocker' ? 'underside of the last' : 'underside of the shoe as it is now';
  return part({ wishes: [above(picture, words(text, on, { anchor: 'middle', ink: 'pencil' }), on)] });
}
