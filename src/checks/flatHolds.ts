import type { Mm } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import type { Stood } from '../roll/layer.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { standingUnder } from '../roll/standing.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import { rounded } from './say.ts';
import type { Seen } from './seen.ts';
import { caseOf } from './thickness.ts';

/** What a standing flat buys, in words: how hard two soles push back against a tilt with it and without. Put in and solved; nothing where the client was not weighed. */
export function flatHolds({ shoe, number, fitting: { wearer: { mass } }, pace }: Seen<RockerShoe>, flat: Mm): string {
  if (mass === undefined || pace === 'quick') return '';
  const given = caseOf(shoe), order = { ...given.order, standingFlat: flat }, sole = orInfeasible(() => soleFrom({ ...given, order }));
  if (sole instanceof Infeasible) return '';
  const flatter = holds({ ...sole, order }, mass.value), without = (['steadySoft', 'steadyHard'] as const).map(number);
  return `On two feet the soles then push back against a tilt ${spanned(flatter)} times as hard as a stiff body of this weight needs to stay up, without a flat ${spanned(without)} times`;
}

function holds(stood: Stood, mass: number): readonly number[] {
  const under = standingUnder(stood, rollBodyOf(stood), mass);
  return (['softest', 'hardest'] as const).map((softness) => { const { holdsAll, needs } = under(softness, 2); return holdsAll / needs; });
}

function spanned(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)].map((value) => rounded(value, 1));
  return least === most ? `${least}` : `${least} to ${most}`;
}
