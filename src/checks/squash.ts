import { FOAMS, type FoamName } from '../materials/materials.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { standingUnder } from '../roll/standing.ts';
import type { Finding } from './finding.ts';
import { mm, rounded, sentences } from './say.ts';
import { over, type Seen } from './seen.ts';

/** Foam that squashes by more than the mid arc bulges presses the arc away: what was cut is not what is stood on. */
export function squashedAway(seen: Seen<RockerShoe>): Finding[] {
  const { shoe: { side, order: { foam } }, fitting: { wearer: { mass } }, number, place } = seen;
  const soft = number('squashSoft'), hard = number('squashHard'), bulge = number('bulgeMid'), { modulus: [softest, hardest], modulusBasis } = FOAMS[foam];
  if (mass === undefined || !over(soft, bulge)) return [];
  const lost = over(hard, bulge);
  return [{
    code: 'SQUASHED_AWAY', severity: lost ? 'warn' : 'note', side, measured: lost ? hard : soft, limit: bulge, unit: 'mm', where: 'mid arc', ...place('standingPoint'),
    text: sentences(
      `On one foot ${rounded(mass.value, 0)} kg squash ${foam} by ${mm(hard)} to ${mm(soft)} (${hardest} to ${softest} MPa); the mid arc bulges only ${mm(bulge)}, so ${lost ? 'it is pressed flat' : 'a soft sheet of it is pressed flat'}`,
      seen.pace === 'careful' ? harder(seen, bulge) : '', 'Press a piece of the sheet in hand before it is cut'),
    basis: modulusBasis,
  }];
}

/** Foams that keep the arc even at their softest: each was put in under the same foot. */
function harder({ shoe, fitting: { wearer: { mass } } }: Seen<RockerShoe>, bulge: number): string {
  const under = standingUnder(shoe, rollBodyOf(shoe), mass!.value), squash = (foam: FoamName): number => under('softest', 1, foam).depth;
  const kept = (Object.keys(FOAMS) as FoamName[]).filter((foam) => foam !== shoe.order.foam).map((foam) => ({ foam, depth: squash(foam) })).filter(({ depth }) => !over(depth, bulge));
  const [best] = kept.sort((a, b) => b.depth - a.depth);
  return best ? `${best.foam} (order.foam) squashes ${mm(best.depth)} at most` : 'None of the foams on the list keeps it at its softest; less height over the standing point squashes less';
}
