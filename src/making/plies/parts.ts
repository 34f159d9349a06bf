import type { Side } from '../../fitting/words.ts';
import { windowRound } from '../../geometry/clip.ts';
import { mirroredPath, reversed, type Path, type PathLine } from '../../geometry/path.ts';
import { add, along, scale, type Point } from '../../geometry/point.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { crossings } from '../../geometry/crossings.ts';
import type { FlatPart, PartLetters, PartMark } from '../flatPart.ts';
import { directionWords, waysOf } from '../../stiffener/fibres.ts';
import type { Layer, PlyLayer } from './layers.ts';
import { middleAcross } from './strip.ts';

/** A layer as it is cut, with what it is told apart and laid by, on its own side. */

/** @property lines lettered on it  @property ball x of the joints, across which a strip is laid */
export interface PartOrder { readonly side: Side; readonly of: number; readonly job: string; readonly ball: { readonly inner: Point; readonly outer: Point }; readonly across: readonly LineAcross[] }
/** A line square across the shoe that a pack is proved by: where it meets the long axis as the part is cut. */
export interface LineAcross { readonly of: string; readonly name: string; readonly x: Mm }

const layerName = ({ kind, number }: Layer): string => `${kind} ${number}`;

const LETTER: Mm = 6, LEAST_LETTER: Mm = 2.5, WIDE = 0.62;

/** @param order how it is lettered; the ball line from joint to joint, LEFT shoe */
export function partOf(layer: Layer, order: PartOrder): FlatPart {
  const { side, of, job } = order, own = (path: Path): Path => (side === 'left' ? path : mirroredPath(path)), outline = own(layer.outline), { least, most } = windowRound([outline]);
  const name = `${side} ${layerName(layer)}`, texts = [`${side.toUpperCase()} ${layer.kind} ${layer.number} of ${of}`, layer.kind === 'ply' ? `${directionWords(layer, side)} ${layer.ply.name}` : `${layer.core.name}, up to ${Number(layer.thickest.toFixed(1))} mm`, job];
  return { name, outline, holes: [], marks: [...marksOn(layer, order, outline).map(({ of: what, path }) => ({ of: what, path: what === 'FOLD' ? own(path) : path }))], letters: [...lettersIn(outline, least, most, texts), ...order.across.flatMap((line) => lineLetters(outline, line))] };
}

/** Along the longer way of the part, in its middle. */
function lettersIn(outline: Path, [left, low]: Point, [right, high]: Point, texts: readonly string[]): PartLetters[] {
  const upright = high - low > right - left, room = 0.6 * Math.max(right - left, high - low), deep = Math.min(right - left, high - low) / 5, x = (left + right) / 2, middle: Point = [x, upright ? middleAcross(outline, x) : 0];
  return texts.map((text, i) => {
    const size = Math.max(LEAST_LETTER, Math.min(LETTER, room / (text.length * WIDE), deep) * (i === 0 ? 1 : 0.75)), back = -(text.length * WIDE * size) / 2, down = (0.6 - 1.5 * i) * Math.min(LETTER, deep);
    return { text, at: add(middle, upright ? [-down, back] : [back, down]), size, ...(upright ? { turn: Math.PI / 2 } : {}) };
  });
}

/** Upright on the heel's side of its line, near the lower edge. */
function lineLetters(outline: Path, { name, x }: LineAcross): PartLetters[] {
  const { least, most } = windowRound([outline]), [line] = lineIn(outline, [x, least[1] - 1], [x, most[1] + 1]);
  return line ? [{ text: name, at: [x - 1, line.from[1] + 4], size: LEAST_LETTER, turn: Math.PI / 2 }] : [];
}

/** Long axis, ball line and the lines of the bench test, the ways of the fibres, where edges are turned up and where a core is skived. */
function marksOn(layer: Layer, { side, ball, across: proving }: PartOrder, outline: Path): PartMark[] {
  const { least, most } = windowRound([outline]), sign = side === 'left' ? 1 : -1, turned = ([x, y]: Point): Point => [x, sign * y];
  const across = (x: Mm, of: string): PartMark[] => lineIn(outline, [x, least[1] - 1], [x, most[1] + 1]).map((line) => ({ of, path: [line] }));
  return [
    ...lineIn(outline, [least[0] - 1, 0], [most[0] + 1, 0]).map((line) => ({ of: 'CENTRE_LINE', path: [line] })),
    ...lineIn(outline, turned(ball.inner), turned(ball.outer)).map((line) => ({ of: 'BALL_LINE', path: [line] })),
    ...proving.flatMap(({ of, x }) => across(x, of)),
    ...(layer.kind === 'core' ? layer.skives.flatMap((x) => across(x, 'SKIVE')) : fibreMarks(layer, side, outline).map((path) => ({ of: 'FIBRE', path }))),
    ...(layer.kind === 'ply' && layer.fold ? [{ of: 'FOLD', path: layer.fold }] : []),
  ];
}

/** The part of the straight line through two points that lies in the outline. */
function lineIn(outline: Path, a: Point, b: Point): PathLine[] {
  const across: Point = [a[1] - b[1], b[0] - a[0]], meets = crossings(outline, ([x, y]) => (x - a[0]) * across[0] + (y - a[1]) * across[1]);
  const along1 = ([x, y]: Point): number => (x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1]), [first, ...rest] = [...meets].sort((p, q) => along1(p) - along1(q)), last = rest.at(-1);
  return first && last ? [{ kind: 'line', from: first, to: last }] : [];
}

const ARROW: Mm = 18, HEAD: Mm = 4, SPREAD: Rad = 0.4;

/** An arrow for each way of the fibres, crossed where there are two, off the long axis and a good way from the lettering. */
function fibreMarks(layer: PlyLayer, side: Side, outline: Path): Path[] {
  const { least, most } = windowRound([outline]), size = [most[0] - least[0], most[1] - least[1]] as const, strip = layer.over !== undefined, x = least[0] + size[0] * (strip ? 0.5 : 0.34);
  const length = Math.min(ARROW, 0.4 * Math.min(...size)), y = middleAcross(outline, x) + (strip ? 0.3 * size[1] : length / 2 + 3);
  return waysOf(layer, side).map((way) => arrow([x, y], way, length));
}

export function arrow(middle: Point, way: Rad, length: Mm): Path {
  const tip = add(middle, scale(along(way), length / 2)), tail = add(middle, scale(along(way), -length / 2)), barb = (by: Rad): PathLine => ({ kind: 'line', from: add(tip, scale(along(way + Math.PI + by), Math.min(HEAD, length / 4))), to: tip });
  return [{ kind: 'line', from: tail, to: tip }, ...reversed([barb(SPREAD)]), barb(-SPREAD)];
}
