import { rangeOf } from '../fitting/ranges.ts';
import type { SheetMatch } from '../fitting/fitting.ts';
import { otherSide } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import { raiseUnder, type RaiseMade } from '../pair/raise.ts';
import type { MatchShoe } from '../pair/shoe.ts';
import { foamLeft } from '../solid/foamLeft.ts';
import { capital, mm } from './say.ts';

/** The raise of a match with some things changed, where it can be made. */
function madeWith({ last, order, raise }: MatchShoe, changed: Partial<SheetMatch>, higher: Mm = 0): RaiseMade | undefined {
  const raising = raiseUnder(last, { ...order, ...changed }, { seat: raise.seat + higher, ball: raise.ball + higher });
  return raising.kind === 'made' ? raising.made : undefined;
}

/** The order with its tip left to the trade. */
export function withTipOpen(shoe: MatchShoe): MatchShoe {
  const { tip: _, ...order } = shoe.order;
  return { ...shoe, order };
}

/** The raise with its tip left to the trade: no thinner than keeps the foam and the mild slope, as far as there is room. */
export const raiseWithTipOpen = (shoe: MatchShoe): RaiseMade | undefined => madeWith(withTipOpen(shoe), {});

/** The raise with another tip, where it can be made. */
export const raiseWithTip = (shoe: MatchShoe, tip: Mm): RaiseMade | undefined => madeWith(shoe, { tip });

/** More room for a raise: how much, and how that is had. */
export interface Room { readonly more: Mm; readonly leaveTipOut: boolean }

/** Whether a raise keeps so much foam wherever it is thinnest. */
export const keepsFoam = (foam: Mm) => ({ shape }: RaiseMade): boolean => foamLeft(shape).thickness >= foam - 1e-6;

/** The least more that gives a raise with enough foam, put in and made; undefined where height alone does not give it. */
export function roomFor(shoe: MatchShoe, missing: Mm, isEnough: (made: RaiseMade) => boolean): Room | undefined {
  const least = Math.ceil(missing * 10 - 1e-6) / 10, leave = shoe.order.tip === undefined ? [false] : [false, true];
  for (const leaveTipOut of leave) {
    const own = leaveTipOut ? withTipOpen(shoe) : shoe;
    for (const more of [least, least + 0.1]) {
      const made = madeWith(own, {}, more);
      const asTyped = made && madeWith(own, {}, seatAtLeast(shoe, more) - shoe.otherSeat);
      if (made && isEnough(made) && asTyped && isEnough(asTyped)) return { more, leaveTipOut };
    }
  }
  return undefined;
}

/** A thinner outsole or a higher shoe on the other side, whichever gives enough foam; a sentence, empty where neither does. */
export function moreRoom(shoe: MatchShoe, missing: Mm, isEnough: (made: RaiseMade) => boolean): string {
  const thinner = thinnerOutsole(shoe, missing, isEnough), room = roomFor(shoe, missing, isEnough);
  const ways = [thinner === undefined ? '' : `take an outsole ${mm(thinner)} thinner (order.outsole.thickness)`, room ? higherOther(shoe, room) : ''].filter(Boolean).join(', or ');
  return capital(ways);
}

/** What is typed to build the other shoe up by so much, to the tenth above. */
const seatAtLeast = ({ otherSeat }: MatchShoe, more: Mm): Mm => Math.ceil((otherSeat + more) * 10 - 1e-6) / 10;

export function higherOther(shoe: MatchShoe, { more, leaveTipOut }: Room): string {
  const other = otherSide(shoe.side), height = seatAtLeast(shoe, more), [, most] = rangeOf('order.seatHeightAtLeast').limits;
  return `build the ${other} shoe up by ${mm(more)} (${height <= most ? `order.seatHeightAtLeast ${mm(height)}` : 'order.seatHeightAtLeast'})${leaveTipOut ? ' and leave order.tip out' : ''}`;
}

/** How much thinner an outsole gives enough foam, put in and made; undefined where that is thinner than any. */
function thinnerOutsole(shoe: MatchShoe, missing: Mm, isEnough: (made: RaiseMade) => boolean): Mm | undefined {
  const less = Math.ceil(missing * 10 - 1e-6) / 10, { outsole } = shoe.order, thickness = outsole.thickness - less;
  if (thickness < rangeOf('order.outsole.thickness').limits[0]) return undefined;
  const made = madeWith(shoe, { outsole: { ...outsole, thickness } });
  return made && isEnough(made) ? less : undefined;
}
