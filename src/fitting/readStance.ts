import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { asin, atan2 } from '../geometry/trig.ts';
import type { Readable } from './checkShape.ts';
import { DEFAULT_SHANK_LEAN, HIP_AHEAD } from './estimates.ts';
import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { Foot, HeelPlates, LastMeasures, Prosthesis, Stance } from './fitting.ts';
import type { Measure } from './measure.ts';
import { RANGES } from './ranges.ts';
import type { RawShoe } from './schema.ts';
import { given, taken, takenIf } from './taken.ts';

export type RawFoot = Readable<NonNullable<RawShoe['foot']>>;
export type Ankle = 'free' | 'fixed' | 'prosthetic';

/** Fields that decide where the hip stands over the ankle; each goes with one kind of ankle. */
const HOME = { hipAhead: 'free', ankleAngle: 'fixed', heelPlates: 'fixed', prosthesis: 'prosthetic' } as const satisfies Record<string, Ankle>;

const HOME_WORDS: Record<Ankle, string> = {
  free: 'an ankle that is free to bend', fixed: 'an ankle that must not bend', prosthetic: 'a prosthetic foot',
};
const INSTEAD: Record<Ankle, string> = {
  free: 'Here the ankle is free: give hipAhead, or leave it out.',
  fixed: 'Here the ankle stands at one angle, and the hip follows from it: give heelPlates or ankleAngle.',
  prosthetic: 'Here the angle follows from how the foot was aligned: give prosthesis.heelRise.',
};

function refuseStrangers(raw: RawFoot, ankle: Ankle, at: Path, complain: Complain): void {
  for (const field of Object.keys(HOME) as (keyof typeof HOME)[]) {
    if (raw[field] === undefined || HOME[field] === ankle) continue;
    complain([...at, field], `${LEAVE_OUT}: it belongs to ${HOME_WORDS[HOME[field]]}`, INSTEAD[ankle]);
  }
}

const ONE_DEGREE = 'an angle that is 1 degree out moves the standing point by a finger\'s breadth';

/** Lean of the leg on the plates, less the slope of the board. */
export const plateAngle = ({ height, span, hipAhead }: HeelPlates, leg: Mm): Rad => asin(hipAhead.value / leg) - atan2(height.value, span.value);

/** Lean of the shank as aligned, less the tilt of the foot as aligned. */
export const alignedAngle = ({ shankLean, heelRise }: Pick<Prosthesis, 'shankLean' | 'heelRise'>, { tread, seatLength }: LastMeasures): Rad =>
  shankLean.value - atan2(heelRise.value, tread.value - seatLength.value / 2);

function fromPlates(plates: HeelPlates, leg: Mm): Measure {
  const { height, hipAhead } = plates;
  return {
    value: plateAngle(plates, leg),
    origin: 'measured',
    rule: 'asin(hip ahead / leg) − atan(plate height / span)',
    ...(height.twice && hipAhead.twice ? { twice: true } : {}),
  };
}

/** Widest angles an ankle is believed to be fixed at. */
const [LEAST, MOST] = RANGES['foot.ankleAngle'].limits;

/** A computed angle is held to what an ankle can be: plates that give more were read or typed wrongly. */
function platesStance(plates: HeelPlates, leg: number, at: Path, complain: Complain): Stance {
  const ankleAngle = fromPlates(plates, leg), angle = inDegrees(ankleAngle.value);
  const isRead = [leg, plates.height.value, plates.span.value, plates.hipAhead.value].every(Number.isFinite);
  if (isRead && !(angle >= LEAST && angle <= MOST))
    complain([...at, 'heelPlates'], `must give an ankle angle of ${LEAST} to ${MOST} °`, 'Take plates, span and plumb line again.');
  return { kind: 'locked', ankleAngle, found: 'heel plates and plumb line' };
}

/** Angle of an ankle fixed by nature or surgery, from plates and plumb line or from a goniometer. */
function fixedStance({ ankleAngle, heelPlates }: RawFoot, plates: HeelPlates | undefined, leg: number, at: Path, complain: Complain): Stance {
  if (ankleAngle !== undefined && heelPlates !== undefined)
    complain([...at, 'heelPlates'], `${LEAVE_OUT} where ankleAngle is given: two findings of one angle may differ`, 'Give heelPlates or ankleAngle, not both: take the heelPlates block out, or ankleAngle.');
  else if (plates) return platesStance(plates, leg, at, complain);
  else if (ankleAngle === undefined)
    complain([...at, 'ankleAngle'], `must be given, or heelPlates: an ankle that must not bend has one angle, and ${ONE_DEGREE}`);
  const found = typeof ankleAngle === 'object' ? ankleAngle.how : undefined;
  return { kind: 'locked', ankleAngle: taken(ankleAngle ?? NaN), found: found ?? 'goniometer' };
}

/** A prosthetic foot stands in the shoe the way it was aligned: its shank as leaning, its sole as raised at the heel. */
function alignedStance(prosthesis: Prosthesis | undefined, last: LastMeasures): Stance {
  const value = alignedAngle(prosthesis ?? { shankLean: taken(NaN), heelRise: taken(NaN) }, last);
  const rule = 'aligned shank lean − atan(aligned heel rise / (tread − half the seat length))';
  return { kind: 'locked', ankleAngle: { value, origin: 'measured', rule }, found: 'prosthesis alignment' };
}

export function readProsthesis(raw: RawFoot, ankle: Ankle, at: Path, complain: Complain): Prosthesis | undefined {
  if (ankle !== 'prosthetic') return undefined;
  const { heelRise, shankLean, prosthetist } = raw.prosthesis ?? {};
  if (raw.prosthesis === undefined)
    complain([...at, 'prosthesis', 'heelRise'], 'must be given: the heel rise a prosthetic foot was aligned to cannot be guessed');
  return { heelRise: taken(heelRise ?? NaN), shankLean: takenIf(shankLean) ?? DEFAULT_SHANK_LEAN, ...given({ prosthetist }) };
}

/** What is known of the foot before its stance. */
type BeforeStance = Pick<Foot, 'hipHeight' | 'pivotHeight'>
  & { readonly prosthesis: Prosthesis | undefined; readonly heelPlates: HeelPlates | undefined };

/** How the hip stands over the ankle; complains of fields that are missing or belong to another kind of ankle. */
export function readStance(raw: RawFoot, ankle: Ankle, known: BeforeStance, last: LastMeasures, at: Path, complain: Complain): Stance {
  refuseStrangers(raw, ankle, at, complain);
  if (ankle === 'free') return { kind: 'free', hipAhead: takenIf(raw.hipAhead) ?? HIP_AHEAD };
  if (ankle === 'prosthetic') return alignedStance(known.prosthesis, last);
  return fixedStance(raw, known.heelPlates, known.hipHeight.value - known.pivotHeight.value, at, complain);
}
