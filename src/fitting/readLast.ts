import type { Readable } from './checkShape.ts';
import type { Complain, Path } from './faults.ts';
import type { LastMeasures } from './fitting.ts';
import {
  ballWidthFor, heelWidthFor, LAST_DEFAULTS, lastLengthFor, seatLengthFor, shareOfLast, treadFor,
} from './estimates.ts';
import type { Measure } from './measure.ts';
import type { RawShoe } from './schema.ts';
import { ALLOWANCE } from './sizes.ts';
import { allowanceOf, given, taken, takenIf, takenLength } from './taken.ts';

type RawLast = Readable<RawShoe['last']>;
type RawFootLength = Readable<NonNullable<RawShoe['foot']>>['length'];

/** What the foot lends to its last. */
export interface FootLengths { readonly length: Measure; readonly ballInner: Measure; readonly ballOuter: Measure }

/** Last length: measured, or from the size the foot was given in, or foot length and allowance. */
function lengthOf(raw: RawLast, foot: FootLengths | undefined, footLength: RawFootLength, at: Path, complain: Complain): Measure {
  if (raw.length !== undefined) return takenLength(raw.length, 'last');
  if (foot) return lastLengthFor(foot.length.value, allowanceOf(footLength) ?? ALLOWANCE);
  complain([...at, 'length'], 'must be given: without a foot there is nothing to estimate the last from');
  return taken(NaN);
}

/** Pitch and spring decide the rocker, so only a match may do without. */
function decisive(raw: RawLast, name: 'pitch' | 'toeSpring', instead: Measure | undefined, at: Path, complain: Complain): Measure {
  const measured = takenIf(raw[name]) ?? instead;
  if (measured) return measured;
  complain([...at, name], `must be given: a rocker follows the last, and its ${name === 'pitch' ? 'pitch' : 'toe spring'} cannot be guessed`);
  return taken(NaN);
}

/** A ball length carried from the foot onto the last. */
const onLast = (ball: Measure, heelBack: Measure): Measure =>
  ({ ...ball, value: ball.value - heelBack.value, rule: ball.rule ?? 'ball length of the foot less heelBack' });

function widthsOf(raw: RawLast, foot: FootLengths | undefined, length: number): Pick<LastMeasures, 'ballWidth' | 'heelWidth'> {
  return {
    ballWidth: takenIf(raw.ballWidth) ?? (foot ? ballWidthFor(foot.length.value) : shareOfLast('ballWidth', length)),
    heelWidth: takenIf(raw.heelWidth) ?? (foot ? heelWidthFor(foot.length.value) : shareOfLast('heelWidth', length)),
  };
}

function ballsOf(foot: FootLengths | undefined, heelBack: Measure, length: number): Pick<LastMeasures, 'innerBall' | 'outerBall'> {
  if (!foot) return { innerBall: shareOfLast('innerBall', length), outerBall: shareOfLast('outerBall', length) };
  return { innerBall: onLast(foot.ballInner, heelBack), outerBall: onLast(foot.ballOuter, heelBack) };
}

/** The last of one shoe, with what was not measured estimated; complains of what may not be. */
export function readLast(shoe: Readable<RawShoe>, foot: FootLengths | undefined, side: string, complain: Complain): LastMeasures {
  const raw: RawLast = shoe.last ?? {}, at: Path = [side, 'last'], isMatch = shoe.order?.kind === 'match';
  const length = lengthOf(raw, foot, shoe.foot?.length, at, complain);
  const heelBack = takenIf(raw.heelBack) ?? LAST_DEFAULTS.heelBack;
  return {
    length,
    pitch: decisive(raw, 'pitch', isMatch ? LAST_DEFAULTS.matchPitch : undefined, at, complain),
    toeSpring: decisive(raw, 'toeSpring', isMatch ? LAST_DEFAULTS.matchToeSpring : undefined, at, complain),
    seatLength: takenIf(raw.seatLength) ?? seatLengthFor(length.value),
    tread: takenIf(raw.tread) ?? treadFor(length.value),
    heelBack,
    camber: takenIf(raw.camber) ?? LAST_DEFAULTS.camber,
    ...widthsOf(raw, foot, length.value),
    ...ballsOf(foot, heelBack, length.value),
    inflare: takenIf(raw.inflare) ?? LAST_DEFAULTS.inflare,
    insole: takenIf(raw.insole) ?? LAST_DEFAULTS.insole,
    toeShape: raw.toeShape ?? 'round',
    ...given({ heights: raw.heights }),
  };
}
