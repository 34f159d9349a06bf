import { pointAlong, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { rootBetween } from '../../geometry/solve.ts';
import type { Mm } from '../../geometry/units.ts';
import { rounded } from '../../checks/say.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart, PartLetters, PartMark } from '../flatPart.ts';
import { LETTER, lettersWithin, linesInRows, linesOver, roughWidth, ROW, widthOf } from './lettering.ts';
import { polygon } from './polygon.ts';

/** How near heel and ball heights are kept. Common practice of the trade: a millimetre either way. */
export const HEIGHT_WITHIN: Mm = 1;
/** Heights of the two sides nearer than this share one column: no hand tells them apart. */
const ALIKE: Mm = 0.05;

/** A height on the outside of the finished shoe: floor to the upper edge of the sole, where the upper begins. @property place as it is lettered, like `edge at ball, inner` */
export interface EdgeHeight { readonly place: string; readonly height: Mm }

/** At the centre of the seat, at the ball and at the tip; told for both sides where a dished bottom makes them differ. */
export function edgeHeights({ last, edge, upper, build }: SoleShape): EdgeHeight[] {
  const at = ([x, y]: Point): Mm => upper(x, y) + build;
  const sides = (place: string, x: Mm): EdgeHeight[] => {
    const [inner, outer] = [at(onEdge(edge, x, -1)), at(onEdge(edge, x, 1))];
    return Math.abs(inner - outer) <= ALIKE ? [{ place, height: (inner + outer) / 2 }]
      : [{ place: `${place}, inner`, height: inner }, { place: `${place}, outer`, height: outer }];
  };
  return [...sides('edge at seat', last.seatLength / 2), ...sides('edge at ball', last.tread), { place: 'edge at tip', height: at(foremost(edge)) }];
}

const LOOKS = 16;
const placesRound = (edge: Path): number[] => Array.from({ length: edge.length * LOOKS }, (_, i) => i / LOOKS);

/** The point of the edge beside a place x, on the inner (-1) or the outer side. */
function onEdge(edge: Path, x: Mm, sign: 1 | -1): Point {
  const ahead = (w: number): Mm => pointAlong(edge, w)[0] - x;
  const w = placesRound(edge).find((from) => ahead(from) < 0 !== ahead(from + 1 / LOOKS) < 0 && pointAlong(edge, from)[1] * sign > 0);
  if (w === undefined) throw new RangeError(`the edge must run on both sides of the long axis ${x} mm from the heel`);
  return pointAlong(edge, rootBetween(ahead, w, w + 1 / LOOKS));
}

const foremost = (edge: Path): Point => placesRound(edge).map((w) => pointAlong(edge, w)).reduce((best, at) => (at[0] > best[0] ? at : best));

/** Width of a step. */
const HALF: Mm = 15;

/**
 * A step gauge that stands on its lower edge beside the shoe: for each height a pair of steps, a millimetre lower and a
 * millimetre higher than planned. The sole's upper edge must stand above the low one and not above the high one.
 * @param estimated whether the heights rest on an estimate, which is lettered
 */
export function heightGauge(name: string, heights: readonly EdgeHeight[], estimated: boolean): FlatPart {
  const first = heights[0]!.height, inColumn = lettersWithin(name, 2 * HALF - 2), fits = lettersTop(first) - rowsFor(heights[0]!, estimated).length * ROW > inColumn.length * ROW + 1 && widthOf(inColumn) <= 2 * HALF - 2;
  const lines = fits ? inColumn : linesInRows(name, Math.max(1, Math.floor((lettersTop(first) - FOOT) / ROW))), left = fits ? 0 : -(widthOf(lines) + 2 * FOOT);
  const columns = heights.map((one, i): Column => ({ ...one, left: 2 * HALF * i })), width = 2 * HALF * heights.length;
  const steps = [...columns].reverse().flatMap(({ left, height: z }): Point[] => [
    [left + 2 * HALF, z + HEIGHT_WITHIN], [left + HALF, z + HEIGHT_WITHIN], [left + HALF, z - HEIGHT_WITHIN], [left, z - HEIGHT_WITHIN],
  ]);
  return {
    name, outline: polygon([[left, 0], [width, 0], ...steps, ...(fits ? [] : [[left, first - HEIGHT_WITHIN] as const])]), holes: [], marks: columns.map(planned),
    letters: [...columns.flatMap((column) => labelsIn(column, estimated)), ...linesOver(lines, [left + FOOT, FOOT])],
  };
}

/** The corner between two steps of one height is so high; a cutter thicker than that leaves it round. */
export const CORNER: Mm = 2 * HEIGHT_WITHIN;

/** How far from the high step the low one is level, where a cutter of a diameter leaves the corner round: it rests on the low step and against the high one, or on its edge. */
export function roundReaches(cutter: Mm): Mm {
  const radius = cutter / 2;
  return radius <= CORNER ? radius : Math.sqrt(radius ** 2 - (radius - CORNER) ** 2);
}

interface Column extends EdgeHeight { readonly left: Mm }

/** The planned height, scribed across the higher step. */
const planned = ({ left, height }: Column): PartMark =>
  ({ of: 'HEIGHTS', path: [{ kind: 'line', from: [left + HALF, height], to: [left + 2 * HALF, height] }] });

const valueOf = (height: Mm, estimated: boolean): string => `${rounded(height, 1)}${estimated ? ' est.' : ''}`;

/** What is measured and how high it is to be, in rows that a column takes. */
const rowsFor = ({ place, height }: EdgeHeight, estimated: boolean): string[] => [...lettersWithin(place, 2 * HALF), `${valueOf(height, estimated)} ±${HEIGHT_WITHIN}`];

/** The rows under the lower step; on one line, in as few words as can be, or none, where the step is low. */
function labelsIn({ place, height, left }: Column, estimated: boolean): PartLetters[] {
  const top = lettersTop(height), rows = rowsFor({ place, height }, estimated);
  const lines = top >= LETTER + (rows.length - 1) * ROW ? rows : top >= LETTER ? [`${place.replace(/^edge at (\w+)/, '$1 edge')} ${valueOf(height, estimated)}`] : [];
  return lines.map((text, i) => {
    const size = Math.min(LETTER, (2 * HALF) / roughWidth(text, 1));
    return { text, at: [left + HALF - roughWidth(text, size) / 2, top - LETTER - i * ROW], size };
  });
}

const lettersTop = (height: Mm): Mm => height - HEIGHT_WITHIN - 1;

/** From the edges of the board to the name: at the foot of the first column, or behind it where that is too low for it. */
const FOOT: Mm = 1.5;
