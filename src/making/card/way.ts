import type { Making } from '../../fitting/making.ts';
import type { MakingName, WayOfMaking } from '../../fitting/words.ts';

/** What must be ordered for each way of making, the first that is ordered is taken where the card does not say. */
export const ORDER_FOR = { 'router block': 'block', 'cast in a mould': 'mould', printed: 'print', jig: 'jig', 'sheet stack': 'stack' } as const satisfies Record<WayOfMaking, MakingName>;
const IN_ORDER = Object.keys(ORDER_FOR) as readonly WayOfMaking[];

/** How the soles are made; sheets glued up under the shoe need nothing but hands, so they stand where nothing is ordered. */
export const wayFor = (making: Making): WayOfMaking => making.card?.way ?? IN_ORDER.find((way) => making[ORDER_FOR[way]] !== undefined) ?? 'sheet stack';

/** What a card that names its way should have ordered for it and has not. */
export function unordered({ card, ...making }: Making): MakingName | undefined {
  const name = card?.way && ORDER_FOR[card.way];
  return name !== undefined && making[name] === undefined ? name : undefined;
}
