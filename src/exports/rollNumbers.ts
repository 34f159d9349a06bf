import type { Fitting } from '../fitting/fitting.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { carriedBy } from '../roll/carried.ts';
import { courseOf, rollsOf } from '../roll/course.ts';
import { midTurns, turningOf } from '../roll/midArc.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { ORDINARY, ordinaryBody } from '../roll/ordinary.ts';
import { anglesCovered, type RollBody } from '../roll/rollBody.ts';
import { rollOverCircle } from '../roll/rollOver.ts';
import { SLOPES, standingOn, type OnSlope } from '../roll/slopes.ts';
import { perDegree, standingUnder, type Stand } from '../roll/standing.ts';
import { swayOf, type Reach } from '../roll/sway.ts';

/**
 * How a rocker rolls and stands, for other programs: the curves every degree from strike to toe-off, an ordinary shoe at the same
 * angles, and standing still. Roll angles toe down positive; forward counts along the walking line from the heel, heights from the floor.
 */
export function rollNumbers(shoe: RockerShoe, { wearer: { mass } }: Fitting): object {
  const body = rollBodyOf(shoe), carried = carriedBy(shoe), mid = midTurns(shoe, body), { from, to } = anglesCovered(body), rolls = rollsOf(body);
  const { heel, mid: middle, toe } = turningOf(body, mid), { centre, radius, misses } = rollOverCircle(body);
  return {
    coveredDeg: { strike: inDegrees(from), toeOff: inDegrees(to) }, turningDeg: { heelArc: inDegrees(heel), midArc: inDegrees(middle), toeArc: inDegrees(toe) },
    wholeRoll: { radiusMm: radius, centreMm: centre, missesMm: misses },
    course: courseOf(body, carried, rolls).map(({ roll, contact, travelled, pivot, hip, leverPivot, leverBall }) => ({
      rollDeg: inDegrees(roll), ...at('contact', contact), travelledMm: travelled, ...at('pivot', pivot), ...at('hip', hip), leverPivotMm: leverPivot, leverBallMm: leverBall,
    })),
    ordinary: { what: ORDINARY, course: courseOf(ordinaryBody(carried, shoe.bodies.whole.rim.start), carried, rolls).map(({ roll, pivot, hip, leverPivot }) => ({ rollDeg: inDegrees(roll), ...at('pivot', pivot), ...at('hip', hip), leverPivotMm: leverPivot })) },
    standing: {
      sway: swayNumbers(swayOf(body, carried, mid)), slopes: SLOPES.map((slope) => slopeNumbers(standingOn(body, carried, slope))),
      squash: mass ? squashNumbers(shoe, body, mass.value) : 'left out: no body mass on the sheet (wearer.mass)',
    },
  };
}

const at = (name: string, [forward, height]: Point): object => ({ [`${name}ForwardMm`]: forward, [`${name}HeightMm`]: height });

const swayNumbers = (sway: Readonly<Record<'flat' | 'mid' | 'sole', Reach>>): object =>
  Object.fromEntries(Object.entries(sway).map(([name, { back, front }]) => [name, { backMm: back, forwardMm: front }]));

/** Uphill positive, the toes higher than the heel. */
const slopeNumbers = ({ slope, contact, ahead, leaning }: OnSlope): object => ({
  uphillDeg: inDegrees(slope), ...at('contact', contact), aheadOfPlumbMm: ahead,
  leaning: leaning && { tiltDeg: inDegrees(leaning.tilt), rollDeg: inDegrees(leaning.roll), ...at('contact', leaning.contact) },
});

/** Both ends of the foam's modulus, on one foot and on two. */
function squashNumbers(shoe: RockerShoe, body: RollBody, mass: number): object[] {
  const under = standingUnder(shoe, body, mass);
  return (['softest', 'hardest'] as const).flatMap((foam) => ([1, 2] as const).map((feet) => ({ foam, feet, ...standNumbers(under(foam, feet)) })));
}

const standNumbers = ({ depth, from, to, length, pressure, strain, ahead, holdsAll, needs }: Stand): object => ({
  depthMm: depth, touchesMm: [from, to], lengthMm: length, pressureKPa: 1000 * pressure, strainPercent: 100 * strain, middleAheadMm: ahead,
  holdsNmPerDeg: perDegree(holdsAll), needsNmPerDeg: perDegree(needs),
});
