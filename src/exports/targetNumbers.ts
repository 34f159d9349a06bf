import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { targetsOn } from '../targets/shoeTargets.ts';
import type { Answer, Solution, ValueToTake } from '../targets/seek.ts';
import type { Loss } from '../targets/asked.ts';
import type { RockerOutcome } from '../targets/outcome.ts';
import type { TradeOff } from '../targets/tradeOff.ts';

/** Answers to targets as numbers with their units; values to take as they are typed into the sheet. */

/** What the targets of one shoe ask and come to; nothing where it has none. */
export function targetNumbers(fitting: Fitting, side: Side): object {
  const found = targetsOn(fitting).find(({ answer }) => answer.side === side);
  return found ? { targets: { ...answerNumbers(found.answer), curve: curveNumbers(found.curve) } } : {};
}

export const answerNumbers = (answer: Answer): object => ({
  side: answer.side, withinLimits: answer.ok, heldUpByOtherShoe: answer.heldUp, asOrdered: answer.ordered && figureNumbers(answer.ordered),
  ...(answer.ok ? solutionNumbers(answer.best) : { toBlame: answer.blame.map(({ limits, loss }) => ({ limits: limits.map(({ name, unit, limit, works }) => ({ name, unit, limit, works })), loss: lossNumbers(loss) })) }),
  estimated: answer.estimated,
});

const solutionNumbers = ({ values, figures, limits, loss }: Solution): object => ({
  values: values.map(valueNumbers), limits: limits.map(({ name, unit, limit, reached, bites }) => ({ name, unit, limit, reached, bites })),
  figures: figureNumbers(figures), loss: lossNumbers(loss),
});

const valueNumbers = ({ path, unit, ordered, value, changed }: ValueToTake): object => ({ path, unit, ordered, value, changed });

const figureNumbers = ({ seatHeight, ballHeight, ballThickness, tip, toeSpring, weight, seatDifference, strike, toeOff, dropStrike, dropToeOff, flat, lean }: RockerOutcome['figures']): object => ({
  seatHeightMm: seatHeight, ballHeightMm: ballHeight, edgeAtBallMm: ballThickness, tipMm: tip, toeSpringOfShoeMm: toeSpring, ...(weight === 0 ? {} : { soleWeightG: weight }), seatDifferenceMm: seatDifference,
  strikeDeg: strike, toeOffDeg: toeOff, hipDropStrikeMm: dropStrike, hipDropToeOffMm: dropToeOff, standingFlatMm: flat, leanDeg: lean,
});

const lossNumbers = ({ strike, toeOff, dropStrike, dropToeOff, flat, tip, weighed }: Loss): object =>
  ({ strikeDeg: strike, toeOffDeg: toeOff, hipDropStrikeMm: dropStrike, hipDropToeOffMm: dropToeOff, standingFlatMm: flat, tipMm: tip, weighedDeg: weighed });

/** Each point of a curve: the height allowed, what is left of the roll, and the values to take for it. */
export const curveNumbers = ({ over, points }: TradeOff): object => ({
  over, points: points.map(({ limit, best: { figures, loss, values } }) => ({ limitMm: limit, toeOffDeg: figures.toeOff, strikeDeg: figures.strike, lossWeighedDeg: loss.weighed, values: values.map(valueNumbers) })),
});
