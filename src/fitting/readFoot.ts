import {
  ballInnerFor, ballOuterFor, DEFAULT_STRIKE, hipHeightFor, pivotForwardFor, pivotHeightAbove, pivotHeightFor,
} from './estimates.ts';
import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { Foot, HeelPlates, LastMeasures, Wearer } from './fitting.ts';
import type { Measure } from './measure.ts';
import type { FootLengths } from './readLast.ts';
import { readWalk } from './readWalk.ts';
import { readProsthesis, readStance, type Ankle, type RawFoot } from './readStance.ts';
import { given, taken, takenIf, takenLength } from './taken.ts';
import type { Joint, JointState } from './words.ts';

const UNREAD = taken(NaN);

/** Foot and ball lengths, which the last needs before the rest of the foot can be read. */
export function readFootLengths(raw: RawFoot): FootLengths {
  const length = takenLength(raw.length ?? NaN, 'foot');
  return {
    length,
    ballInner: takenIf(raw.ballInner) ?? ballInnerFor(length.value),
    ballOuter: takenIf(raw.ballOuter) ?? ballOuterFor(length.value),
  };
}

function ankleOf(joint: Joint, state: JointState): Ankle {
  if (state === 'prosthetic') return 'prosthetic';
  return joint === 'ankle' || joint === 'whole foot' ? 'fixed' : 'free';
}

/** A measure without which nothing can be computed, or NaN and a complaint that says what to give. */
function needed(measure: Measure | undefined, path: Path, rule: string, complain: Complain): Measure {
  if (measure) return measure;
  complain(path, rule);
  return UNREAD;
}

const LOCKED_PIVOT = 'must be measured where the ankle must not bend: the heel arc is struck from the ankle pivot, and no rule places it well enough';

function pivotOf(raw: RawFoot, ankle: Ankle, footLength: number, wearer: Wearer, at: Path, complain: Complain): Pick<Foot, 'pivotForward' | 'pivotHeight'> {
  const above = raw.malleolusHeight === undefined ? undefined : pivotHeightAbove(taken(raw.malleolusHeight));
  const forward = takenIf(raw.pivotForward), height = takenIf(raw.pivotHeight) ?? above;
  if (ankle !== 'free') return {
    pivotForward: needed(forward, [...at, 'pivotForward'], LOCKED_PIVOT, complain),
    pivotHeight: needed(height, [...at, 'pivotHeight'], `${LOCKED_PIVOT}; or give malleolusHeight`, complain),
  };
  return {
    pivotForward: forward ?? pivotForwardFor(footLength),
    pivotHeight: needed(height ?? pivotHeightFor(wearer), [...at, 'pivotHeight'], 'must be given, or malleolusHeight, or wearer.stature to estimate it from', complain),
  };
}

function platesOf({ heelPlates }: RawFoot, ankle: Ankle): HeelPlates | undefined {
  if (heelPlates === undefined || ankle !== 'fixed') return undefined;
  const { height, span, hipAhead } = heelPlates;
  return { height: taken(height ?? NaN), span: taken(span ?? NaN), hipAhead: taken(hipAhead ?? NaN) };
}

function rangeLeft({ ankleRange }: RawFoot, ankle: Ankle, at: Path, complain: Complain): Measure | undefined {
  if (ankleRange !== undefined && ankle === 'free') complain([...at, 'ankleRange'], `${LEAVE_OUT}: it belongs to an ankle that must not bend`, 'Here the ankle is free.');
  return takenIf(ankleRange);
}

/**
 * One foot with what was not measured estimated; complains of what may not be.
 * Undefined when the sheet does not say what must not bend: everything else hangs on that.
 */
export function readFoot(raw: RawFoot, lengths: FootLengths, wearer: Wearer, last: LastMeasures, side: string, complain: Complain): Foot | undefined {
  const at: Path = [side, 'foot'], { joint, state } = raw.stiff ?? {};
  if (joint === undefined || state === undefined) return undefined;
  if (state === 'prosthetic' && joint !== 'whole foot')
    complain([...at, 'stiff', 'joint'], 'must be "whole foot" where the state is prosthetic');
  const ankle = ankleOf(joint, state);
  const pivot = pivotOf(raw, ankle, lengths.length.value, wearer, at, complain);
  const hipHeight = needed(takenIf(raw.hipHeight) ?? hipHeightFor(wearer), [...at, 'hipHeight'],
    'must be given, or wearer.crotchHeight or wearer.stature to estimate it from', complain);
  const prosthesis = readProsthesis(raw, ankle, at, complain), heelPlates = platesOf(raw, ankle);
  return {
    joint, state, ankleLocked: ankle !== 'free', ...lengths, ...pivot, hipHeight,
    stance: readStance(raw, ankle, { ...pivot, hipHeight, prosthesis, heelPlates }, last, at, complain),
    strikeAngle: takenIf(raw.strikeAngle) ?? DEFAULT_STRIKE,
    ...given({
      toeOffAngle: takenIf(raw.toeOffAngle), prosthesis, heelPlates, malleolusHeight: takenIf(raw.malleolusHeight),
      ankleRange: rangeLeft(raw, ankle, at, complain), walk: readWalk(raw, wearer, at, complain),
    }),
  };
}
