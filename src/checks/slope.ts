import { rangeOf } from '../fitting/ranges.ts';
import { atan, sin } from '../geometry/trig.ts';
import { inDegrees, type Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { apexBehindJoint } from '../prescription/order.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import type { Finding } from './finding.ts';
import { deg, rounded, sentences } from './say.ts';
import { under, type Seen } from './seen.ts';
import { RAMP } from './sources.ts';
import { caseOf } from './thickness.ts';

/** Paths steeper than 1 in 20 count as ramps; on what is gentler the client should still stand on the mid arc. */
const GENTLE: Rad = atan(1 / 20);

/** With the leg held as it stands on the level, a slope rolls the shoe by as much, and the standing point off its mid arc. */
export function slopeOffArc(seen: Seen<RockerShoe>): Finding[] {
  const { shoe: { side, rocker: { heelArc } }, number } = seen, limit = inDegrees(GENTLE);
  const uphill = number('apexRollAngle'), downhill = heelArc ? -number('heelJointAngle') : number('strikeReached'), least = Math.min(uphill, downhill);
  if (!under(least, limit)) return [];
  const ways = [under(uphill, limit) ? `uphill from ${deg(uphill)} on, on the toe arc` : '', under(downhill, limit) ? `downhill from ${deg(downhill)} on, on the ${heelArc ? 'heel arc' : 'back edge'}` : ''].filter(Boolean);
  return [{
    code: 'SLOPE_OFF_ARC', severity: 'note', side, measured: least, limit, unit: 'deg', where: 'mid arc',
    text: sentences(`Standing with the leg as on the level, the standing point leaves the mid arc ${ways.join(' and ')}; a path may rise ${deg(limit)} (1 in 20) before it counts as a ramp`, under(uphill, limit) ? furtherApex(seen) : ''),
    basis: RAMP,
  }];
}

/** The apex that keeps the mid arc under the standing point on a gentle slope uphill: put in and solved. */
function furtherApex({ shoe, pace }: Seen<RockerShoe>): string {
  const { last, order, fitting: { foot }, rocker: { mid } } = shoe, given = caseOf(shoe);
  const share = Math.ceil((1000 * (mid.frontX + mid.radius * sin(GENTLE))) / last.length + 1) / 1000, apexX = share * last.length;
  const allowed = 100 * share <= rangeOf('order.apex').limits[1] && (foot?.joint !== 'toe joint' || apexX <= apexBehindJoint(last, order.crestAngle));
  const sole = pace === 'careful' && allowed ? orInfeasible(() => soleFrom({ ...given, order: { ...order, apexX, apexByDefault: false } })) : undefined;
  if (!sole || sole instanceof Infeasible || sole.rocker.apex.angle < GENTLE) return '';
  return `An apex of ${rounded(100 * share, 1)} % of the last length, from the heel (order.apex), keeps it there; the slope at the tip is then ${deg(inDegrees(sole.rocker.tipAngle))} instead of ${deg(inDegrees(shoe.rocker.tipAngle))}`;
}
