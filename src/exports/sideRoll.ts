import type { FigureKey } from '../checks/figures.ts';
import { pointOn, type PathArc } from '../geometry/path.ts';
import { add, scale, subtract, unit, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { cos, sin } from '../geometry/trig.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { jointsOf } from '../profile/groundFace.ts';
import { circle, drawn, filled, HANGS, polyline, roomFor, stroke, words, type Mark, type Words } from './drawing.ts';
import { rounded } from '../checks/say.ts';
import { rowsOf, type Place, type Segment, type Wish } from './labels.ts';
import { bare } from './numbers.ts';
import { highest, ofFigure, onSheet, part, together, upperAt, type Part, type Picture } from './picture.ts';

/** What the roll is built on: joints, radii, centres, ankle pivot, hip line, and what sets the height. */
export const sideRoll = (picture: Picture, shoe: RockerShoe): Part =>
  together([joints(picture, shoe), radii(picture, shoe), pivotAndHip(picture, shoe), otherCentres(picture, shoe), flag(picture)]);

/** Where a drawing is small: neither the hip nor the centres that lie far above. */
export const rollInShort = (picture: Picture, shoe: RockerShoe): Part => together([joints(picture, shoe), radii(picture, shoe), pivotAlone(picture, shoe), flag(picture)]);

const TICK: Mm = 1.6;
/** Arcs are told apart by small ticks square to the face where they join. */
function joints(picture: Picture, { shape: { face } }: RockerShoe): Part {
  const { profile: { ground } } = picture, [from] = pointOn(ground[0]!, 0), [to] = pointOn(ground.at(-1)!, 1);
  return part({
    shapes: jointsOf(face).filter(([x]) => x > from && x < to).map((joint) => {
      const piece = ground.find((one) => pointOn(one, 1)[0] >= joint[0] - 1e-6)!, angle = piece.kind === 'arc' ? piece.start + piece.sweep : -Math.PI / 2;
      const out: Point = [cos(angle), -sin(angle)], on = onSheet(picture, joint);
      return stroke(add(on, scale(out, -TICK)), add(on, scale(out, 1.4 * TICK)), 'thin', 'ink');
    }),
  });
}

const RADII = { 'heel arc': 'radiusHeel', 'mid arc': 'radiusMid', 'toe arc': 'radiusToe' } as const satisfies Record<string, FigureKey>;

/** A leader from each arc's centre side, its arrow on the face it measures. The two halves of the mid arc share one. */
function radii(picture: Picture, { shape: { face } }: RockerShoe): Part {
  const { profile: { ground }, book } = picture, arcs = ground.filter((piece): piece is PathArc => piece.kind === 'arc');
  return together(Object.entries(RADII).map(([name, key]) => {
    const radius = face.pieces.flatMap((piece) => piece.kind === 'arc' && piece.name.startsWith(name) ? [piece.radius] : [])[0], figure = book(key);
    const [longest] = arcs.filter((arc) => arc.radius === radius).sort((a, b) => b.sweep - a.sweep);
    if (!longest || !figure) return part({});
    const label = words(`R ${bare(figure)} ${name}`, [0, 0], { anchor: 'middle', ink: 'computed' });
    return ofFigure(picture, key, part({ wishes: [radial(picture, longest, label)] }));
  }));
}

/** Places on lines from the face towards the centre of an arc, above the sole. */
function radial(picture: Picture, arc: PathArc, label: Words): Wish {
  const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.9, 0.1];
  const places = rowsOf(30, (step) => shares.map((share): Place => {
    const on = onSheet(picture, pointOn(arc, share)), inward = unit(subtract(onSheet(picture, arc.centre), on));
    const reach = Math.max(on[1] - highest(picture, on[0] - 3, on[0] + 3), 0) + 10 + step * 2.2, foot = add(on, scale(inward, reach));
    return { at: [foot[0], foot[1] - HANGS * label.size - 0.5], leader: [foot, on] };
  }));
  return { label, places, arrow: true };
}

/** Places to the right and the left of a point, step by step away from it. */
function besides([x, y]: Point, text: string, steps: readonly Mm[]): Place[] {
  const width = roomFor(text);
  return steps.flatMap((step): Place[] => [{ at: [x + 1.6, y + step] }, { at: [x - 1.6 - width, y + step] }]);
}
const AROUND = [-1.6, 4.2, -5, 8, -8.4, 12, -12, 16];

/** Centre lines through the ankle pivot, down to the ground. */
function pivotAlone(picture: Picture, { rocker: { pivot } }: RockerShoe): Part {
  const on = onSheet(picture, pivot), lines = pivotLines(on, picture.view.zero[1] + 2.5), text = `ankle pivot ${bare(picture.book('pivotHeight')!)} up`;
  return ofFigure(picture, 'pivotHeight', part({
    shapes: [...lines.map(([a, b]) => stroke(a, b, 'centre', 'computed')), drawn(circle(on, 1.1), 'thin', 'computed')],
    wishes: [{ label: words(text, on, { ink: 'computed' }), places: besides(on, text, AROUND) }], lines, boxes: [{ left: on[0] - 1.5, right: on[0] + 1.5, top: on[1] - 1.5, bottom: on[1] + 1.5 }],
  }));
}

const pivotLines = ([x, y]: Point, foot: Mm): Segment[] => [[[x, y - 8], [x, foot]], [[x - 8, y], [x + 8, y]]];

/** Centre lines through the ankle pivot, and the line up to the hip, broken where the paper ends. */
function pivotAndHip(picture: Picture, { rocker: { pivot, hip, heelArc } }: RockerShoe): Part {
  const { view, book, top } = picture, on = onSheet(picture, pivot), [hipX, hipY] = onSheet(picture, hip), foot = view.zero[1] + 2.5;
  const broken = hipY < top, hipTop = broken ? top : hipY - 4;
  const lines: Segment[] = [...pivotLines(on, foot), [[hipX, hipTop], [hipX, foot]]];
  const pivotText = `ankle pivot ${bare(book('pivotHeight')!)} up${heelArc ? ', centre of the heel arc' : ''}`, hipText = `hip ${bare(book('hipHeight')!)} up`;
  const wish = (text: string, near: Point, steps: readonly Mm[]): Wish => ({ label: words(text, near, { ink: 'computed' }), places: besides(near, text, steps) });
  return part({
    shapes: [...lines.map(([a, b]) => stroke(a, b, 'centre', 'computed')), drawn(circle(on, 1.1), 'thin', 'computed'), ...(broken ? breakMark([hipX, hipTop + 4]) : [])],
    wishes: [wish(pivotText, on, AROUND), wish(hipText, [hipX, hipTop + 10], AROUND.map((step) => step + 8))],
    lines, boxes: broken ? [{ left: hipX - 2.4, right: hipX + 2.4, top: hipTop + 3, bottom: hipTop + 6 }] : [],
  });
}

/** Two slanting strokes: the line goes on further than the paper. */
const breakMark = ([x, y]: Point): Mark[] => [
  filled(polyline([[x - 2.4, y + 0.7], [x + 2.4, y - 1], [x + 2.4, y + 0.3], [x - 2.4, y + 2]], true), 'sheet'),
  stroke([x - 2.4, y + 0.7], [x + 2.4, y - 1], 'thin', 'computed'), stroke([x - 2.4, y + 2], [x + 2.4, y + 0.3], 'thin', 'computed'),
];

/** A cross at the centre of toe and mid arc, where it is on the paper; else where it would be, in mm from the heel and above the ground. */
function otherCentres(picture: Picture, { rocker: { toeArc, mid } }: RockerShoe): Part {
  const halves = mid.frontX > mid.rearX ? [mid.rearX, mid.frontX] : [mid.frontX];
  const points = [['centre of the toe arc', 'radiusToe', toeArc.centre] as const, ...halves.map((x) => ['centre of the mid arc', 'radiusMid', [x, mid.radius]] as const)];
  return together(points.map(([name, radius, point], i) => {
    const [x, y] = onSheet(picture, point), arm = 3;
    if (y < picture.top + arm) return offSheet(picture, `${name}${i === 1 && points.length > 2 ? ', rear half,' : i === 2 ? ', front half,' : ''}`, point, radius);
    const lines: Segment[] = [[[x - arm, y], [x + arm, y]], [[x, y - arm], [x, y + arm]]];
    return part({ shapes: lines.map(([a, b]) => stroke(a, b, 'thin', 'computed')), wishes: [{ label: words(name, [x, y], { ink: 'computed' }), places: besides([x, y], name, AROUND) }], lines });
  }));
}

function offSheet(picture: Picture, name: string, [x, z]: Point, radius: FigureKey): Part {
  const near: Point = [onSheet(picture, [x, z])[0], picture.top], mark = picture.book(radius)?.estimated ? ' est.' : '';
  const label = words(`${name} off the sheet: x ${rounded(x, 1)}, z ${rounded(z, 1)}${mark}`, near, { ink: 'computed' });
  return part({ wishes: [{ label, places: besides(near, label.text, Array.from({ length: 12 }, (_, step) => 4 + step * 4.5)) }] });
}

const FLAG_EDGE: Mm = 0.9;
/** A small flag on the place that keeps the shoe from being lower. */
function flag(picture: Picture): Part {
  const figure = picture.book('governs')!, foot = onSheet(picture, upperAt(picture, figure.at ?? 0)), text = `${figure.label} ${bare(figure)}`;
  const label = words(text, foot, { bold: true, ink: 'governs', anchor: 'middle' }), width = roomFor(text, label);
  const places = rowsOf(30, (step) => [0.5, 0, -0.5].map((share): Place => {
    const base = Math.min(foot[1], highest(picture, foot[0] - 2, foot[0] + 2)) - 16 - step * 2;
    return { at: [foot[0] + share * width, base - HANGS * label.size - 1], leader: [[foot[0], base], foot] };
  }));
  return part({ wishes: [{ label, places, frame: FLAG_EDGE }] });
}
