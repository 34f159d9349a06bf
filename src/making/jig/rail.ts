import { pointOn, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FlatPart, PartLetters, PartMark } from '../flatPart.ts';
import { letterOf } from './letters.ts';
import { titles, type Box } from './railTitle.ts';
import { BELOW_EDGE, lowestUnder, STRINGER, type JigFrame } from './frame.ts';
import { slotFromAbove, slotFromBelow, straights } from './outline.ts';
import { overBench } from './runOn.ts';
import { heightsOf } from '../../profile/groundFace.ts';

/** A place along the shoe that is scribed on the rails. */
export interface Place { readonly of: string; readonly name: string; readonly x: Mm }

/** Upper end of a rib's upright beside a rail, and the height where the slots of rail and rib meet, above the bench. */
export const uprightTop = ({ zero, rails }: JigFrame, x: Mm, thickness: Mm): Mm => zero - lowestUnder(rails, x, thickness) - BELOW_EDGE;
export const lapAt = (frame: JigFrame, x: Mm, thickness: Mm): Mm => (uprightTop(frame, x, thickness) + frame.railFoot) / 2;

/** Edge of the rails above the bench. */
export const railEdge = ({ zero, rails }: JigFrame): ((x: Mm) => Mm) => { const height = heightsOf(rails); return (x) => zero - height(x); };

const LETTER: Mm = 5, SMALL: Mm = 3.5, TICK: Mm = 10;

/** A rail seen from the inner rail's own shoe side, heel left: [x, z over the bench]. Slots open downwards, over the ribs. */
export function rail(frame: JigFrame, thickness: Mm, name: string, lines: readonly string[], places: readonly Place[], feather: readonly Point[]): FlatPart {
  const { run, railFoot, ribs, slot } = frame, edge = overBench(frame.rails, frame.zero), [right, left] = [pointOn(edge[0]!, 0), pointOn(edge.at(-1)!, 1)];
  const foot: Point[] = [[run.from, railFoot], ...ribs.flatMap((x) => slotFromBelow(x, slot, railFoot, lapAt(frame, x, thickness))), [run.to, railFoot]];
  const outline: Path = [...straights([...foot, right]), ...edge, ...straights([left, foot[0]!])];
  return {
    name, outline, holes: [],
    marks: [...places.map((place) => tick(frame, place)), { of: 'FEATHER_LINE', path: straights(onRail(frame, feather)) }].filter(({ path }) => path.length > 0),
    letters: [
      ...ribs.map((x, i): PartLetters => ({ text: letterOf(i), at: [x + slot / 2 + 1.5, railFoot + 3], size: LETTER })),
      ...inRows(places).map(({ place: { name: text, x }, row }): PartLetters => ({ text, at: [x + 1, railEdge(frame)(x) - TICK - row * SMALL], size: SMALL })),
      ...titlesOf(frame, thickness, lines, places, onRail(frame, feather)),
    ],
  };
}

/** Lettering stands over the shank, where a rail is highest, and keeps off slots, the feather line, letters of ribs and names of places. */
const SHANK = 0.4;
function titlesOf(frame: JigFrame, thickness: Mm, lines: readonly string[], places: readonly Place[], feather: readonly Point[]): PartLetters[] {
  const { run, sole, railFoot: foot, ribs, slot } = frame, edge = railEdge(frame);
  const slots = ribs.map((x): Box => ({ from: x - slot / 2, to: x + slot / 2, low: foot, high: lapAt(frame, x, thickness) }));
  const names = inRows(places).map(({ place: { x }, row }): Box => ({ from: x, to: x + NAME_LONG, low: edge(x) - TICK - row * SMALL - 1, high: edge(x) }));
  const letters = ribs.map((x): Box => ({ from: x + slot / 2, to: x + slot / 2 + 2 * LETTER, low: foot, high: foot + 4 + LETTER }));
  const scribed = feather.slice(1).map(([x, z], i): Box => { const [px, pz] = feather[i]!; return { from: Math.min(px, x), to: Math.max(px, x), low: Math.min(pz, z), high: Math.max(pz, z) }; });
  return titles(lines, { edge, from: run.from, to: run.to, foot, taken: [...slots, ...names, ...letters, ...scribed] }, sole.from + SHANK * (sole.to - sole.from));
}

/** Names of places nearer to each other than a name is long stand in rows. */
const NAME_LONG: Mm = 13;
function inRows(places: readonly Place[]): { readonly place: Place; readonly row: number }[] {
  const rows: Mm[] = [];
  return [...places].sort((a, b) => a.x - b.x).map((place) => {
    const free = rows.findIndex((end) => end <= place.x), row = free < 0 ? rows.length : free;
    rows[row] = place.x + NAME_LONG;
    return { place, row };
  });
}

function tick(frame: JigFrame, { of, x }: Place): PartMark {
  const top = railEdge(frame)(x);
  return { of, path: straights([[x, top], [x, top - TICK]]) };
}

/** A scribed line keeps off the edges of the rail. */
const OFF_EDGE: Mm = 1.5;
const onRail = (frame: JigFrame, line: readonly Point[]): Point[] =>
  line.filter(([x, z]) => x > frame.run.from && x < frame.run.to && z < railEdge(frame)(x) - OFF_EDGE && z > frame.railFoot + OFF_EDGE);

/** A stringer, heel left; slots open upwards, under the ribs. */
export function stringer({ run, ribs, slot }: JigFrame, name: string, title: string): FlatPart {
  const top: Point[] = [[run.to, STRINGER], ...[...ribs].reverse().flatMap((x) => slotFromAbove(x, slot, STRINGER, STRINGER / 2)), [run.from, STRINGER]];
  const corners: Point[] = [[run.from, 0], [run.to, 0], ...top, [run.from, 0]];
  return {
    name, outline: straights(corners), holes: [], marks: [],
    letters: [...ribs.map((x, i): PartLetters => ({ text: letterOf(i), at: [x + slot / 2 + 1.5, STRINGER / 2 + 2], size: LETTER })), { text: title, at: [(ribs[0] ?? 0) + slot, 5], size: LETTER }],
  };
}
