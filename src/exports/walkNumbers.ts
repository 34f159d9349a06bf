import { walkFigures, type ShoeWalkFigures, type WalkFigure } from '../checks/walkFigures.ts';
import type { Design } from '../checks/design.ts';
import { inDegrees } from '../geometry/units.ts';
import type { Shoe } from '../pair/shoe.ts';
import { ruleWords } from '../walk/drive.ts';
import { frameAt, PERCENT_SHARES } from '../walk/frame.ts';
import { OTHER_LANDS, OTHER_LIFTS } from '../walk/phases.ts';
import type { StepDifferences } from '../walk/differences.ts';
import { isEstimatedCurve, SOURCE_WORDS } from '../walk/stanceCurve.ts';
import { walkingOf } from '../walk/walking.ts';

/** How one shoe is walked on: what drives it, its figures and those of an ordinary shoe in its place, and every fifth percent of stance. */
export function walkNumbers(design: Design, { side }: Shoe): object | undefined {
  const told = walkFigures(design).find((one) => one.side === side);
  return told && {
    curve: curveNumbers(told), figures: told.own.map(figureNumbers), ...(told.walk.kind === 'rocker' ? { ordinary: told.ordinary.map(figureNumbers) } : {}),
    corners: told.walk.figures.corners.map(({ corner, from, to, past }) => ({ corner, fromPercent: 100 * from, toPercent: 100 * to, pastDeg: inDegrees(past) })),
    stance: PERCENT_SHARES.filter((_, i) => i % 5 === 0).map((share) => momentNumbers(told, share)),
  };
}

const curveNumbers = ({ walk: { ankle, borrowed, own: { curve } } }: ShoeWalkFigures): object => ({
  source: curve.source, words: SOURCE_WORDS[curve.source], estimated: isEstimatedCurve(curve), push: curve.pushSource, ankle: ankle.kind, rule: ruleWords(ankle),
  ...(ankle.kind === 'locked' ? { leanDeg: inDegrees(ankle.lean), rangeDeg: inDegrees(ankle.range) } : {}), borrowedFromOtherFoot: borrowed,
});

const figureNumbers = ({ key, label, value, unit, at, estimated }: WalkFigure): object => ({ key, label, value, unit, atPercent: at, estimated });

function momentNumbers({ walk: { own } }: ShoeWalkFigures, share: number): object {
  const { phase, roll, pivot, hip, contact, touches, push } = frameAt(own, share);
  return { percent: Math.round(100 * share), phase, rollDeg: inDegrees(roll), pivotMm: pivot, hipMm: hip, contactForwardMm: contact[0], touches, pushBodyWeights: push };
}

/** The pair as it walks, forward and heights in mm, shares in %. */
export function walkOfPair(design: Design): object {
  const { stride, differences } = walkingOf(design);
  return { walk: { strideMm: stride, otherLiftsPercent: 100 * OTHER_LIFTS, otherLandsPercent: 100 * OTHER_LANDS, leftLessRight: differences && differenceNumbers(differences) } };
}

const differenceNumbers = ({ carried, pivotDrop, hipContact, hipHighest, rolled, hipForward, downToRight, downToLeft }: StepDifferences): object => ({
  carriedPercent: 100 * carried, pivotDropMm: pivotDrop, hipAtContactMm: hipContact, hipHighestMm: hipHighest, rolledMm: rolled, hipForwardMm: hipForward, stepsDownToRightMm: downToRight, stepsDownToLeftMm: downToLeft,
});
