import type { Pair } from '../pair/shoe.ts';
import { thinAtBall } from './ballFoam.ts';
import { riskFindings } from './cautions.ts';
import type { Finding, Severity } from './finding.ts';
import { ballHeight, pitchOfSole, seatHeight } from './heights.ts';
import { toolReach } from './making.ts';
import { estimated, guessedOutline, legByTape, legDifferenceFine, prescription, risksAsked, takenTwice } from './measures.ts';
import { applyOverrides } from './overrides.ts';
import { ballsLevel, bendsAtBall, lastsAlike, notLevel, oneShoe, partlyInside, raiseInWords } from './pairing.ts';
import { alignedHeelRise } from './prosthesis.ts';
import { rollingChecks } from './rolling.ts';
import { guessedSpring, lostSpring, lowTip, steepTip, thinRaise, tipBeyondRaise } from './raiseTip.ts';
import { inUnitOf } from './say.ts';
import { isMatch, isRocker, see, type Pace, type Seen } from './seen.ts';
import { slopeOffArc } from './slope.ts';
import { squashedAway } from './squash.ts';
import { sideStability } from './stability.ts';
import { standingChecks } from './standing.ts';
import { stiffener } from './stiffener.ts';
import { governs, thinFoam, thinSole } from './thickness.ts';
import { shoeWeight, soleWeight, weightDifference } from './weight.ts';
import { carriesStance } from './walk.ts';
import { publishedWindow } from './window.ts';

const SOLE_CHECKS = [seatHeight, ballHeight, soleWeight, shoeWeight, toolReach, guessedOutline, thinAtBall] as const;
const ROCKER_CHECKS = [
  thinSole, thinFoam, stiffener, ...standingChecks, squashedAway, slopeOffArc, ...rollingChecks, carriesStance, pitchOfSole, sideStability, alignedHeelRise, governs, publishedWindow,
] as const;
const MATCH_CHECKS = [notLevel, thinRaise, steepTip, lostSpring, lowTip, tipBeyondRaise, guessedSpring, raiseInWords, partlyInside, bendsAtBall] as const;
const SHEET_CHECKS = [riskFindings, risksAsked, prescription, legByTape, legDifferenceFine, takenTwice] as const;

/**
 * Everything a careful maker would want to know before cutting: stops, warnings, notes; left, right, then both.
 * @param besides what was found about the things that are made besides the soles
 */
export function findingsOf(pair: Pair, pace?: Pace, besides: readonly Finding[] = []): Finding[] {
  const { fitting } = pair, seen = pair.shoes.map((shoe) => see(shoe, fitting, pace));
  const found = [
    ...seen.flatMap(ofShoe),
    ...oneShoe(seen), ...lastsAlike(seen), ...ballsLevel(seen, fitting), ...weightDifference(seen),
    ...SHEET_CHECKS.flatMap((check) => check(fitting)), ...besides, ...seen.flatMap(estimated),
  ];
  return worstFirst(applyOverrides(found, fitting.overrides)).map((one) => ({ ...one, text: inUnitOf(fitting.units, one.text) }));
}

function ofShoe(seen: Seen): Finding[] {
  const made = seen.shoe.kind === 'rocker' || seen.shoe.made !== undefined;
  return [
    ...(made ? SOLE_CHECKS.flatMap((check) => check(seen)) : []),
    ...(isRocker(seen) ? ROCKER_CHECKS.flatMap((check) => check(seen)) : []),
    ...(isMatch(seen) ? MATCH_CHECKS.flatMap((check) => check(seen)) : []),
  ];
}

const RANK: Record<Severity, number> = { stop: 0, warn: 1, note: 2 };
const SIDE_RANK = { left: 0, right: 1 } as const;
const sideRank = ({ side }: Finding): number => (side ? SIDE_RANK[side] : 2);

const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity] || sideRank(a) - sideRank(b));
