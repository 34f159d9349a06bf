import { deg, rounded } from '../checks/say.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { pointOn, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees, degrees, type Mm, type Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { carriedBy } from '../roll/carried.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { ordinaryBody } from '../roll/ordinary.ts';
import { anglesCovered, floorAt, placedAt, type RollBody } from '../roll/rollBody.ts';
import { laidPath, placeAt } from '../walk/frame.ts';
import { arrowHead, drawn, filled, polyline, stroke, words, type Box, type Mark } from './drawing.ts';
import { fitted } from './fitted.ts';
import { toldOf } from './jobSheetNumbers.ts';
import { figureBook } from './numbers.ts';
import { sideOutline, sideProfile } from './sideProfile.ts';
import { onPaper, spot, type View } from './view.ts';

/** Letters, the head over a picture, and what stands under its floor. */
const SMALL: Mm = 2.7, HEAD: Mm = 5, UNDER: Mm = 9, LINE: Mm = 3.6;
/** In less width what is said stands line under line. */
const NARROW: Mm = 60;
/** The chart of the pivot's height: how high, and its letters at both sides. */
const CHART: Mm = 24, MARGIN: Mm = 11;

/**
 * How a rocker rolls, in small: the sole at heel strike, at rest and at toe-off, the way of the ankle pivot over it, and where the
 * floor pushes every five degrees. Where there is room, the pivot's height beside that in an ordinary shoe.
 */
export function rollInSmall(shoe: RockerShoe, fitting: Fitting, { left, right, top, bottom }: Box): Mark[] {
  const chart = bottom - top > CHART + HEAD + UNDER + 30, picture = { left, right, top: top + HEAD, bottom: bottom - (chart ? CHART + 3 : 0) };
  return [
    words(`${shoe.side === 'left' ? 'Left' : 'Right'} shoe, how it rolls`, [left, top + 3.4], { size: right - left < NARROW ? 2.9 : 3.2, bold: true }),
    ...rolledIn(shoe, fitting, picture), ...(chart ? pivotChart(shoe, { left, right, top: bottom - CHART, bottom }) : []),
  ];
}

interface Laid { readonly roll: Rad; readonly outline: Path }

function rolledIn(shoe: RockerShoe, fitting: Fitting, { left, right, top, bottom }: Box): Mark[] {
  const body = rollBodyOf(shoe), { from, to } = anglesCovered(body), outline = sideOutline(sideProfile(shoe.shape)), { pivot } = carriedBy(shoe), book = figureBook(shoe, fitting);
  const laid = [from, 0, to].map((roll): Laid => ({ roll, outline: laidPath(placeAt(body, roll), outline) })), points = laid.flatMap((one) => pointsOf(one.outline));
  const course = stepsFrom(from, to, degrees(1)).map((roll) => placedAt(body, pivot, roll)), xs = points.map(([x]) => x), high = Math.max(...points.map(([, z]) => z), ...course.map(([, z]) => z)) + 6;
  const least = Math.min(...xs), most = Math.max(...xs), under = UNDER + (right - left < NARROW ? 3 * LINE : 0), scale = Math.min((right - left) / (most - least), (bottom - top - under) / high), ground = Math.min(bottom - under, top + high * scale);
  const view: View = { zero: [(left + right - (least + most) * scale) / 2, ground], scale }, rest = laid[1]!;
  return [
    filled(onPaper(view, rest.outline), 'foam'), ...[laid[0]!, laid[2]!].map(({ outline: path }) => drawn(onPaper(view, path), 'hidden', 'pencil')), drawn(onPaper(view, rest.outline), 'visible'),
    stroke([left, ground], [right, ground], 'thin', 'ink'), drawn(polyline(course.map((point) => spot(view, point))), 'visible', 'computed'),
    ...contactMarks(body, view), ...told(book, view, body, { left, right, top, bottom }),
  ];
}

const pointsOf = (path: Path): Point[] => path.flatMap((piece) => [0, 0.25, 0.5, 0.75, 1].map((t) => pointOn(piece, t)));
const stepsFrom = (from: Rad, to: Rad, step: Rad): Rad[] => { const count = Math.ceil((to - from) / step); return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count); };

/** Where on the floor the sole touches, every five degrees of roll. */
function contactMarks(body: RollBody, view: View): Mark[] {
  const { from, to } = anglesCovered(body), five = degrees(5), first = Math.ceil(from / five), count = Math.floor(to / five) - first + 1;
  return Array.from({ length: count }, (_, i) => (first + i) * five).map((roll) => { const [x, y] = spot(view, [floorAt(body, roll), 0]); return stroke([x, y], [x, y + (roll === 0 ? 2.6 : 1.6)], 'thin', 'ink'); });
}

type Book = ReturnType<typeof figureBook>;

/** Both ends of the roll under the floor, and what the thick line is: in the upper corner that it leaves free, for it climbs with the roll and is far from the toe. */
function told(book: Book, view: View, body: RollBody, { left, right, top }: Box): Mark[] {
  const { from, to } = anglesCovered(body), ground = view.zero[1], said = (key: 'strikeReached' | 'toeOff' | 'pivotDrop', name: string): string => { const figure = book(key); return figure ? `${name} ${toldOf(figure)}` : ''; };
  const mark = (roll: Rad): Mark[] => { const [x] = spot(view, [floorAt(body, roll), 0]); return [stroke([x, ground + 3.2], [x, ground], 'thin', 'ink'), arrowHead([x, ground], [0, -1], 'ink')]; };
  const strike = said('strikeReached', 'strike'), toeOff = said('toeOff', 'toe-off'), ticks = 'ticks: every 5°', drops = said('pivotDrop', 'drops'), low = ground + 7;
  const line = (text: string, at: Point, room: Mm, anchor: 'start' | 'middle' | 'end' = 'start'): Mark => fitted(text, at, room, { size: SMALL, anchor });
  if (right - left < NARROW) return [...mark(from), ...mark(to), ...[strike, toeOff, ticks, `ankle pivot ${drops}`].map((text, i) => line(text, [left, low + i * LINE], right - left))];
  const third = (right - left) / 3 - 1;
  return [
    ...mark(from), ...mark(to), line(strike, [left, low], third), line(ticks, [(left + right) / 2, low], third, 'middle'), line(toeOff, [right, low], third, 'end'),
    ...['ankle pivot:', `it ${drops}`].map((text, i) => line(text, [right, top + SMALL + i * LINE], third, 'end')),
  ];
}

/** The ankle pivot's height above the floor from strike to toe-off, and in an ordinary shoe. */
function pivotChart(shoe: RockerShoe, { left, right, top, bottom }: Box): Mark[] {
  const body = rollBodyOf(shoe), carried = carriedBy(shoe), { from, to } = anglesCovered(body), rolls = stepsFrom(from, to, degrees(1));
  const of = (on: RollBody): Point[] => rolls.map((roll) => [roll, placedAt(on, carried.pivot, roll)[1]]);
  const own = of(body), ordinary = of(ordinaryBody(carried, shoe.bodies.whole.rim.start)), heights = [...own, ...ordinary].map(([, z]) => z), low = Math.min(...heights), high = Math.max(...heights, low + 10);
  const x0 = left + MARGIN, x1 = right - 1, y0 = bottom - 7, y1 = top + 4, at = ([roll, z]: Point): Point => [x0 + ((roll - from) / (to - from)) * (x1 - x0), y0 - ((z - low) / (high - low)) * (y0 - y1)];
  const ticks = [low, high].map((z) => words(rounded(z, 0), [x0 - 1, at([from, z])[1] + 0.9], { size: SMALL, anchor: 'end' }));
  const angles = [...new Set([from, 0, to])].map((roll) => words(deg(inDegrees(roll), 0), [at([roll, low])[0], y0 + 3.4], { size: SMALL, anchor: roll === from ? 'start' : roll === to ? 'end' : 'middle' }));
  return [
    stroke([x0, y0], [x1, y0], 'thin', 'ink'), stroke([x0, y0], [x0, y1], 'thin', 'ink'), stroke([at([0, low])[0], y0], [at([0, low])[0], y1], 'thin', 'pencil'),
    drawn(polyline(ordinary.map(at)), 'hidden', 'pencil'), drawn(polyline(own.map(at)), 'visible', 'computed'), ...ticks, ...angles,
    fitted('Pivot above the floor, mm; dashed: ordinary', [left, top + 2], right - left, { size: SMALL }),
  ];
}
