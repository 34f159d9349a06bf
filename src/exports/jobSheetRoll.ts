import { deg, rounded } from '../checks/say.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { pointOn, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees, degrees, type Mm, type Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { carriedBy, floorAt } from '../roll/carried.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { ordinaryBody } from '../roll/ordinary.ts';
import { anglesCovered, placedAt, type RollBody } from '../roll/rollBody.ts';
import { laidPath, placeAt } from '../walk/frame.ts';
import { arrowHead, drawn, filled, polyline, stroke, words, type Box, type Mark } from './drawing.ts';
import { fitted } from './fitted.ts';
import { toldOf } from './jobSheetNumbers.ts';
import { figureBook } from './numbers.ts';
import { sideOutline, sideProfile } from './sideProfile.ts';
import { onPaper, spot, type View } from './view.ts';

/** Letters, the head over a picture, and what stands under its floor. */
const SMALL: Mm = 2.7, HEAD: Mm = 5, UNDER: Mm = 9;
/** The chart of the pivot's height: how high, and its letters at both sides. */
const CHART: Mm = 24, MARGIN: Mm = 11;

/**
 * How a rocker rolls, in small: the sole at heel strike, at rest and at toe-off, the way of the ankle pivot over it, and where the
 * floor pushes every five degrees. Where there is room, the pivot's height beside that in an ordinary shoe.
 */
export function rollInSmall(shoe: RockerShoe, fitting: Fitting, { left, right, top, bottom }: Box): Mark[] {
  const chart = bottom - top > CHART + HEAD + UNDER + 30, picture = { left, right, top: top + HEAD, bottom: bottom - (chart ? CHART + 3 : 0) };
  return [
    words(`${shoe.side === 'left' ? 'Left' : 'Right'} shoe, how it rolls`, [left, top + 3.4], { size: 3.2, bold: true }),
    ...rolledIn(shoe, fitting, picture), ...(chart ? pivotChart(shoe, { left, right, top: bottom - CHART, bottom }) : []),
  ];
}

interface Laid { readonly roll: Rad; readonly outline: Path }

function rolledIn(shoe: RockerShoe, fitting: Fitting, { left, right, top, bottom }: Box): Mark[] {
  const body = rollBodyOf(shoe), { from, to } = anglesCovered(body), outline = sideOutline(sideProfile(shoe.shape)), { pivot } = carriedBy(shoe), book = figureBook(shoe, fitting);
  const laid = [from, 0, to].map((roll): Laid => ({ roll, outline: laidPath(placeAt(body, roll), outline) })), points = laid.flatMap((one) => pointsOf(one.outline));
  const course = stepsFrom(from, to, degrees(1)).map((roll) => placedAt(body, pivot, roll)), xs = points.map(([x]) => x), high = Math.max(...points.map(([, z]) => z), ...course.map(([, z]) => z)) + 6;
  const least = Math.min(...xs), most = Math.max(...xs), scale = Math.min((right - left) / (most - least), (bottom - top - UNDER) / high), ground = Math.min(bottom - UNDER, top + high * scale);
  const view: View = { zero: [(left + right - (least + most) * scale) / 2, ground], scale }, rest = laid[1]!;
  return [
    filled(onPaper(view, rest.outline), 'foam'), ...[laid[0]!, laid[2]!].map(({ outline: path }) => drawn(onPaper(view, path), 'hidden', 'pencil')), drawn(onPaper(view, rest.outline), 'visible'),
    stroke([left, ground], [right, ground], 'thin', 'ink'), drawn(polyline(course.map((point) => spot(view, point))), 'visible', 'computed'),
    ...contactMarks(body, view), ...endWords(book, view, body, { left, right, top, bottom }), ...pivotWords(book, { left, right, top, bottom }),
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

/** Both ends of the roll, under the floor where they lie. */
function endWords(book: Book, view: View, body: RollBody, { left, right }: Box): Mark[] {
  const { from, to } = anglesCovered(body), ground = view.zero[1], strike = book('strikeReached'), toeOff = book('toeOff'), third = (right - left) / 3 - 1;
  const mark = (roll: Rad): Mark[] => { const [x] = spot(view, [floorAt(body, roll), 0]); return [stroke([x, ground + 3.2], [x, ground], 'thin', 'ink'), arrowHead([x, ground], [0, -1], 'ink')]; };
  return [
    ...mark(from), ...mark(to),
    ...(strike ? [fitted(`heel strike ${toldOf(strike)}`, [left, ground + 7], third, { size: SMALL })] : []), fitted('ticks: every 5°', [(left + right) / 2, ground + 7], third, { size: SMALL, anchor: 'middle' }),
    ...(toeOff ? [fitted(`toe-off ${toldOf(toeOff)}`, [right, ground + 7], third, { size: SMALL, anchor: 'end' })] : []),
  ];
}

/** What the thick line over the sole is, in the corner that it leaves free: it climbs with the roll, and toe down it is far from the other end. */
function pivotWords(book: Book, { left, right, top }: Box): Mark[] {
  const drop = book('pivotDrop'), room = (right - left) * 0.4;
  return drop ? ['way of the ankle pivot:', `it drops ${toldOf(drop)}`].map((line, i) => fitted(line, [right, top + SMALL + i * 3.6], room, { size: SMALL, anchor: 'end', ink: 'computed' })) : [];
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
    fitted('Ankle pivot above the floor, mm; dashed: ordinary shoe', [left, top + 2], right - left, { size: SMALL }),
  ];
}
