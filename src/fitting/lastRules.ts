import { steadyCurve } from '../geometry/steadyCurve.ts';
import type { Mm } from '../geometry/units.ts';
import { asTyped, lengthWords, roundedDown, roundedUp, type SheetUnits } from './convert.ts';
import type { Complain, Path } from './faults.ts';
import type { LastMeasures } from './fitting.ts';
import type { Measure } from './measure.ts';

/**
 * Rules between the measures of a last. A value that could not be read is NaN here, and no comparison with it holds or
 * complains. Whatever they let pass has an outline whose sides run forward from heel to tip without folding over.
 */

/** A measured list of heights may end this far short of the last's ends: a reading taken beside the feather line. */
const HEIGHTS_SHORT: Mm = 1;
/** Heights that were measured and a pitch or toe spring that was measured too may differ by this much. */
const HEIGHTS_AGREE: Mm = 3;

/** How far forward the balls lie at least, as shares of the last's length: well ahead of the waist, at 0.42 inside and 0.40 outside. */
const BALL_FROM = { inner: 0.48, outer: 0.46 };
/** The ball is no wider than this share of the last's length; the heel is this share of the ball width or more, and never wider than the ball. */
const BALL_WIDTH_MOST = 0.5, HEEL_WIDTH_LEAST = 0.5;
/** How far the toe may be set aside, as a share of the ball width; an oblique toe is set aside by its shape already. */
const INFLARE_MOST = 1 / 3, INFLARE_MOST_OBLIQUE = 0.2;

/** Room for the rounding of a unit change at the very limit. */
const EPSILON: Mm = 1e-6;

export function lastRules(last: LastMeasures, at: Path, units: SheetUnits, complain: Complain): void {
  const { length, seatLength, tread, heights } = last;
  if (seatLength.value >= tread.value) complain([...at, 'seatLength'], 'must be less than the tread: the seat ends behind the ball', '', asTyped(seatLength.value, units));
  if (tread.value >= length.value) complain([...at, 'tread'], 'must be less than the length of the last', '', asTyped(tread.value, units));
  widthRules(last, at, units, complain);
  if (heights && heightRules(heights, length.value, [...at, 'heights'], units, complain)) agreementRules(last, heights, at, units, complain);
}

function widthRules({ length, ballWidth, heelWidth, inflare, toeShape }: LastMeasures, at: Path, units: SheetUnits, complain: Complain): void {
  const wide = ballWidth.value, widest = BALL_WIDTH_MOST * length.value, narrow = HEEL_WIDTH_LEAST * wide;
  const aside = (toeShape === 'oblique' ? INFLARE_MOST_OBLIQUE : INFLARE_MOST) * wide, asideSaid = roundedDown(aside, units);
  if (wide > widest + EPSILON)
    complain([...at, 'ballWidth'], `must be at most ${lengthWords([roundedDown(widest, units)], units)}, half the length of the last`, '', asTyped(wide, units));
  if (heelWidth.value > wide + EPSILON || heelWidth.value < narrow - EPSILON)
    complain([...at, 'heelWidth'], `must be ${lengthWords([roundedUp(narrow, units), roundedDown(wide, units)], units)}: half the ball width to all of it`, 'Take both widths again.', asTyped(heelWidth.value, units));
  if (Math.abs(inflare.value) > aside + EPSILON)
    complain([...at, 'inflare'], `must be ${lengthWords([-asideSaid, asideSaid], units)}: set further aside, the toe would stand beside the ball`, '', asTyped(inflare.value, units));
}

/** True when the list can be read as the last's bottom. */
function heightRules(heights: NonNullable<LastMeasures['heights']>, length: Mm, at: Path, units: SheetUnits, complain: Complain): boolean {
  const back = heights.findIndex(([x], i) => i > 0 && x <= heights[i - 1]![0]);
  const first = heights[0]?.[0] ?? NaN, end = heights.at(-1)?.[0] ?? NaN;
  const short = first > HEIGHTS_SHORT || end < length - HEIGHTS_SHORT;
  if (heights.length < 3) complain(at, 'must have at least 3 pairs');
  if (back > 0) complain([...at, back, 0], 'must lie further forward than the pair before it');
  if (short) complain(at, `must cover the last from 0 to its length, ${lengthWords([length], units)}, within ${lengthWords([HEIGHTS_SHORT], units)}`);
  return heights.length >= 3 && back < 0 && !short && [length, ...heights.flat()].every(Number.isFinite);
}

/** The sole follows the measured heights; what stands on the sheet beside them must tell of the same last. */
function agreementRules({ length, seatLength, pitch, toeSpring }: LastMeasures, heights: NonNullable<LastMeasures['heights']>, at: Path, units: SheetUnits, complain: Complain): void {
  const heightAt = steadyCurve(heights);
  const agree = (name: 'pitch' | 'toeSpring', { value, origin }: Measure, x: Mm, where: string): void => {
    if (origin !== 'measured' || !(Math.abs(heightAt(x) - value) > HEIGHTS_AGREE + EPSILON)) return;
    complain([...at, name], `must agree within ${lengthWords([HEIGHTS_AGREE], units)} with the measured heights, which stand at ${lengthWords([heightAt(x)], units)} ${where}`,
      'The sole follows the heights: correct them, or this.');
  };
  agree('pitch', pitch, seatLength.value / 2, 'at the centre of the seat');
  agree('toeSpring', toeSpring, length.value, 'at the tip');
}

/** Without a foot the balls lie where they do on a usual last: the seat must end behind them. */
export function seatBehindBall({ seatLength, outerBall }: LastMeasures, at: Path, units: SheetUnits, complain: Complain): void {
  if (seatLength.value > outerBall.value + EPSILON)
    complain(at, `must be at most ${lengthWords([roundedDown(outerBall.value, units)], units)}: the little-toe joint lies there on a last of this length`, 'Is the length of the last right, too?', asTyped(seatLength.value, units));
}

/** Where the balls lie. They are named where they were typed: on the foot, which stands out behind the last, or on the last itself. */
export function ballRules(last: LastMeasures, at: { readonly inner: Path; readonly outer: Path; readonly behind: Mm }, units: SheetUnits, complain: Complain): void {
  const { innerBall, outerBall, seatLength, length } = last;
  for (const [name, ball] of [['inner', innerBall], ['outer', outerBall]] as const) {
    const least = Math.max(BALL_FROM[name] * length.value, seatLength.value) + at.behind, most = length.value + at.behind, typed = ball.value + at.behind;
    if (typed < least - EPSILON)
      complain(at[name], `must be at least ${lengthWords([roundedUp(least, units)], units)}: the ball lies ahead of the seat and of the waist`, 'Is the length of the last right, too?', asTyped(typed, units));
    if (typed >= most) complain(at[name], `must be less than ${lengthWords([most], units)}, where the tip of the last is`, '', asTyped(typed, units));
  }
  if (outerBall.value > innerBall.value) complain(at.outer, 'must not be more than ballInner: the little-toe joint lies further back', '', asTyped(outerBall.value + at.behind, units));
}
