import type { InputField } from '../checks/inputs.ts';
import { ballInnerFor, ballOuterFor, ballWidthFor, heelWidthFor, pivotForwardFor, seatLengthFor, shareOfLast, treadFor } from '../fitting/estimates.ts';
import type { Foot, LastMeasures, ShoeFitting, Stance } from '../fitting/fitting.ts';
import { isEstimated, type Measure } from '../fitting/measure.ts';
import { alignedAngle, plateAngle } from '../fitting/readStance.ts';
import { degrees, type Rad } from '../geometry/units.ts';

/** How far measures are off, by their place on the sheet; mm and radians. */
export type Off = Partial<Readonly<Record<InputField, number>>>;

type Rule = (from: number) => Measure;
type Shift = (field: InputField, measure: Measure, follows?: readonly [was: number, is: number, rule: Rule]) => Measure;

/** A measure moved by its own error, and where it was estimated from another one, as its rule has it follow that. */
const shiftBy = (off: Off): Shift => (field, measure, follows) => {
  const own = off[field] ?? 0, [was, is, rule] = follows ?? [0, 0, undefined];
  const followed = rule && was !== is && isEstimated(measure) ? rule(is).value - rule(was).value : 0;
  return own === 0 && followed === 0 ? measure : { ...measure, value: measure.value + own + followed };
};

/** The same shoe had its measures been read that far off. What was estimated from a reading goes along with it. */
export function shoeOff(shoe: ShoeFitting, off: Off): ShoeFitting {
  const shift = shiftBy(off), { foot: was } = shoe, lengths = was && footOff(was, shift), last = lastOff(shoe, lengths, shift), { order } = shoe;
  const foot = lengths && { ...lengths, stance: stanceOff(lengths, last, shift) };
  return {
    ...shoe, last, ...(foot ? { foot } : {}),
    order: order.kind === 'match' ? { ...order, seatHeightNow: shift('order.seatHeightNow', order.seatHeightNow), ballHeightNow: shift('order.ballHeightNow', order.ballHeightNow) } : order,
  };
}

/** No bottom is dished the other way round, and a heel strikes before it stands. */
const atLeast = (least: number, measure: Measure): Measure => (measure.value >= least ? measure : { ...measure, value: least });
const LEAST_STRIKE: Rad = degrees(1);

function footOff(foot: Foot, shift: Shift): Foot {
  const length = shift('foot.length', foot.length), from = (rule: Rule) => [foot.length.value, length.value, rule] as const;
  return {
    ...foot, length,
    ballInner: shift('foot.ballInner', foot.ballInner, from(ballInnerFor)), ballOuter: shift('foot.ballOuter', foot.ballOuter, from(ballOuterFor)),
    pivotForward: shift('foot.pivotForward', foot.pivotForward, from(pivotForwardFor)), pivotHeight: shift('foot.pivotHeight', foot.pivotHeight),
    hipHeight: shift('foot.hipHeight', foot.hipHeight), strikeAngle: atLeast(LEAST_STRIKE, shift('foot.strikeAngle', foot.strikeAngle)),
    ...(foot.heelPlates ? { heelPlates: {
      height: shift('foot.heelPlates.height', foot.heelPlates.height), span: shift('foot.heelPlates.span', foot.heelPlates.span),
      hipAhead: shift('foot.heelPlates.hipAhead', foot.heelPlates.hipAhead),
    } } : {}),
    ...(foot.prosthesis ? { prosthesis: {
      ...foot.prosthesis, heelRise: shift('foot.prosthesis.heelRise', foot.prosthesis.heelRise), shankLean: shift('foot.prosthesis.shankLean', foot.prosthesis.shankLean),
    } } : {}),
  };
}

/** Foot length and allowance make the length of a last that was not measured. */
const asLong: Rule = (value) => ({ value, origin: 'estimated' });

function lastOff({ foot: was, last }: ShoeFitting, foot: Foot | undefined, shift: Shift): LastMeasures {
  const byFoot = (rule: Rule) => (was && foot ? [was.length.value, foot.length.value, rule] as const : undefined);
  const length = shift('last.length', last.length, byFoot(asLong)), byLength = (rule: Rule) => [last.length.value, length.value, rule] as const;
  const byOne = (rule: Rule, name: 'ballWidth' | 'heelWidth') => byFoot(rule) ?? byLength((x) => shareOfLast(name, x));
  const heelBack = shift('last.heelBack', last.heelBack), back = heelBack.value - last.heelBack.value;
  const joint = (measure: Measure, before: Measure, now: Measure): Measure => ({ ...measure, value: measure.value + now.value - before.value - back });
  return {
    ...last, length, heelBack,
    pitch: shift('last.pitch', last.pitch), toeSpring: shift('last.toeSpring', last.toeSpring),
    seatLength: shift('last.seatLength', last.seatLength, byLength(seatLengthFor)), tread: shift('last.tread', last.tread, byLength(treadFor)),
    camber: atLeast(0, shift('last.camber', last.camber)), inflare: shift('last.inflare', last.inflare), insole: shift('last.insole', last.insole),
    ballWidth: shift('last.ballWidth', last.ballWidth, byOne(ballWidthFor, 'ballWidth')), heelWidth: shift('last.heelWidth', last.heelWidth, byOne(heelWidthFor, 'heelWidth')),
    ...(was && foot ? { innerBall: joint(last.innerBall, was.ballInner, foot.ballInner), outerBall: joint(last.outerBall, was.ballOuter, foot.ballOuter) } : {}),
  };
}

/** The angle of a locked ankle as it was found: read, worked out from plates over the leg, or from an alignment over the last. */
function stanceOff(foot: Foot, last: LastMeasures, shift: Shift): Stance {
  const { stance } = foot;
  if (stance.kind === 'free') return { ...stance, hipAhead: shift('foot.hipAhead', stance.hipAhead) };
  const at = (value: Rad): Stance => ({ ...stance, ankleAngle: { ...stance.ankleAngle, value } });
  if (foot.heelPlates) return at(plateAngle(foot.heelPlates, foot.hipHeight.value - foot.pivotHeight.value));
  return foot.prosthesis ? at(alignedAngle(foot.prosthesis, last)) : { ...stance, ankleAngle: shift('foot.ankleAngle', stance.ankleAngle) };
}
