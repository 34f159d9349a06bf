import { add, dot, scale, subtract, turnLeft, unit, type Point } from '../geometry/point.ts';
import { biarc, directionAlong, fitArcs, offsetRight, pointAlong, type Path } from '../geometry/path.ts';
import { lately } from '../geometry/lately.ts';
import { clamp, smoothStep } from '../geometry/solve.ts';
import type { Mm } from '../geometry/units.ts';
import type { ToeShape } from '../fitting/words.ts';
import type { Last } from './last.ts';

/** How far the sole's edge stands outside the feather line. */
interface EdgeBeyond { readonly heel: Mm; readonly ball: Mm; readonly toe: Mm }

/** How full a quarter of the outline is: handle lengths along the foot and across it, as shares of the quarter's sides. */
interface Fullness { readonly along: number; readonly across: number }

/** The toe's quarters, and how far the tip is set to the inner side as a share of the ball width. A circle is 0.55 both ways. */
const TOES: Record<ToeShape, { readonly inner: Fullness; readonly outer: Fullness; readonly aside: number }> = {
  round: { inner: { along: 0.62, across: 0.62 }, outer: { along: 0.55, across: 0.62 }, aside: 0 },
  pointed: { inner: { along: 0.45, across: 0.4 }, outer: { along: 0.42, across: 0.4 }, aside: 0 },
  square: { inner: { along: 0.74, across: 0.8 }, outer: { along: 0.68, across: 0.8 }, aside: 0 },
  oblique: { inner: { along: 0.76, across: 0.6 }, outer: { along: 0.5, across: 0.66 }, aside: 0.14 },
};
const HEEL: Fullness = { along: 0.6, across: 0.62 };

/** Plain proportions of a last's bottom, common practice of the trade; widths and joints are the client's own. */
const SHAPE = { heelWidest: 0.155, innerWaist: 0.42, outerWaist: 0.4, innerWaistHalf: 0.31, outerWaistHalf: 0.43, innerShare: 0.49 };

/** How near the arcs keep to the curves they are drawn from: no pencil shows it, and the arcs are the outline from here on. */
const QUARTER_GAP: Mm = 0.02;

/** A quarter of the outline between a place where it runs along the foot and one where it runs across. */
function quarter(from: Point, handleFrom: Point, handleTo: Point, to: Point): Path {
  const curve = (t: number): Point => {
    const s = 1 - t, at = (i: 0 | 1): number => s * s * s * from[i] + 3 * s * s * t * handleFrom[i] + 3 * s * t * t * handleTo[i] + t * t * t * to[i];
    return [at(0), at(1)];
  };
  return fitArcs(curve, [0, 0.5, 1], QUARTER_GAP);
}

interface RoundEnd { readonly side: Point; readonly handleSide: Point; readonly handleEnd: Point; readonly end: Point }

/** From a place on the side, running forward, round to a place on the long axis, running to the outer side; or the reverse. */
function roundEnd(side: Point, end: Point, { along, across }: Fullness): RoundEnd {
  return { side, end, handleSide: [side[0] + along * (end[0] - side[0]), side[1]], handleEnd: [end[0], end[1] + across * (side[1] - end[1])] };
}

/** Direction of the circle through three neighbours, at the middle one: it keeps a row of arcs fair. */
function circleHeading(before: Point, at: Point, after: Point): Point {
  const a = subtract(at, before), b = subtract(after, at);
  return unit(add(scale(a, dot(b, b)), scale(b, dot(a, a))));
}

/** Heel to ball (or ball to heel) through the waist: two biarcs, running along the foot at both ends. */
function throughWaist(from: Point, waist: Point, to: Point): Path {
  const heading: Point = [Math.sign(to[0] - from[0]), 0], middle = circleHeading(from, waist, to);
  return [...biarc(from, heading, waist, middle), ...biarc(waist, middle, to, heading)];
}

/**
 * The feather line of a parametric last: a closed chain of tangent arcs, counter-clockwise from the heel back
 * along the inner side. Its length, ball width and heel width are exact.
 */
export function featherLine(last: Last): Path {
  const known = drawn.get(last), feather = known ?? ofPlan(planMeasures(last));
  if (!known) drawn.set(last, feather);
  return feather;
}

/** Trying other arcs over the same last does not draw it again, nor does another pitch or spring. */
const drawn = new WeakMap<Last, Path>();

/** All of a last that its lines in plan hang on. */
type PlanMeasures = Pick<Last, 'length' | 'ballWidth' | 'heelWidth' | 'innerBall' | 'outerBall' | 'inflare' | 'toeShape' | 'seatLength' | 'tread'>;
const planMeasures = ({ length, ballWidth, heelWidth, innerBall, outerBall, inflare, toeShape, seatLength, tread }: Last): PlanMeasures =>
  ({ length, ballWidth, heelWidth, innerBall, outerBall, inflare, toeShape, seatLength, tread });
const ofPlan = lately(4, drawFeather);

/** The forepart swings to the inner side (-y) ahead of the waist: by this share of the inflare. */
const foreShare = ({ length }: PlanMeasures, x: Mm): number => smoothStep((x - 0.4 * length) / (0.6 * length));
const tipAside = (last: PlanMeasures): Mm => -last.inflare - TOES[last.toeShape].aside * last.ballWidth;

/** Middle of the outline, near enough: from the heel along the long axis, swinging over to the tip itself; never outside it. */
export const middleY = (last: Last, x: Mm): Mm => tipAside(last) * foreShare(last, x);

/** The tip of the outline; it seldom lies on the long axis. */
export const tipOf = (last: PlanMeasures): Point => [last.length, tipAside(last)];

function drawFeather(last: PlanMeasures): Path {
  const { length: L, ballWidth: W, heelWidth, innerBall, outerBall, inflare } = last, toe = TOES[last.toeShape];
  const swing = (x: Mm): Mm => -inflare * foreShare(last, x);
  const ballSwing = swing((innerBall + outerBall) / 2), waistHalf = (half: number): Mm => Math.min(half * W, (heelWidth + W) / 4);
  const back: Point = [0, 0], tip = tipOf(last), heelX = SHAPE.heelWidest * L;
  const innerHeel: Point = [heelX, -heelWidth / 2], outerHeel: Point = [heelX, heelWidth / 2];
  const innerJoint: Point = [innerBall, ballSwing - W * SHAPE.innerShare], outerJoint: Point = [outerBall, ballSwing + W * (1 - SHAPE.innerShare)];
  const ahead = (end: RoundEnd): Path => quarter(end.side, end.handleSide, end.handleEnd, end.end);
  const behind = (end: RoundEnd): Path => quarter(end.end, end.handleEnd, end.handleSide, end.side);
  return [
    ...behind(roundEnd(innerHeel, back, HEEL)),
    ...throughWaist(innerHeel, [SHAPE.innerWaist * L, -waistHalf(SHAPE.innerWaistHalf)], innerJoint),
    ...ahead(roundEnd(innerJoint, tip, toe.inner)),
    ...behind(roundEnd(outerJoint, tip, toe.outer)),
    ...throughWaist(outerJoint, [SHAPE.outerWaist * L, waistHalf(SHAPE.outerWaistHalf)], outerHeel),
    ...ahead(roundEnd(outerHeel, back, HEEL)),
  ];
}

/** Width of the edge outside the feather line at a place x: level at the heel, then evenly to the ball and on to the tip. */
function edgeAt({ heel, ball, toe }: EdgeBeyond, last: Last, x: Mm): Mm {
  const seat = last.seatLength;
  if (x <= last.tread) return heel + (ball - heel) * smoothStep((x - seat) / (last.tread - seat));
  return ball + (toe - ball) * smoothStep(clamp((x - last.tread) / (last.length - last.tread), 0, 1));
}

/** How near the edge line's arcs keep to the asked distance from the feather line, and how many stretches they start from. */
const EDGE_GAP: Mm = 0.01, STRETCHES = 12;

/** The sole's edge in plan: the feather line set out by the edge. Exact arcs when the edge is even all round. */
export function edgeLine(feather: Path, last: Last, edge: EdgeBeyond): Path {
  const known = setOutFrom.get(feather);
  if (known && known.edge.heel === edge.heel && known.edge.ball === edge.ball && known.edge.toe === edge.toe) return known.line;
  const line = drawEdge(feather, last, edge);
  setOutFrom.set(feather, { edge, line });
  return line;
}

/** The last edge drawn round each feather line. */
const setOutFrom = new WeakMap<Path, { readonly edge: EdgeBeyond; readonly line: Path }>();

function drawEdge(feather: Path, last: Last, edge: EdgeBeyond): Path {
  if (edge.heel === edge.ball && edge.ball === edge.toe) return edge.heel === 0 ? feather : offsetRight(feather, edge.heel);
  const setOut = (w: number): Point => {
    const at = pointAlong(feather, w), outward = scale(turnLeft(directionAlong(feather, w)), -1);
    return add(at, scale(outward, edgeAt(edge, last, at[0])));
  };
  return fitArcs(setOut, Array.from({ length: STRETCHES + 1 }, (_, i) => (i * feather.length) / STRETCHES), EDGE_GAP);
}
