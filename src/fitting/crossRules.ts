import type { Complain, Path } from './faults.ts';
import type { Fitting, Foot, LastMeasures, LegDifference, Override, SheetMatch, ShoeFitting, ToeOrder } from './fitting.ts';
import { SIDES, type ToeRuleName } from './words.ts';

/** Rules between fields. A value that could not be read is NaN here, and no comparison with it holds or complains. */

/** A measured list of heights may end this far short of the last's ends: a reading taken beside the feather line. */
const HEIGHTS_SHORT = 1;
/** The hip stands at least this many pivot heights up; less and two fields were swapped. */
const HIP_OVER_PIVOT = 3;

const tenths = (x: number): number => Number(x.toFixed(1));

function lastRules(last: LastMeasures, at: Path, complain: Complain): void {
  const { length, seatLength, tread, heights } = last;
  if (seatLength.value >= tread.value) complain([...at, 'seatLength'], 'must be less than the tread: the seat ends behind the ball', '', tenths(seatLength.value));
  if (tread.value >= length.value) complain([...at, 'tread'], 'must be less than the length of the last', '', tenths(tread.value));
  if (heights) heightRules(heights, length.value, [...at, 'heights'], complain);
}

function heightRules(heights: readonly (readonly [number, number])[], length: number, at: Path, complain: Complain): void {
  if (heights.length < 3) complain(at, 'must have at least 3 pairs');
  const back = heights.findIndex(([x], i) => i > 0 && x <= heights[i - 1]![0]);
  if (back > 0) complain([...at, back, 0], 'must lie further forward than the pair before it');
  const first = heights[0]?.[0] ?? NaN, end = heights.at(-1)?.[0] ?? NaN;
  if (first > HEIGHTS_SHORT || end < length - HEIGHTS_SHORT)
    complain(at, `must cover the last from 0 to its length, ${tenths(length)} mm, within ${HEIGHTS_SHORT} mm`);
}

/** Where the balls lie, on the foot that was measured or on the last. */
function ballRules(last: LastMeasures, at: readonly [inner: Path, outer: Path], complain: Complain): void {
  const { innerBall, outerBall, seatLength, length } = last;
  for (const [ball, path] of [[innerBall, at[0]], [outerBall, at[1]]] as const) {
    if (ball.value <= seatLength.value || ball.value >= length.value)
      complain(path, `must put the ball between the seat's end, ${tenths(seatLength.value)} mm, and the tip, ${tenths(length.value)} mm`, '', tenths(ball.value));
  }
  if (outerBall.value > innerBall.value) complain(at[1], 'must not be more than ballInner: the little-toe joint lies further back', '', tenths(outerBall.value));
}

function footRules(foot: Foot, last: LastMeasures, side: string, complain: Complain): void {
  const { pivotForward, pivotHeight, hipHeight, ballInner, length } = foot, at = [side, 'foot'];
  const needed = length.value - last.heelBack.value;
  if (last.length.value < needed) complain([side, 'last', 'length'], `must be at least foot length less heelBack, ${tenths(needed)} mm`, '', tenths(last.length.value));
  if (pivotForward.value >= ballInner.value) complain([...at, 'pivotForward'], 'must be less than the ball length: the ankle stands behind the ball', '', tenths(pivotForward.value));
  if (hipHeight.value <= HIP_OVER_PIVOT * pivotHeight.value)
    complain([...at, 'hipHeight'], `must be more than ${HIP_OVER_PIVOT} times the pivot height`, 'Were hip and ankle swapped?', tenths(hipHeight.value));
}

/** Each toe rule works from one number of its own, or from none. */
const OWN_NUMBER = { radius: 'given', toeSpring: 'for-toe-spring', toeOff: 'for-toe-off' } as const satisfies Record<string, ToeRuleName>;
const SHEET_NAME = { radius: 'radius', toeSpring: 'toeSpring', toeOff: 'toeOffAngle' } as const;

function toeRules(toe: ToeOrder, at: Path, complain: Complain): void {
  for (const name of ['radius', 'toeSpring', 'toeOff'] as const) {
    const place = [...at, SHEET_NAME[name]];
    if (toe.rule === OWN_NUMBER[name] && toe[name] === undefined) complain(place, `must be given with rule "${toe.rule}"`);
    if (toe.rule !== OWN_NUMBER[name] && toe[name] !== undefined)
      complain(place, `must be left out with rule "${toe.rule}"`, `It goes with rule "${OWN_NUMBER[name]}".`);
  }
}

function matchRoom({ tip, outsole, seatHeightNow, ballHeightNow }: SheetMatch, at: Path, complain: Complain): void {
  if (tip < outsole.thickness) complain([...at, 'tip'], `must be at least the outsole, ${tenths(outsole.thickness)} mm`, '', tip);
  if (ballHeightNow.value > seatHeightNow.value) complain([...at, 'ballHeightNow'], 'must not be more than seatHeightNow: a shoe that is higher at the ball is not matched');
}

function shoeRules({ side, foot, last, order }: ShoeFitting, complain: Complain): void {
  const at = [side, 'order'];
  lastRules(last, [side, 'last'], complain);
  const lastLength: Path = [side, 'last', 'length'];
  ballRules(last, foot ? [[side, 'foot', 'ballInner'], [side, 'foot', 'ballOuter']] : [lastLength, lastLength], complain);
  if (foot) footRules(foot, last, side, complain);
  if (order.kind === 'rocker') toeRules(order.toe, [...at, 'toe'], complain);
  else matchRoom(order, at, complain);
}

function legRules({ correct, shorter, found }: LegDifference, complain: Complain): void {
  const at = ['wearer', 'legDifference'];
  if (correct > 0 && shorter === undefined) complain([...at, 'shorter'], 'must be given where a difference is to be corrected');
  if (correct > 0 && found === 'none found') complain([...at, 'correct'], 'must be 0 where no difference was found');
}

function overrideRules(overrides: readonly Override[], { shoes }: Fitting, complain: Complain): void {
  overrides.forEach(({ code, side }, i) => {
    if (overrides.findIndex((other) => other.code === code && other.side === side) < i)
      complain(['overrides', i, 'code'], `must be overridden only once${side ? ` for the ${side} shoe` : ''}`);
    if (side && !shoes[side]) complain(['overrides', i, 'side'], 'must be the side of a shoe on this sheet');
  });
}

/** Holds the fields of a fitting against each other and complains of every rule that is broken. */
export function checkRules(fitting: Fitting, complain: Complain): void {
  for (const side of SIDES) {
    const shoe = fitting.shoes[side];
    if (shoe) shoeRules(shoe, complain);
  }
  legRules(fitting.wearer.legDifference, complain);
  overrideRules(fitting.overrides, fitting, complain);
}
