import type { Finding } from '../../checks/finding.ts';
import { mm, sentences } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { WedgeOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Pair, RockerShoe } from '../../pair/shoe.ts';
import type { Lot } from '../cut/beyondBoard.ts';
import { wedgeTemplates } from './templates.ts';
import { isTrial, trialFor, trialOf, type LeftOut, type NoTrial, type Trial } from './trial.ts';
import { largestWorking, variantWords } from './variants.ts';

/** What to know of the trial wedges before they are made. They are solved for it, so it waits while a hand drags. */
export function wedgeFindings(pair: Pair): Finding[] {
  const { shoes, fitting: { making: { wedges } } } = pair;
  if (!wedges) return [];
  return shoes.flatMap((shoe) => {
    if (shoe.kind !== 'rocker') return [];
    const trial = trialFor(shoe, wedges);
    return isTrial(trial) ? [...trial.leftOut.map((one) => leftOut(shoe, one)), ...standsHigher(pair, shoe, trial)] : [noTrial(shoe, wedges, trial)];
  });
}

/** The templates of each trial, as they are laid on boards. */
export const wedgeLots = ({ shoes, fitting: { job: { reference }, making: { wedges } } }: Pair): Lot[] => !wedges ? [] : shoes.flatMap((shoe) => {
  const trial = shoe.kind === 'rocker' ? trialFor(shoe, wedges) : undefined;
  return trial && isTrial(trial) ? [{ side: shoe.side, what: 'templates of the trial wedges', parts: wedgeTemplates(reference, shoe.side, trial) }] : [];
});

/** Why a shape is missing, and what of it works. */
export function leftOutWords({ variant, why, works: { step, flat } }: LeftOut): string {
  const ways = [...(step === undefined ? [] : [`with a step of ${mm(step, 0)} (making.wedges.step)`]), ...(flat === undefined ? [] : [`with a flat of ${mm(flat, 0)} (making.wedges.flat)`])];
  return sentences(`Trial wedge ${variant.number} (${variantWords(variant)}) is left out: ${why}`, ways.length ? `It can be made ${ways.join(', or ')}` : '');
}

const leftOut = ({ side }: RockerShoe, one: LeftOut): Finding => ({
  code: 'WEDGE_LEFT_OUT', severity: 'note', side, measured: one.variant.number, unit: '', where: `trial wedge ${one.variant.number}`, text: leftOutWords(one), basis: PRACTICE,
});

/** Less than this no hand measures. */
export const LEAST_TOLD: Mm = 0.05;
/** Less than this nobody feels. */
const LEAST_HIGHER = 0.5;

/** What the other shoe still needs for a trial: none of it where that one is tried as well and stands as much higher, or more. */
export function underOther({ shoes, fitting: { making: { wedges } } }: Pair, shoe: RockerShoe, { higher }: Trial): Mm {
  const other = shoes.find(({ side }) => side !== shoe.side), trial = other?.kind === 'rocker' && wedges ? trialFor(other, wedges) : undefined;
  return Math.max(0, higher - (trial && isTrial(trial) ? trial.higher : 0));
}

function standsHigher(pair: Pair, shoe: RockerShoe, trial: Trial): Finding[] {
  const { higher, seat } = trial, missing = underOther(pair, shoe, trial), other = pair.shoes.find(({ side }) => side !== shoe.side);
  if (higher < LEAST_HIGHER) return [];
  return [{
    code: 'TRIAL_STANDS_HIGHER', severity: 'note', side: shoe.side, measured: higher, limit: LEAST_HIGHER, unit: 'mm', where: 'trial wedges',
    text: `All shapes of the trial stand at ${mm(seat)} at the seat, ${mm(higher)} higher than the sole is planned, so that only what is tried differs. ${missing < LEAST_TOLD ? 'The trial of the other shoe stands as much higher, or more.' : other?.kind === 'rocker' ? `While the other shoe is tried on its own base put ${mm(missing)} more under that one; where it is walked on as it is, ${mm(higher)}.` : `Put ${mm(missing)} under the other shoe too for the trial.`}`, basis: PRACTICE,
  }];
}

function noTrial(shoe: RockerShoe, order: WedgeOrder, { why }: NoTrial): Finding {
  const step = largestWorking(order.step, (less) => isTrial(trialOf(shoe, { ...order, step: less })));
  return {
    code: 'NO_TRIAL', severity: 'warn', side: shoe.side, measured: order.step, ...(step > 0 && { limit: step }), unit: 'mm', where: 'trial wedges',
    text: sentences(`No trial wedges are made: ${why}`, step > 0 ? `A step of ${mm(step, 0)} works (making.wedges.step)` : 'Shape the sole itself for the trial, outsole off'), basis: PRACTICE,
  };
}
