import { SIDES } from '../fitting/words.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { finished } from '../geometry/finished.ts';
import { seek, type Answer } from './seek.ts';
import { tradeOff, type TradeOff } from './tradeOff.ts';

/** What the targets of one shoe come to. */
export interface ShoeTargets { readonly answer: Answer; readonly curve: TradeOff }

/** The answers to all targets on a sheet, left before right; worked out once for all that tells of them. */
export function targetsOn(fitting: Fitting): readonly ShoeTargets[] {
  const known = workedOut.get(fitting), found = known ?? SIDES.flatMap((side) => {
    const answer = finished(seek(fitting, side)), curve = answer && finished(tradeOff(fitting, side));
    return answer && curve ? [{ answer, curve }] : [];
  });
  if (!known) workedOut.set(fitting, found);
  return found;
}

const workedOut = new WeakMap<Fitting, readonly ShoeTargets[]>();
