import type { RockerShoe } from '../pair/shoe.ts';
import { stepFigures, type OnCorner } from '../walk/figures.ts';
import { curveOf, isMeasured } from '../walk/stanceCurve.ts';
import { walkOnRocker } from '../walk/walking.ts';
import { inDegrees } from '../geometry/units.ts';
import type { Finding } from './finding.ts';
import { deg, rounded, sentences } from './say.ts';
import { under, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';
import { carriesMore } from './walkRemedy.ts';

/** Of a walk that was seen, the sole should carry this much of stance itself, %. Common practice. */
const CARRIES = 80;

/** With what mends it, tried on the same step. Told only where this client was seen to walk: what the mean walker does is no finding about the shoe. */
export function carriesStance({ shoe, pace }: Seen<RockerShoe>): Finding[] {
  if (!isMeasured(curveOf(shoe.fitting.foot?.walk))) return [];
  const { own: on } = walkOnRocker(shoe);
  const { carried, corners } = stepFigures(on), share = 100 * carried;
  if (!under(share, CARRIES)) return [];
  return [{
    code: 'WALK_CARRIED', severity: 'note', side: shoe.side, measured: share, limit: CARRIES, unit: '%', where: 'whole sole',
    text: sentences(`As this client walks, the sole itself carries ${rounded(share, share < CARRIES - 0.5 ? 0 : 1)} % of stance`, ...corners.map(cornerWords), pace === 'careful' ? carriesMore(shoe, on, corners, CARRIES) : ''), basis: PRACTICE,
  }];
}

const cornerWords = ({ corner, from, to, past }: OnCorner): string => (corner === 'rear corner'
  ? `Until ${rounded(100 * to, 0)} % it stands on the back edge, up to ${deg(inDegrees(past))} beyond what the heel covers (foot.strikeAngle, order.edgeBeyond.heel)`
  : `From ${rounded(100 * from, 0)} % it stands on the tip, up to ${deg(inDegrees(past))} beyond it (order.toe, order.apex)`);
