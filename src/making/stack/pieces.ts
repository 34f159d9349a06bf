import { Clipper64, ClipType, EndType, FillRule, inflatePaths, JoinType, PathType, type Path64, type Paths64 } from 'clipper2-ts';
import type { Side } from '../../fitting/words.ts';
import { mirroredPath, pathLength, pointAlong, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import { planPoint } from '../../profile/rollLine.ts';
import type { FlatPart, PartLetters, PartMark } from '../flatPart.ts';
import { PER_MM } from '../nest/outline.ts';
import { arcsRoundRing, arcsThrough } from './arcsAlong.ts';
import { flatLoops, sizeOf, type Cover } from './blanks.ts';
import type { PlannedLayer } from './plan.ts';

/** How far the arcs of an outline may pass the points of its line: less than blanks are larger than they must be. */
const GAP: Mm = 0.05;

/** What is cut for one layer, on its own side, upper side up. @property place where it lies along the shoe, in a word; empty where it runs on from heel to forepart */
export interface Blank { readonly part: FlatPart; readonly place: Place; readonly size: readonly [length: Mm, width: Mm] }

/** @property next layers that come under this one  @property label lettering, without the place: job and side, which of how many and the sheet */
export interface Asked { readonly layer: PlannedLayer; readonly next: readonly PlannedLayer[]; readonly label: readonly [string, string] }

export const blanksOf = (shoe: Shoe, parts: SoleParts, cover: Cover, asked: Asked): Blank[] => {
  const { layer, next } = asked, depth = layer.bottom - layer.sheet.thickness / 2;
  const loops = (of: PlannedLayer): Paths64 => flatLoops(cover.face, cover.loops(of.zone, of.reach, of.bottom - of.reach), depth);
  const lines = markLines(shoe, parts, cover, depth), edges = next.flatMap(loops);
  return loops(layer).map((loop): Blank => {
    const place = placeOf(loop, shoe.last.length), name = [asked.label[0], ...(place ? [place] : []), asked.label[1]].join(' ');
    const turn = (path: Path): Path => (shoe.side === 'left' ? path : mirroredPath(path));
    const marks = [...lines.flatMap(({ of, points }) => markOf(of, [points], [loop])), ...drawnOnce(markOf('NEXT_EDGE', edges.map((edge) => [...edge, edge[0]!].map(inMm)), inside(loop)).filter(({ path }) => pathLength(path) >= SHORTEST))];
    return {
      place, size: sizeOf(loop),
      part: {
        name, outline: turn(arcsRoundRing(loop.map(inMm), GAP)), holes: [],
        marks: marks.map(({ of, path }) => ({ of, path: turn(path) })), letters: lettersIn(loop, shoe.side, name),
      },
    };
  });
};

const inMm = ({ x, y }: { readonly x: number; readonly y: number }): Point => [x / PER_MM, y / PER_MM];
const whole = ([x, y]: Point) => ({ x: Math.round(x * PER_MM), y: Math.round(y * PER_MM) });

type Place = 'heel' | 'waist' | 'forepart' | '';

/** Where a piece lies that is much shorter than the sole; nothing for one that runs on from heel to forepart. */
function placeOf(loop: Path64, last: Mm): Place {
  const xs = loop.map(({ x }) => x / PER_MM / last), from = Math.min(...xs), to = Math.max(...xs);
  return to < 0.55 ? 'heel' : from > 0.5 ? 'forepart' : from > 0.2 && to < 0.8 ? 'waist' : '';
}

interface MarkLine { readonly of: string; readonly points: readonly Point[] }

/** Longer than any sole is wide, and than it is long. */
const FAR: Mm = 500;

/** Lines by which layers are laid over each other, as they run on a layer at a depth. */
function markLines({ kind, last }: Shoe, { shape }: SoleParts, { face }: Cover, depth: Mm): MarkLine[] {
  const laid = ([x, y]: Point): Point => [face.flat(face.along(x), depth), y];
  const apex = kind === 'rocker' ? [{ of: 'APEX_LINE', points: [-60, 60].map((across) => laid(planPoint(shape.line, shape.line.apexX, across))) }] : [];
  return [
    { of: 'CENTRE_LINE', points: [[-FAR, 0], [FAR, 0]] },
    { of: 'BALL_LINE', points: [onFeather(shape.feather, last.innerBall, -1), onFeather(shape.feather, last.outerBall, 1)].map(laid) }, ...apex,
  ];
}

/** The point of the feather line over an x, on the inner (-1) or the outer side; as near as a line to lay layers by needs. */
function onFeather(feather: Path, x: Mm, side: 1 | -1): Point {
  const points = Array.from({ length: feather.length * 16 }, (_, i) => pointAlong(feather, i / 16)).filter(([, y]) => y * side > 0);
  return points.reduce((best, point) => (Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best));
}

/** Only what runs clear of a piece's own edge is marked, for there the layers end together; and no mere dash of it. */
const CLEAR: Mm = 2, SHORTEST: Mm = 10;
const inside = (loop: Path64): Paths64 => inflatePaths([loop], -CLEAR * PER_MM, JoinType.Miter, EndType.Polygon);

/** The stretches of lines that lie within loops. */
function markOf(of: string, lines: readonly (readonly Point[])[], loops: Paths64): PartMark[] {
  const clipper = new Clipper64(), closed: Paths64 = [], open: Paths64 = [];
  clipper.addOpenSubject(lines.map((line) => line.map(whole)));
  clipper.addPaths(loops, PathType.Clip);
  clipper.execute(ClipType.Intersection, FillRule.NonZero, closed, open);
  return open.filter((line) => line.length > 1).map((line) => ({ of, path: arcsThrough(line.map(inMm), GAP) }));
}

/** Two layers that part on a line across end on it both, and it is marked once. */
function drawnOnce(marks: readonly PartMark[]): PartMark[] {
  const seen = new Set<string>();
  return marks.flatMap(({ of, path }) => {
    const left = path.filter((piece) => {
      const key = piece.kind === 'line' ? [piece.from, piece.to].map((at) => at.map((value) => value.toFixed(3)).join(' ')).toSorted().join(' ') : '', isNew = key === '' || !seen.has(key);
      seen.add(key);
      return isNew;
    });
    return left.length > 0 ? [{ of, path: left }] : [];
  });
}

/** Height of lettering, the least that can be read, room left round it, and how wide a letter runs, as a share of its height. */
const LETTER: Mm = 6, SMALLEST: Mm = 2, ROOM: Mm = 4, WIDE = 0.95;

/** One line on the widest stretch clear of the centre line, as large as goes in; on its own side. */
function lettersIn(loop: Path64, side: Side, text: string): PartLetters[] {
  const ys = loop.map(({ y }) => (side === 'left' ? y : -y) / PER_MM), low = Math.min(...ys), high = Math.max(...ys), middle = (low + high) / 2;
  const base = Math.abs(middle) < (high - low) / 4 ? ROOM / 2 : middle - LETTER / 2;
  const [from, to] = stretchAt(loop, (side === 'left' ? 1 : -1) * (base + LETTER / 2)), size = Math.min(LETTER, (to - from - 2 * ROOM) / (text.length * WIDE), high - base - ROOM / 2);
  return [{ text, at: [from + ROOM, base], size: Math.max(SMALLEST, size) }];
}

/** The longest stretch of a line along the shoe that lies within a loop. */
function stretchAt(loop: Path64, y: Mm): readonly [from: Mm, to: Mm] {
  const cuts = loop.map(inMm).flatMap(([bx, by], i, all) => {
    const [ax, ay] = all.at(i - 1)!;
    return ay > y === by > y ? [] : [ax + ((y - ay) / (by - ay)) * (bx - ax)];
  }).toSorted((a, b) => a - b);
  const stretches = cuts.flatMap((from, i) => (i % 2 === 0 && i + 1 < cuts.length ? [[from, cuts[i + 1]!] as const] : []));
  return stretches.reduce<readonly [Mm, Mm]>((best, one) => (one[1] - one[0] > best[1] - best[0] ? one : best), stretches[0] ?? [loop[0]!.x / PER_MM, loop[0]!.x / PER_MM]);
}
