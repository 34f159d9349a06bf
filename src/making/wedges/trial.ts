import { caseOf } from '../../checks/thickness.ts';
import type { WedgeOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { RockerShoe } from '../../pair/shoe.ts';
import { offsetInward, type GroundFace } from '../../profile/groundFace.ts';
import { Infeasible, orInfeasible } from '../../profile/infeasible.ts';
import { seatOf, type SolvedSole } from '../../solid/fromRocker.ts';
import { groundRim, type GroundRim } from '../../solid/groundRim.ts';
import { BASE_LEAST, baseLeft, leastSetIn } from './base.ts';
import { nearestWorking, settingOf, solveVariant, variantsOf, type TrialSetting, type Variant } from './variants.ts';

/** One shape of the trial, solved at the seat height all of them share. */
export interface TrialShape { readonly variant: Variant; readonly sole: SolvedSole }

/** A shape that is left out, why, and what of it works. */
export interface LeftOut { readonly variant: Variant; readonly why: string; readonly works: { readonly step?: Mm; readonly flat?: Mm } }

/**
 * The shapes of a trial before they are made: all over one base, in the frame of the last.
 * @property seat height of the seat in all of them  @property higher how much that is above the sole as planned
 * @property setIn how far the base face lies inside the planned one
 */
export interface Trial {
  readonly shapes: readonly TrialShape[];
  readonly leftOut: readonly LeftOut[];
  readonly seat: Mm;
  readonly higher: Mm;
  readonly setIn: Mm;
  readonly planned: SolvedSole;
  readonly base: GroundFace;
  readonly baseRim: GroundRim;
  readonly baseLeft: Mm;
}

/** There is no base under which all shapes would go. */
export interface NoTrial { readonly leftOut: readonly LeftOut[]; readonly why: string }
export const isTrial = (trial: Trial | NoTrial): trial is Trial => 'shapes' in trial;

/** Asked for by the findings and by what is made. */
export function trialFor(shoe: RockerShoe, order: WedgeOrder): Trial | NoTrial {
  const known = worked.get(shoe);
  if (known?.order === order) return known.trial;
  const trial = trialOf(shoe, order);
  worked.set(shoe, { order, trial });
  return trial;
}
const worked = new WeakMap<RockerShoe, { readonly order: WedgeOrder; readonly trial: Trial | NoTrial }>();

/** Solved anew each time. */
export function trialOf(shoe: RockerShoe, order: WedgeOrder): Trial | NoTrial {
  const given = caseOf(shoe), setting = settingOf(given, shoe.fitting.foot?.joint), variants = variantsOf(given, order);
  const alone = variants.map((variant) => ({ variant, sole: solveVariant(setting, variant) }));
  const leftOut = alone.flatMap(({ variant, sole }) => sole instanceof Infeasible ? [leftOutOf(setting, variant, sole)] : []);
  const least = Math.max(...alone.flatMap(({ sole }) => sole instanceof Infeasible ? [] : [seatOf(sole)]));
  const together = overOneBase(setting, alone.flatMap(({ variant, sole }) => sole instanceof Infeasible ? [] : [variant]), least);
  if (together instanceof Infeasible) return { leftOut, why: together.message };
  return { ...together, leftOut: [...leftOut, ...together.leftOut], higher: together.seat - seatOf(shoe) };
}

const leftOutOf = (setting: TrialSetting, variant: Variant, { message: why }: Infeasible, seat?: Mm): LeftOut =>
  ({ variant, why, works: nearestWorking((change) => !(solveVariant(setting, change, seat) instanceof Infeasible), variant) });

/** Seat heights are told in tenths; the trial is raised by what its base lacks, which is hardly ever needed twice. */
const TENTH: Mm = 0.1, TRIES = 6;
const upToTenth = (height: Mm): Mm => Number((Math.ceil(height / TENTH - 1e-6) * TENTH).toFixed(1));

/** Raises all shapes alike until the base between them and the stiffener is thick enough. */
function overOneBase(setting: TrialSetting, variants: readonly Variant[], least: Mm): Omit<Trial, 'higher'> | Infeasible {
  let seat = upToTenth(least), found = atSeat(setting, variants, seat);
  for (let i = 0; i < TRIES && !(found instanceof Infeasible) && found.baseLeft < BASE_LEAST - 1e-6; i++) {
    seat = upToTenth(seat + BASE_LEAST - found.baseLeft);
    found = atSeat(setting, variants, seat);
  }
  return found;
}

function atSeat(setting: TrialSetting, variants: readonly Variant[], seat: Mm): Omit<Trial, 'higher'> | Infeasible {
  const solved = variants.map((variant) => ({ variant, sole: solveVariant(setting, variant, seat) }));
  const shapes = solved.flatMap(({ variant, sole }): TrialShape[] => sole instanceof Infeasible ? [] : [{ variant, sole }]);
  const leftOut = solved.flatMap(({ variant, sole }) => sole instanceof Infeasible ? [leftOutOf(setting, variant, sole, seat)] : []);
  const planned = shapes.find(({ variant }) => variant.planned)?.sole;
  if (!planned) return new Infeasible('NO_BUILD', 'the sole as planned cannot stand as high as the shapes beside it need', []);
  const setIn = leastSetIn(planned, shapes.map(({ sole }) => sole));
  if (setIn === undefined) return new Infeasible('TOE_ARC_TOO_TIGHT', 'the shapes lie so far apart, and the toe arc is so tight, that no base goes into all of them', []);
  const base = offsetInward(planned.shape.face, setIn), baseRim = orInfeasible(() => groundRim(planned.shape, base));
  return baseRim instanceof Infeasible ? baseRim : { shapes, leftOut, seat, setIn, planned, base, baseRim, baseLeft: baseLeft(planned, base) };
}
