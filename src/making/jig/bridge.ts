import type { BoardOrder } from '../../fitting/making.ts';
import { fitArcs, lengthOf, pointOn, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { OUTLINE_GAP } from '../../geometry/tolerances.ts';
import type { Mm } from '../../geometry/units.ts';
import { planPoint } from '../../profile/rollLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart } from '../flatPart.ts';
import type { JigFrame } from './frame.ts';
import { straights } from './outline.ts';
import { railEdge, type Place } from './rail.ts';
import { acrossAt } from './rib.ts';

/** Height over the rails, wood outside them, how far they are gripped (less than the ribs end below them), and how far the leg keeps inside the edge of the sole. */
const BAR: Mm = 26, EAR: Mm = 14, GRIP: Mm = 4, INSIDE: Mm = 8, LETTER: Mm = 5, TICK: Mm = 4;

/**
 * A bridge that is set over both rails at a place along the shoe, seen from the toe: [y to the inner side, z over the bench]. Its
 * leg reaches down to where the bottom of the last belongs; with one at the seat and one at the ball the lasted shoe lies at
 * its pitch, level across, before anything is glued on.
 */
export function bridge({ x, name }: Place, shape: SoleShape, frame: JigFrame, { thickness }: BoardOrder, title: string): FlatPart {
  const { railsAt: [low, high], slot } = frame, sits = bridgeSeat(frame, x, thickness), ear = slot / 2 + EAR, foot = sits - GRIP;
  const sole = frame.across(x - thickness / 2, x + thickness / 2) ?? { from: -INSIDE, to: INSIDE }, leg = footOf(shape, frame, x, sole.from + INSIDE, sole.to - INSIDE);
  const { start, end } = leg, top = Math.max(sits, ...leg.path.map((piece) => pointOn(piece, 0.5)[1])) + BAR, middle = acrossAt(shape, x);
  const before = straights([[low - ear, top], [low - ear, foot], [low - slot / 2, foot], [low - slot / 2, sits], [start[0], sits], start]);
  const after = straights([end, [end[0], sits], [high + slot / 2, sits], [high + slot / 2, foot], [high + ear, foot], [high + ear, top], [low - ear, top]]);
  return {
    name: `bridge, ${name}`, outline: [...before, ...leg.path, ...after].filter((piece) => lengthOf(piece) > 0), holes: [],
    marks: [{ of: 'CENTRE_LINE', path: straights([[middle, leg.at(middle)], [middle, leg.at(middle) + TICK]]) }],
    letters: [{ text: `bridge, ${name}: this face to the toe`, at: [low + slot, top - 8], size: LETTER }, { text: title, at: [low + slot, top - 16], size: LETTER }],
  };
}

/** A bridge stands on the higher of the two places where its faces cross the rails. */
export function bridgeSeat(frame: JigFrame, x: Mm, thickness: Mm): Mm {
  const edge = railEdge(frame);
  return Math.max(...[-1, -0.5, 0, 0.5, 1].map((share) => edge(x + (share * thickness) / 2)));
}

/** The bottom of the last across the shoe, from -y to +y, over the bench. */
function footOf({ upper, build, line }: SoleShape, { zero }: JigFrame, x: Mm, from: Mm, to: Mm): { readonly path: Path; readonly start: Point; readonly end: Point; readonly at: (y: Mm) => Mm } {
  const at = (y: Mm): Point => [y, zero - upper(...planPoint(line, x, -y)) - build], start = at(from), end = at(to);
  const level = [0.25, 0.5, 0.75].every((t) => at(from + (to - from) * t)[1] === start[1]) && start[1] === end[1];
  return { path: level ? straights([start, end]) : fitArcs(at, [from, to], OUTLINE_GAP), start, end, at: (y) => at(y)[1] };
}
