import { pointOn, reversed, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FlatPart, PartLetters } from '../flatPart.ts';
import { roughWidth } from '../gauges/lettering.ts';

/**
 * A part seen from the side, between two faces. @property from where along the walking line both faces are there  @property low
 * height of the lower face at a way along it
 */
export interface Faces { readonly lower: Path; readonly upper: Path; readonly from: Mm; readonly to: Mm; readonly low: (along: Mm) => Mm; readonly high: (along: Mm) => Mm }

const endsOf = (path: Path): readonly [Point, Point] => [pointOn(path[0]!, 0), pointOn(path.at(-1)!, 1)];

/** Counter-clockwise: along the lower path, up, back along the upper one, down. */
export function closedBetween({ lower, upper }: Faces): Path {
  const [a, b] = endsOf(lower), [c, d] = endsOf(upper);
  return [...lower, { kind: 'line', from: b, to: d }, ...reversed(upper), { kind: 'line', from: c, to: a }];
}

/** Letters of the usual size, on the part and beside it; what stays between them and a line that is cut; what a short name fills of the thickness, and what can still be read. */
const USUAL: Mm = 3, CLEAR: Mm = 1, SHARE = 0.6, READ: Mm = 1.5;

/**
 * Words on the part where it is thick enough for them, else on the board over it, where the hollow of its upper face leaves
 * room; a short name then stands on the part too, at its thickest.
 * @param near the place the words are wanted at, along the walking line
 * @param short what stands on a part too thin for the words: the first that can be read there, or else the last
 */
export function letteredPart(faces: Faces, near: Mm, text: string, short: readonly string[] = []): Pick<FlatPart, 'letters' | 'around'> {
  const at = roomiest(faces, roughWidth(text));
  if (at && at.room >= USUAL + 2 * CLEAR) return { letters: [written(text, at, USUAL)] };
  const beside = writtenAbove(faces, near, text);
  return { letters: [beside, ...shortOn(faces, short)], around: roundBoth(faces, beside) };
}

/** A level strip across the part: its middle, and how high it is. */
interface Strip { readonly along: Mm; readonly middle: Mm; readonly room: Mm }

/** Places looked at along a part, and along a word: faces are arcs, which a few places tell. */
const STEP: Mm = 2, LOOKS = 8;
const across = (along: Mm, width: Mm): Mm[] => Array.from({ length: LOOKS + 1 }, (_, i) => along + (i / LOOKS - 0.5) * width);

/** Where a level strip of a width has most room between both faces; none where the part is shorter. */
function roomiest({ from, to, low, high }: Faces, width: Mm): Strip | undefined {
  const first = from + width / 2 + CLEAR, count = Math.floor((to - width / 2 - CLEAR - first) / STEP) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i): Strip => {
    const along = first + i * STEP, places = across(along, width), under = Math.max(...places.map(low)), over = Math.min(...places.map(high));
    return { along, middle: (under + over) / 2, room: over - under };
  }).reduce<Strip | undefined>((best, one) => (!best || one.room > best.room ? one : best), undefined);
}

const written = (text: string, { along, middle }: Strip, size: Mm): PartLetters => ({ text, at: [along - roughWidth(text, size) / 2, middle - size / 2], size });

function shortOn(faces: Faces, names: readonly string[]): PartLetters[] {
  const fits = names.flatMap((name) => {
    const at = roomiest(faces, roughWidth(name));
    return at && at.room > 0 ? [written(name, at, Math.min(USUAL, at.room * SHARE))] : [];
  });
  return [fits.find(({ size }) => size >= READ) ?? fits.at(-1) ?? []].flat();
}

function writtenAbove({ high, from, to }: Faces, near: Mm, text: string): PartLetters {
  const width = roughWidth(text), along = Math.max(from + width / 2, Math.min(to - width / 2, near));
  return { text, at: [along - width / 2, Math.max(...across(along, width).map(high)) + CLEAR], size: USUAL };
}

/** The lower face, and straight from end to end over the upper one and over the words: nothing else may lie there. */
function roundBoth({ lower, upper }: Faces, { text, at: [x, y], size }: PartLetters): Path {
  const [a, b] = endsOf(lower), [c, d] = endsOf(upper), right = x + roughWidth(text, size), top = y + size, chord = (along: Mm): Mm => c[1] + ((d[1] - c[1]) * (along - c[0])) / (d[0] - c[0]);
  const words: Point[] = [[right, top], [x, top]], over = words.some(([along, z]) => z > chord(along)) ? words : [], corners: Point[] = [b, d, ...over, c, a];
  return [...lower, ...corners.slice(1).map((to, i) => ({ kind: 'line' as const, from: corners[i]!, to }))];
}
