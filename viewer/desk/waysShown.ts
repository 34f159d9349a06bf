import { decidesIt } from '../../src/checks/packDecides.ts';
import { WAY_HEADS, WAY_MEANS, waysTo } from '../../src/checks/packWays.ts';
import { designWith } from '../../src/designWith.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { packFor } from '../../src/stiffener/pack.ts';
import { waySets } from './waySets.ts';
import type { WaysAsk, WaysShown } from './waysAsk.ts';

/** Other ways to the stiffeners of a sheet, in the words of the command; none where there is no shape or only a thickness is given. Pure. */
export function waysShown({ sheet, lengths }: Pick<WaysAsk, 'sheet' | 'lengths'>): readonly WaysShown[] {
  const reading = readSheet(sheet, lengths), designing = reading.ok ? designWith(() => [], { ...reading.fitting, units: lengths }, 'careful') : undefined;
  if (!reading.ok || !designing?.ok) return [];
  const { shoes, fitting } = designing.design;
  return shoes.flatMap((shoe) => {
    const pack = packFor(shoe, fitting);
    return pack ? [{ side: shoe.side, heads: WAY_HEADS, means: Object.values(WAY_MEANS), ways: waysTo(pack, lengths), sets: waySets(pack, reading.fitting.units), decides: decidesIt(pack, lengths) }] : [];
  });
}
