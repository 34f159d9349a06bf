import type { Side } from '../fitting/words.ts';
import { inDegrees } from '../geometry/units.ts';
import type { Pair, Shoe } from '../pair/shoe.ts';
import type { AtShare, OnCorner, StepFigures } from '../walk/figures.ts';
import { isEstimatedCurve } from '../walk/stanceCurve.ts';
import { walkingOf, type ShoeWalk } from '../walk/walking.ts';
import { estimatesBehind } from './restsOn.ts';
import { rounded } from './say.ts';

/** One number of a step as screen, paper and files show it. */
export interface WalkFigure {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: 'mm' | 'deg' | '%' | 'N·m/kg';
  readonly digits: number;
  readonly estimated: boolean;
  /** Share of stance at which it is taken, %. */
  readonly at?: number;
}

/** "13.1 mm", "1.37 N·m/kg at 82 %", with "est." behind what rests on an estimate. */
export const walkWords = ({ value, unit, digits, at, estimated }: WalkFigure): string =>
  `${rounded(value, digits)}${SIGN[unit]}${at === undefined ? '' : ` at ${rounded(at, 0)} %`}${estimated ? ' est.' : ''}`;
const SIGN: Readonly<Record<WalkFigure['unit'], string>> = { mm: ' mm', deg: '°', '%': ' %', 'N·m/kg': ' N·m/kg' };
const DIGITS: Readonly<Record<WalkFigure['unit'], number>> = { mm: 1, deg: 1, '%': 0, 'N·m/kg': 2 };

/** The steps of a pair, by side, in reading order: of its own shoe, and of an ordinary one in its place. */
export interface ShoeWalkFigures { readonly side: Side; readonly walk: ShoeWalk; readonly own: readonly WalkFigure[]; readonly ordinary: readonly WalkFigure[] }

export const walkFigures = (pair: Pair): readonly ShoeWalkFigures[] => walkingOf(pair).shoes.flatMap((walk) => {
  const shoe = pair.shoes.find(({ side }) => side === walk.side);
  if (!shoe) return [];
  const estimated = walk.borrowed || isEstimatedCurve(walk.own.curve) || restsOnEstimates(shoe), meanPush = walk.own.curve.pushSource === 'mean', of = (step: StepFigures, bends: boolean): WalkFigure[] => figuresIn(step, { estimated, meanPush, bends });
  return [{ side: walk.side, walk, own: of(walk.figures, walk.kind === 'match'), ordinary: of(walk.ordinaryFigures, true) }];
});

/** What a step hangs on besides its curve. */
const restsOnEstimates = (shoe: Shoe): boolean => shoe.kind === 'rocker' && estimatesBehind(shoe, ['hipHeight', 'pivotHeight', 'strikeReached', 'toeOff']).length > 0;

/** @param bends at the ball, which then carries no moment */
function figuresIn(step: StepFigures, { estimated, meanPush, bends }: Readonly<Record<'estimated' | 'meanPush' | 'bends', boolean>>): WalkFigure[] {
  const figure = (key: string, label: string, value: number, unit: WalkFigure['unit']): WalkFigure => ({ key, label, value, unit, digits: DIGITS[unit], estimated });
  const taken = (key: string, label: string, { value, share }: AtShare, unit: WalkFigure['unit']): WalkFigure => ({ ...figure(key, label, value, unit), at: 100 * share });
  const moment = (key: string, label: string, of: AtShare): WalkFigure => ({ ...taken(key, label, of, 'N·m/kg'), estimated: estimated || meanPush });
  return [
    figure('walkCarried', 'Share of stance on the sole itself (ordinary: flat on it)', 100 * step.carried, '%'), ...step.corners.flatMap((one) => cornerFigures(one, figure, taken)),
    figure('walkPivotContact', 'Ankle pivot above the floor at heel contact', step.pivot.contact, 'mm'), figure('walkPivotDrop', 'Ankle pivot sinks from heel contact on', step.pivotDrop, 'mm'),
    taken('walkPivotHighest', 'Ankle pivot highest', step.pivot.highest, 'mm'),
    figure('walkHipContact', 'Hip above the floor at heel contact', step.hip.contact, 'mm'), taken('walkHipHighest', 'Hip highest', step.hip.highest, 'mm'),
    figure('walkHipEnd', 'Hip above the floor as the other foot lands', step.hip.end, 'mm'),
    figure('walkRolled', 'Floor rolled over on the sole', step.rolled, 'mm'),
    moment('walkPivotMoment', 'Moment of the push about the ankle pivot, most', step.aboutPivot.most), ...(bends ? [] : [moment('walkBallMoment', 'Moment of the push about the ball, most', step.aboutBall.most)]),
  ];
}

type Make = (key: string, label: string, value: number, unit: WalkFigure['unit']) => WalkFigure;
type Take = (key: string, label: string, of: AtShare, unit: WalkFigure['unit']) => WalkFigure;

/** How far it turns over an end of the sole, and from or until when. */
function cornerFigures({ corner, from, to, past }: OnCorner, figure: Make, taken: Take): WalkFigure[] {
  return corner === 'rear corner'
    ? [figure('walkBackEdge', 'Turns over the back edge until', 100 * to, '%'), figure('walkBackEdgePast', 'Toes up beyond what the sole covers', inDegrees(past), 'deg')]
    : [taken('walkTip', 'Turns over its front end by (ordinary: over the ball)', { value: inDegrees(past), share: to }, 'deg'), figure('walkTipFrom', 'Turns over its front end from', 100 * from, '%')];
}
