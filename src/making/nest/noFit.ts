import { area, FillRule, union, type Path64, type Paths64, type Point64 } from 'clipper2-ts';
import { cos, sin } from '../../geometry/trig.ts';

/**
 * Sums of polygons by the convolution of their outlines: each edge of one is walked at those corners of the other that
 * turn through its direction. Whole numbers throughout, so every judgement is exact. A place lies in the sum where the
 * loops go round it at least once.
 * Source: L. Guibas, L. Ramshaw, J. Stolfi, A kinetic framework for computational geometry (1983); its use for sums as in
 * R. Wein, Exact and efficient construction of planar Minkowski sums using the convolution method (2006); from memory.
 */
export function sumLoops(a: Path64, b: Path64): Paths64 {
  const steps = new Map<number, number[]>(), place = (i: number, j: number): number => (i % a.length) * b.length + (j % b.length);
  const step = (from: number, to: number): void => {
    const known = steps.get(from);
    if (known) known.push(to);
    else steps.set(from, [to]);
  };
  const [waysA, waysB] = [waysOf(a), waysOf(b)];
  eachTurn(waysA, waysB, false, (i, j, back) => (back ? step(place(i, j + 1), place(i, j)) : step(place(i, j), place(i, j + 1))));
  eachTurn(waysB, waysA, true, (j, i, back) => (back ? step(place(i + 1, j), place(i, j)) : step(place(i, j), place(i + 1, j))));
  const at = (index: number): Point64 => sumOf(a[Math.floor(index / b.length)]!, b[index % b.length]!);
  return loopsOf(steps).map((loop) => loop.map(at));
}

const sumOf = (p: Point64, q: Point64): Point64 => ({ x: p.x + q.x, y: p.y + q.y });
const waysOf = (polygon: Path64): Point64[] => polygon.map(({ x, y }, i) => {
  const next = polygon[(i + 1) % polygon.length]!;
  return { x: next.x - x, y: next.y - y };
});
const across = (a: Point64, b: Point64): number => a.x * b.y - a.y * b.x;

/**
 * Every corner with every edge of the other polygon whose direction it turns through. A hollow corner turns the other way,
 * and the edge is walked back there.
 * @param ahead edges that run alike are met once, as if those of one polygon pointed a hair further round: the corners of that one are told so
 */
function eachTurn(corners: readonly Point64[], edges: readonly Point64[], ahead: boolean, found: (corner: number, edge: number, back: boolean) => void): void {
  corners.forEach((to, i) => {
    const from = corners.at(i - 1)!, bend = Math.sign(across(from, to)), least = (bend > 0) === ahead ? 1 : 0, most = 1 - least;
    if (bend === 0) return;
    for (let j = 0; j < edges.length; j++) {
      const edge = edges[j]!;
      if (bend * across(from, edge) >= least && bend * across(edge, to) >= most) found(i, j, bend < 0);
    }
  });
}

/** As many steps leave each place as arrive, so they close into loops. */
function loopsOf(steps: Map<number, number[]>): number[][] {
  const loops: number[][] = [];
  for (const first of steps.keys()) {
    for (let next = steps.get(first)!.pop(); next !== undefined; next = steps.get(first)!.pop()) {
      const loop = [first];
      while (next !== first) { loop.push(next!); next = steps.get(next!)!.pop(); }
      loops.push(loop);
    }
  }
  return loops;
}

const SIDES = 24;

/** A polygon set out all round by at least a distance, in whole thousandths; hollows that close up are filled. */
export function grown(polygon: Path64, by: number): Path64 {
  const far = by / cos(Math.PI / SIDES), disc = Array.from({ length: SIDES }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.5)) / SIDES;
    return { x: Math.round(far * cos(angle)), y: Math.round(far * sin(angle)) };
  });
  return largest(union(sumLoops(polygon, disc), FillRule.NonZero));
}

/** The loop that goes round all others. */
export const largest = (loops: Paths64): Path64 => loops.reduce((most, loop) => (area(loop) > area(most) ? loop : most));

/** The polygon seen from the other side of the origin. */
export const opposite = (polygon: Path64): Path64 => polygon.map(({ x, y }) => ({ x: -x, y: -y }));
