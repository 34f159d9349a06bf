import { between, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { rowsOf, type Body } from '../../solid/body.ts';
import { sweptSurface } from '../../solid/soleShape.ts';
import type { Outline } from '../mould/outline.ts';

/** A sole cut across: from its inner to its outer wall, at the narrower of both faces. */
export interface Section { readonly x: Mm; readonly inner: Mm; readonly outer: Mm }

/** Outlines need not be finer than this to be cut or laid on a bed. */
const OUTLINE_GAP: Mm = 0.2;

/** Both faces of a body in plan, counter-clockwise. */
export function facesInPlan(body: Body): readonly [upper: Outline, lower: Outline] {
  const rows = rowsOf(body, OUTLINE_GAP);
  const round = (level: 'top' | 'bottom'): Point[] => [...rows.map(({ inner }) => inner[level]), ...rows.map(({ outer }) => outer[level]).reverse()].map(([x, y]) => [x, y]);
  return [round('top'), round('bottom')];
}

export function sectionAt(faces: readonly Outline[], x: Mm): Section {
  const spans = faces.map((face) => crossings(face, x));
  return { x, inner: Math.max(...spans.map((ys) => Math.min(...ys))), outer: Math.min(...spans.map((ys) => Math.max(...ys))) };
}

const crossings = (outline: Outline, x: Mm): Mm[] => outline.flatMap((to, i) => {
  const from = outline.at(i - 1)!;
  return from[0] > x === to[0] > x ? [] : [between(from, to, (x - from[0]) / (to[0] - from[0]))[1]];
});

const width = ({ inner, outer }: Section): Mm => outer - inner;

/** Shares of the way from the end of the seat to the nearer toe joint between which a sole is parted: both parts are worth a bed. */
const WAIST = [0.25, 0.65] as const;

/** The narrowest place of the waist, on a whole millimetre. */
export function waistOf({ shape: { last } }: Body, faces: readonly Outline[]): Section {
  const ball = Math.min(last.innerBall, last.outerBall), [from, to] = WAIST.map((share) => Math.round(last.seatLength + (ball - last.seatLength) * share)) as [Mm, Mm];
  const sections = Array.from({ length: Math.max(1, to - from + 1) }, (_, i) => sectionAt(faces, from + i));
  return sections.reduce((best, section) => (width(section) < width(best) ? section : best));
}

/** How high a bore may run across a body between two places along it, so that it stays inside on its whole way. */
export function roomAcross(body: Body, faces: readonly Outline[], from: Mm, to: Mm): { readonly low: Mm; readonly high: Mm } {
  const lower = sweptSurface(body.lower, body.shape.line), heights = [from, (from + to) / 2, to].flatMap((x) => {
    const { inner, outer } = sectionAt(faces, x);
    return Array.from({ length: ACROSS + 1 }, (_, i): Point => [x, inner + ((outer - inner) * i) / ACROSS]);
  });
  return { low: Math.max(...heights.map(([x, y]) => lower(x, y))), high: Math.min(...heights.map(([x, y]) => body.upper(x, y))) };
}
/** Places looked at on the way across. */
const ACROSS = 12;
