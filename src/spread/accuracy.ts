import type { ShoeFitting } from '../fitting/fitting.ts';
import { isEstimated, type Measure } from '../fitting/measure.ts';
import { degrees } from '../geometry/units.ts';
import { INPUT_FIELDS, inputOf, type InputField } from '../checks/inputs.ts';

/**
 * How far off a measure may be: one standard deviation, so that two readings of three lie within it. Where from: the maker
 * typed it; the usual of how it is taken; the rule of an estimate.
 */
export interface Accuracy { readonly deviation: number; readonly from: 'typed' | 'usual' | 'rule' }

/** In mm or degrees: the ± that the trade says of a reading, and of what is taken where nobody measured and the rule gives no error of its own. */
interface Usual { readonly read: number; readonly guessed?: number }

/**
 * What the trade says of each way of measuring, as limits. Common practice of the trade; goniometer ±3 to 5°, plates and plumb line
 * about ±0.7° together.
 */
const USUAL: Readonly<Record<InputField, Usual>> = {
  'foot.length': { read: 1.5 }, 'foot.ballInner': { read: 4 }, 'foot.ballOuter': { read: 4, guessed: 12 },
  'foot.pivotForward': { read: 4 }, 'foot.pivotHeight': { read: 4 }, 'foot.hipHeight': { read: 15 },
  'foot.ankleAngle': { read: 4 }, 'foot.hipAhead': { read: 10 },
  'foot.heelPlates.height': { read: 1 }, 'foot.heelPlates.span': { read: 3 }, 'foot.heelPlates.hipAhead': { read: 10 },
  'foot.prosthesis.heelRise': { read: 1 }, 'foot.prosthesis.shankLean': { read: 2, guessed: 4 },
  'foot.strikeAngle': { read: 3, guessed: 6 }, 'foot.toeOffAngle': { read: 3 }, 'foot.ankleRange': { read: 4 },
  'foot.walk.angles.contact': { read: 3 }, 'foot.walk.angles.midStance': { read: 3 }, 'foot.walk.angles.toeOff': { read: 3 },
  'last.length': { read: 0.5, guessed: 5 }, 'last.pitch': { read: 1, guessed: 6 }, 'last.toeSpring': { read: 1, guessed: 6 },
  'last.seatLength': { read: 2, guessed: 10 }, 'last.tread': { read: 2, guessed: 6 }, 'last.heelBack': { read: 2, guessed: 6 },
  'last.camber': { read: 0.5, guessed: 2 }, 'last.ballWidth': { read: 1, guessed: 9 }, 'last.heelWidth': { read: 1, guessed: 9 },
  'last.innerBall': { read: 4, guessed: 12 }, 'last.outerBall': { read: 4, guessed: 12 }, 'last.inflare': { read: 1, guessed: 6 },
  'last.insole': { read: 0.5, guessed: 2 }, 'order.seatHeightNow': { read: 1 }, 'order.ballHeightNow': { read: 1 },
};

/** A ± said at the bench is a limit that hardly a reading passes: it counts as two standard deviations. Common practice. */
const IN_A_LIMIT = 2;

/** How far off a measure of a shoe may be, mm or radians; undefined where the shoe has no such measure. */
export function accuracyOf(field: InputField, shoe: ShoeFitting): Accuracy | undefined {
  const typed = inputOf(field).of(shoe)?.accuracy;
  return typed === undefined ? untoldAccuracy(field, shoe) : { deviation: typed, from: 'typed' };
}

/** What counts where the maker types none. */
export function untoldAccuracy(field: InputField, shoe: ShoeFitting): Accuracy | undefined {
  const { of, unit } = inputOf(field), measure = of(shoe);
  if (!measure) return undefined;
  if (measure.error !== undefined) return { deviation: measure.error, from: 'rule' };
  const limit = isFromPlates(field, shoe) ? ON_PLATES : usualLimit(field, measure), deviation = limit / IN_A_LIMIT / (measure.twice ? Math.SQRT2 : 1);
  return { deviation: unit === 'deg' ? degrees(deviation) : deviation, from: 'usual' };
}

/** Of an angle found on plates with a plumb line, of which only the angle was written down. */
const ON_PLATES = 0.7;

const isFromPlates = (field: InputField, { foot }: ShoeFitting): boolean =>
  field === 'foot.ankleAngle' && foot?.stance.kind === 'locked' && foot.stance.found === 'heel plates and plumb line';

/** An estimate from another reading, like the pivot above the ankle bone, is as sure as that reading. */
function usualLimit(field: InputField, measure: Measure): number {
  const { read, guessed } = USUAL[field];
  return isEstimated(measure) ? guessed ?? read : read;
}

/** What tells how the client walks changes no shoe. */
const OF_THE_WALK: ReadonlySet<InputField> = new Set(['foot.toeOffAngle', 'foot.ankleRange', 'foot.walk.angles.contact', 'foot.walk.angles.midStance', 'foot.walk.angles.toeOff']);

/** The measures of a shoe that err by themselves. What is worked out from others (joints of the foot carried to the last, an angle from plates or an alignment) errs with them. */
export function erringFields(shoe: ShoeFitting): readonly InputField[] {
  return INPUT_FIELDS.filter((field) => !OF_THE_WALK.has(field) && inputOf(field).of(shoe) && !isWorkedOut(field, shoe));
}

function isWorkedOut(field: InputField, { foot }: ShoeFitting): boolean {
  if (!foot) return false;
  if (field === 'last.innerBall' || field === 'last.outerBall') return true;
  return field === 'foot.ankleAngle' && (foot.heelPlates !== undefined || foot.prosthesis !== undefined);
}
