import { directionOn, lengthOf, pointOn, type Path, type PathArc, type PathLine, type PathPiece } from '../../geometry/path.ts';
import { add, distance, scale, subtract, turnLeft, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { atan2, sin } from '../../geometry/trig.ts';
import { fromPath } from '../setOut.ts';
import { turnBetween } from './kerf.ts';

/** Up to this kerf the round it leaves in an inner corner keeps no board from seating. Common practice. */
const NO_RELIEF: Mm = 1;
/** The relief is this much larger than the cutter, so that the line to follow stays a line and does not shrink to a point. */
const LARGER = 1.1;

/** A relief at one corner: how much of which edge it takes away, and the arc instead. */
interface Relief { readonly bites: 'before' | 'after'; readonly length: Mm; readonly arc: PathArc }

/**
 * A closed edge whose inner corners a cutter of this kerf can clear: a round bite into the longer of the two edges, up to
 * the corner, so that the shorter one (the end of a slot) keeps its full width for the board that seats on it. Corners
 * between straight edges only, and only where there is room and wood for it; the others keep the round of the cutter.
 */
export function relieved(edge: Path, kerf: Mm): Path {
  if (kerf <= NO_RELIEF) return edge;
  const wanted = edge.map((piece, i) => reliefAt(edge.at(i - 1)!, piece, kerf)), reliefs = wanted.map((relief, i) => (relief && leavesWood(edge, wanted, i) ? relief : undefined));
  return edge.flatMap((piece, i) => {
    const here = reliefs[i], next = reliefs[(i + 1) % edge.length];
    if (piece.kind === 'arc' || (!here && !next)) return [piece];
    const kept = shortened(piece, here?.bites === 'after' ? here.length : 0, next?.bites === 'before' ? next.length : 0);
    return here ? [here.arc, kept] : [kept];
  });
}

/** Wood that stays between a bite and whatever else there is. */
const WOOD: Mm = 1;

/** Whether a bite breaks through neither to another edge of the part nor to another bite; the one at the other end of the same slot turns away. */
function leavesWood(edge: Path, reliefs: readonly (Relief | undefined)[], i: number): boolean {
  const { centre, radius } = reliefs[i]!.arc, turns = edge.length, isBeside = (k: number): boolean => k === (i + 1) % turns || k === (i - 1 + turns) % turns;
  const others = edge.filter((_, k) => k !== i && k !== (i - 1 + turns) % turns);
  return fromPath(others, centre) >= radius + WOOD
    && reliefs.every((relief, k) => !relief || k === i || isBeside(k) || distance(relief.arc.centre, centre) >= relief.arc.radius + radius + WOOD);
}

/** An inner corner this near to straight, or this sharp, is left as it is. */
const SHALLOW = 0.3, SHARP = 2.1;

function reliefAt(before: PathPiece, after: PathPiece, kerf: Mm): Relief | undefined {
  const turn = -turnBetween(before, after), radius = (kerf / 2) * LARGER, length = 2 * radius * sin(turn);
  if (before.kind === 'arc' || after.kind === 'arc' || turn < SHALLOW || turn > SHARP) return undefined;
  const longer = lengthOf(before) > lengthOf(after) ? 'before' : 'after', [long, short] = longer === 'before' ? [before, after] : [after, before];
  if (lengthOf(long) <= 2 * length || lengthOf(short) < kerf) return undefined;
  return { bites: longer, length, arc: biteInto(longer, before, after, radius, length) };
}

/** The arc touches the shorter edge in the corner and ends on the longer one; it turns to the right, round the waste. */
function biteInto(longer: Relief['bites'], before: PathLine, after: PathLine, radius: Mm, length: Mm): PathArc {
  const corner = after.from, along = directionOn(longer === 'before' ? before : after, 0), touched = directionOn(longer === 'before' ? after : before, 0);
  const centre = add(corner, scale(turnLeft(touched), -radius)), onEdge = add(corner, scale(along, longer === 'before' ? -length : length));
  const [from, to] = longer === 'before' ? [onEdge, corner] : [corner, onEdge];
  const angle = (point: Point): number => { const [x, y] = subtract(point, centre); return atan2(y, x); };
  const start = angle(from), left = (angle(to) - start) % (2 * Math.PI);
  return { kind: 'arc', centre, radius, start, sweep: left > 0 ? left - 2 * Math.PI : left };
}

const shortened = (piece: PathLine, atStart: Mm, atEnd: Mm): PathLine => {
  const length = lengthOf(piece);
  return { kind: 'line', from: pointOn(piece, atStart / length), to: pointOn(piece, 1 - atEnd / length) };
};
