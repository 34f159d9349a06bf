import { mm } from '../../checks/say.ts';
import type { WedgeOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import { apexBehindJoint } from '../../prescription/order.ts';
import { Infeasible, orInfeasible } from '../../profile/infeasible.ts';
import type { RockerCase } from '../../profile/rocker.ts';
import { soleFrom, type SolvedSole } from '../../solid/fromRocker.ts';

/** One shape to walk on: the client's own arcs with the apex moved, positive forward, and a standing flat or none. Numbers are those of the wedges. */
export interface Variant { readonly number: number; readonly apexBy: Mm; readonly flat: Mm; readonly planned: boolean }

/** Three apexes without a flat, three with one, and the shape as planned where it is none of them. */
export function variantsOf({ order }: RockerCase, { step, flat }: WedgeOrder): Variant[] {
  const all = [0, flat].flatMap((long) => [-step, 0, step].map((apexBy) => ({ apexBy, flat: long, planned: apexBy === 0 && long === order.standingFlat })));
  const own = all.some(({ planned }) => planned) ? [] : [{ apexBy: 0, flat: order.standingFlat, planned: true }];
  return [...all, ...own].map((variant, i) => ({ number: i + 1, ...variant }));
}

/** "apex 5.0 mm back, flat 30.0 mm". */
export function variantWords({ apexBy, flat }: Pick<Variant, 'apexBy' | 'flat'>): string {
  const apex = apexBy === 0 ? 'apex as planned' : `apex ${mm(Math.abs(apexBy))} ${apexBy < 0 ? 'back' : 'forward'}`;
  return `${apex}, ${flat === 0 ? 'no flat' : `flat ${mm(flat)}`}`;
}

/** What all shapes of a trial have in common. @property behindJoint how far forward the apex may go for a stiff toe joint; none where no joint limits it */
export interface TrialSetting { readonly given: RockerCase; readonly behindJoint: Mm | undefined }

export const settingOf = (given: RockerCase, joint: string | undefined): TrialSetting =>
  ({ given, behindJoint: joint === 'toe joint' ? Math.max(given.order.apexX, apexBehindJoint(given.last, given.order.crestAngle)) : undefined });

/** No hand sets an apex nearer than this. */
const SAME_APEX: Mm = 0.05;

/** Solves one shape; every one of a trial stands at one seat height, so that nothing but what is tried differs. */
export function solveVariant({ given, behindJoint }: TrialSetting, { apexBy, flat }: Pick<Variant, 'apexBy' | 'flat'>, seat?: Mm): SolvedSole | Infeasible {
  const { order } = given, apexX = order.apexX + apexBy;
  if (behindJoint !== undefined && apexX > behindJoint + SAME_APEX) {
    return new Infeasible('APEX_TOO_NEAR', `the apex would lie ${mm(apexX - behindJoint)} ahead of where the stiff toe joint lets it be`, ['apexX']);
  }
  return orInfeasible(() => soleFrom({ ...given, order: { ...order, apexX, standingFlat: flat, ...(seat === undefined ? {} : { seatAtLeast: { height: seat, by: 'order' } }) } }));
}

export type Workable = (change: Pick<Variant, 'apexBy' | 'flat'>) => boolean;

/** What of a shape that cannot be made can be, nearest to what was asked, in whole millimetres; each was put in and made. */
export function nearestWorking(works: Workable, { apexBy, flat }: Variant): { readonly step?: Mm; readonly flat?: Mm } {
  const sign = Math.sign(apexBy);
  const step = apexBy === 0 ? 0 : largestWorking(Math.abs(apexBy), (less) => works({ apexBy: sign * less, flat }));
  const shorter = flat === 0 ? 0 : largestWorking(flat, (less) => works({ apexBy, flat: less }));
  return { ...(step > 0 && { step }), ...(shorter >= SHORTEST && { flat: shorter }) };
}

/** The shortest flat a sheet takes. */
const SHORTEST: Mm = 5;

/** The largest whole number below a limit that works, where smaller ones do too; 0 where none does. */
export function largestWorking(limit: number, works: (value: number) => boolean): number {
  let good = 0, bad = Math.ceil(limit);
  while (bad - good > 1) { const middle = (good + bad) >> 1; if (works(middle)) good = middle; else bad = middle; }
  return good;
}
