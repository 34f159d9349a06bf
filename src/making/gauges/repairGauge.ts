import type { Mm } from '../../geometry/units.ts';
import { mm } from '../../checks/say.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import { facePath } from '../../profile/facePath.ts';
import { endOf, offsetInward, startOf } from '../../profile/groundFace.ts';
import { rollX } from '../../profile/rollLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart, PartMark } from '../flatPart.ts';
import { lettersWithin, ROW } from './lettering.ts';
import { profileGauge } from './profileGauge.ts';
import type { Slice } from './slice.ts';

/** Worn by so much at the strike point or at the toe, a sole is resoled. Common practice of the trade. */
export const WORN: Mm = 2;

const HEIGHTS = 'the heights: no thicker and no thinner rubber, at heel and toe alike, and both shoes of the pair together', FOAM = 'the foam: when rubber comes off, take off glue, not foam';

/** What a repairer must leave as it is, by the kind of sole. */
const LEAVE: Readonly<Record<Shoe['kind'], readonly string[]>> = {
  rocker: [
    'the arcs and the flat underfoot: they are computed for this leg, and a level sole is wrong for it', HEIGHTS,
    'the stiffener over the foam: do not drill, nail or heat it', FOAM, 'the walls: trim new rubber flush with them, leave no round edge',
  ],
  match: ['the shape underfoot: it follows the sole it was put under, level where that is level and rising to the toe where that rises', HEIGHTS, FOAM, 'the walls: trim new rubber flush with them'],
};
export const leaveAsItIs = ({ kind }: Shoe): readonly string[] => LEAVE[kind];

/** The same on the gauge itself, in as few words as it has room for. */
const LEAVE_SHORT: Readonly<Record<Shoe['kind'], string>> = { rocker: 'arcs and flat, heights of both shoes, stiffener, foam, walls', match: 'shape underfoot, heights of both shoes, foam, walls' };

/** The line begins clear of the mark at the apex. */
const PAST_APEX: Mm = 0.5;

/** Where wear counts: from the back to where the heel arc ends, or under the seat where there is none; and from where the toe arc begins to the tip. */
export function wornStretches({ face: { pieces }, line, last }: SoleShape, { from, to }: Slice): readonly (readonly [Mm, Mm])[] {
  const heel = pieces.find(({ name }) => name === 'heel arc'), toe = pieces.find(({ name }) => name === 'toe arc');
  const behind = [from, heel ? endOf(heel)[0] : rollX(line, [last.seatLength, 0])] as const;
  return [...(behind[1] > from ? [behind] : []), ...(toe && startOf(toe)[0] + PAST_APEX < to ? [[Math.max(from, startOf(toe)[0] + PAST_APEX), to] as const] : [])];
}

/** The line on the board as far from its edge as the sole may wear: a gap between edge and sole as wide as that means a new sole. */
const wornMarks = (shape: SoleShape, slice: Slice): PartMark[] => {
  const below = offsetInward(shape.face, -WORN);
  return wornStretches(shape, slice).map(([a, b]) => ({ of: 'WORN_LIMIT', path: facePath(below, a, b) }));
};

/** What is glued on when the sole is worn. */
export const rubberWords = (shoe: Shoe): string => `${shoe.order.outsole.material}, ${mm(shoe.order.outsole.thickness)}`;

/** The gauge that goes with the shoes to whoever repairs them: one slice, the wear limit, the rubber, and what must stay as it is. */
export function repairGauge(shoe: Shoe, parts: SoleParts, slice: Slice, depth: Mm, name: string, held: string): FlatPart {
  const room = slice.to - slice.from, base = [
    `${name}, ${held}. New sole: ${rubberWords(shoe)}. Worn when the gap is as wide as from edge to line (${mm(WORN, 0)}).`,
    `Leave as they are: ${LEAVE_SHORT[shoe.kind]}. Hold the new sole to this edge.`,
  ].flatMap((text) => lettersWithin(text, room));
  return profileGauge(shoe, parts, slice, { name, depth: Math.max(depth, LABELS + base.length * ROW), heelLeft: true, base, worn: wornMarks(parts.shape, slice) });
}

/** Room that places and radii take under the edge. */
const LABELS: Mm = 22;
