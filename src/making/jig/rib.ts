import type { BoardOrder, JigOrder } from '../../fitting/making.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { planPoint } from '../../profile/rollLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart } from '../flatPart.ts';
import { featherHeight, FLOOR, STRINGER, WALL, type JigFrame } from './frame.ts';
import { closed, slotFromAbove, slotFromBelow, straights } from './outline.ts';
import { lapAt, uprightTop } from './rail.ts';
import { letterOf } from './letters.ts';

const LETTER: Mm = 4, BIG: Mm = 8;

/**
 * A rib seen from the toe: [y to the inner side, z over the bench]. Two slots in its foot go over the stringers, one in each
 * upright takes a rail. In its notch hangs the upper: as wide as the sole and the room beside it down to the feather line, then
 * closing in to half of that at the floor, so that a padded upper centres itself. The ribs at both ends are the stops.
 */
export function rib(index: number, shape: SoleShape, frame: JigFrame, order: JigOrder, { thickness }: BoardOrder, title: string): FlatPart {
  const x = frame.ribs[index]!, { railsAt, stringersAt, slot } = frame, out = slot / 2 + WALL, [low, high] = [railsAt[0] - out, railsAt[1] + out];
  const top = uprightTop(frame, x, thickness), lap = lapAt(frame, x, thickness), notch = notchAt(x, shape, frame, order, thickness, top);
  const foot = stringersAt.flatMap((y) => slotFromBelow(y, slot, 0, STRINGER / 2)), takes = (y: Mm): Point[] => slotFromAbove(y, slot, top, lap);
  const middle = acrossAt(shape, x), letter = letterOf(index), end = index === 0 ? 'heel stop, ' : index === frame.ribs.length - 1 ? 'toe stop, ' : '';
  return {
    name: `rib ${letter}`, outline: closed([[low, 0], ...foot, [high, 0], [high, top], ...takes(railsAt[1]), ...notch, ...takes(railsAt[0]), [low, top]]), holes: [],
    marks: [{ of: 'CENTRE_LINE', path: straights([[middle, FLOOR - 3], [middle, FLOOR - 13]]) }],
    letters: [
      { text: letter, at: [high - WALL + 2, 5], size: BIG }, { text: title, at: [low + 5, STRINGER / 2 + 11], size: LETTER },
      { text: `${end}this face to the toe`, at: [low + 5, STRINGER / 2 + 3], size: LETTER },
    ],
  };
}

/** Corners of the notch on the way from +y to -y; none where no sole lies over the rib. */
function notchAt(x: Mm, shape: SoleShape, { across, zero }: JigFrame, { room }: JigOrder, thickness: Mm, top: Mm): Point[] {
  const sole = across(x - thickness / 2, x + thickness / 2);
  if (!sole) return [];
  const from = sole.from - room, to = sole.to + room, narrower = (to - from) / 4, feather = Math.min(zero - featherHeight(shape, x, sole), top);
  const sides: Point[] = [[to, feather], [to - narrower, FLOOR], [from + narrower, FLOOR], [from, feather]];
  return feather < top ? [[to, top], ...sides, [from, top]] : sides;
}

/** Where the long axis of the shoe crosses a rib. */
export function acrossAt({ line }: SoleShape, x: Mm): Mm {
  const [, aside] = planPoint(line, x, 0), [, step] = planPoint(line, x, 1);
  return aside / (step - aside);
}
