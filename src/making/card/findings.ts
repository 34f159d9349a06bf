import type { Finding } from '../../checks/finding.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { Pair } from '../../pair/shoe.ts';
import { unordered, wayFor } from './way.ts';

/** A card that tells of a way of making of which nothing is ordered. */
export function cardFindings({ fitting: { making } }: Pair): Finding[] {
  const way = making.card?.way, missing = unordered(making);
  if (way === undefined || missing === undefined) return [];
  const { way: _, ...card } = making.card ?? {}, ordered = wayFor({ ...making, card });
  return [{
    code: 'CARD_WAY', severity: 'warn', unit: '', where: 'job card', basis: PRACTICE,
    text: `The job card tells how the soles are made by way of "${way}", but nothing for it is ordered (making.${missing}): no file of this job was made for those steps. Order it, or leave the way out (making.card.way): the card then tells of "${ordered}".`,
  }];
}
