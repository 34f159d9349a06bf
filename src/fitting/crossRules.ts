import { asTyped, lengthWords, roundedUp, type SheetUnits } from './convert.ts';
import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { Fitting, Foot, LastMeasures, LegDifference, Override, SheetMatch, ShoeFitting, ToeOrder } from './fitting.ts';
import { ballRules, lastRules, seatBehindBall } from './lastRules.ts';
import { targetRules } from './targetRules.ts';
import { packRules } from './stiffenerRules.ts';
import type { Making } from './making.ts';
import { inDegrees } from '../geometry/units.ts';
import { SIDES, type ToeRuleName } from './words.ts';

/** Rules between fields. A value that could not be read is NaN here, and no comparison with it holds or complains. */

/** The hip stands at least this many pivot heights up; less and two fields were swapped. */
const HIP_OVER_PIVOT = 3;

function footRules(foot: Foot, last: LastMeasures, side: string, units: SheetUnits, complain: Complain): void {
  const { pivotForward, pivotHeight, hipHeight, ballInner, length } = foot, at = [side, 'foot'];
  const needed = length.value - last.heelBack.value, least = HIP_OVER_PIVOT * pivotHeight.value;
  if (last.length.value < needed)
    complain([side, 'last', 'length'], `must be at least foot length less heelBack, ${lengthWords([roundedUp(needed, units)], units)}`, '', asTyped(last.length.value, units));
  if (pivotForward.value >= ballInner.value)
    complain([...at, 'pivotForward'], 'must be less than the ball length: the ankle stands behind the ball', '', asTyped(pivotForward.value, units));
  if (hipHeight.value <= least)
    complain([...at, 'hipHeight'], `must be more than ${HIP_OVER_PIVOT} times the pivot height, ${lengthWords([least], units)}`, 'Were hip and ankle swapped?', asTyped(hipHeight.value, units));
}

/** Each toe rule works from one number of its own, or from none. */
const OWN_NUMBER = { radius: 'given', toeSpring: 'for-toe-spring', toeOff: 'for-toe-off' } as const satisfies Record<string, ToeRuleName>;
const SHEET_NAME = { radius: 'radius', toeSpring: 'toeSpring', toeOff: 'toeOffAngle' } as const;

function toeRules(toe: ToeOrder, at: Path, complain: Complain): void {
  for (const name of ['radius', 'toeSpring', 'toeOff'] as const) {
    const place = [...at, SHEET_NAME[name]];
    if (toe.rule === OWN_NUMBER[name] && toe[name] === undefined) complain(place, `must be given with rule "${toe.rule}"`);
    if (toe.rule !== OWN_NUMBER[name] && toe[name] !== undefined)
      complain(place, `${LEAVE_OUT} with rule "${toe.rule}"`, `It goes with rule "${OWN_NUMBER[name]}".`);
  }
  if (toe.rule === 'for-toe-off' && toe.endAngle! < toe.toeOff!)
    complain([...at, 'endAngle'], 'must not be less than toeOffAngle, or the toe never turns so far', '', Number(inDegrees(toe.endAngle!).toFixed(1)));
}

function matchRoom({ tip, outsole, seatHeightNow, ballHeightNow }: SheetMatch, at: Path, units: SheetUnits, complain: Complain): void {
  if (tip !== undefined && tip < outsole.thickness) complain([...at, 'tip'], `must be at least the outsole, ${lengthWords([roundedUp(outsole.thickness, units)], units)}`);
  if (ballHeightNow.value > seatHeightNow.value) complain([...at, 'ballHeightNow'], 'must not be more than seatHeightNow: a shoe that is higher at the ball is not matched');
}

function shoeRules({ side, foot, last, order }: ShoeFitting, units: SheetUnits, complain: Complain): void {
  const at = [side, 'order'];
  lastRules(last, [side, 'last'], units, complain);
  if (foot) ballRules(last, { inner: [side, 'foot', 'ballInner'], outer: [side, 'foot', 'ballOuter'], behind: last.heelBack.value }, units, complain);
  else seatBehindBall(last, [side, 'last', 'seatLength'], units, complain);
  if (foot) footRules(foot, last, side, units, complain);
  if (order.kind === 'rocker') toeRules(order.toe, [...at, 'toe'], complain);
  if (order.kind === 'rocker' && order.targets) targetRules(order.targets, { last, at: [...at, 'targets'], complain });
  if (order.kind === 'rocker' && order.pack) packRules(order.pack, { length: last.length.value }, [...at, 'stiffener'], units, complain);
  if (order.kind === 'match') matchRoom(order, at, units, complain);
}

function legRules({ correct, shorter, found }: LegDifference, complain: Complain): void {
  const at = ['wearer', 'legDifference'];
  if (correct !== 0 && shorter === undefined) complain([...at, 'shorter'], 'must be given where a difference is to be corrected');   // a number that could not be read is no 0
  if (correct > 0 && found === 'none found') complain([...at, 'correct'], 'must be 0 where no difference was found');
}

function overrideRules(overrides: readonly Override[], { shoes }: Fitting, complain: Complain): void {
  overrides.forEach(({ code, side }, i) => {
    if (overrides.findIndex((other) => other.code === code && other.side === side) < i)
      complain(['overrides', i, 'code'], `must be taken on a name only once${side ? ` for the ${side} shoe` : ''}`);
    if (side && !shoes[side]) complain(['overrides', i, 'side'], 'must be the side of a shoe on this sheet');
  });
}

/** A pack is reckoned for the weight it carries. */
function massRule({ shoes, wearer }: Fitting, complain: Complain): void {
  if (wearer.mass === undefined && SIDES.some((side) => { const order = shoes[side]?.order; return order?.kind === 'rocker' && order.pack; }))
    complain(['wearer', 'mass'], 'must be given where a stiffener is wanted or laid: its plies are worked out for it');
}

/** A stack takes sheets for its zones by the names the rack gives them. */
function stackRules({ stack, rack }: Making, complain: Complain): void {
  for (const zone of ['heel', 'forepart'] as const) {
    const name = stack?.[zone];
    if (name !== undefined && rack.every((sheet) => sheet.name !== name))
      complain(['making', 'stack', zone], `must be the name of a sheet in the rack: ${rack.map((sheet) => sheet.name).join(', ')}`, '', name);
  }
}

/** Papers and zones tell the sheets of the rack by their names alone. */
function rackRules({ rack }: Making, complain: Complain): void {
  rack.forEach(({ name }, i) => {
    if (rack.findIndex((other) => other.name === name) < i)
      complain(['making', 'rack', i, 'name'], 'must be the name of this sheet alone', 'Another sheet of the rack has it: put thickness or size into both names.', name);
  });
}

/** Holds the fields of a fitting against each other and complains, in the units spoken, of every rule that is broken. */
export function checkRules(fitting: Fitting, spoken: SheetUnits, complain: Complain): void {
  for (const side of SIDES) {
    const shoe = fitting.shoes[side];
    if (shoe) shoeRules(shoe, spoken, complain);
  }
  massRule(fitting, complain);
  legRules(fitting.wearer.legDifference, complain);
  overrideRules(fitting.overrides, fitting, complain);
  stackRules(fitting.making, complain);
  rackRules(fitting.making, complain);
}
