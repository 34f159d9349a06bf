import type { Sex } from '../fitting/words.ts';
import { partsOf } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { grams } from './say.ts';
import { isRocker, over, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** Most a sole and a whole shoe should weigh, g. */
const SOLE_MOST: Record<Sex, number> = { male: 350, female: 280 };
const SHOE_MOST: Record<Sex, number> = { male: 650, female: 500 };
const PAIR_WITHIN = 30;

const limitFor = (most: Record<Sex, number>, sex: Sex | undefined): number => most[sex ?? 'female'];
const limitWords = (most: Record<Sex, number>, sex: Sex | undefined): string =>
  `${grams(limitFor(most, sex))} (${sex === undefined ? "women's limit, sex not given" : sex === 'male' ? 'men' : 'women'})`;

export function soleWeight({ shoe, fitting: { wearer: { sex } }, number }: Seen): Finding[] {
  const weight = number('soleWeight'), limit = limitFor(SOLE_MOST, sex);
  if (!over(weight, limit)) return [];
  return [{
    code: 'SOLE_HEAVY', severity: 'warn', side: shoe.side, measured: weight, limit, unit: 'g', where: 'whole sole',
    text: `The sole weighs ${grams(weight)}; at most ${limitWords(SOLE_MOST, sex)} is worn gladly. Take lighter foam (order.foam), microcellular rubber or a thinner outsole (order.outsole), or bring the height down.`, basis: PRACTICE,
  }];
}

export function shoeWeight({ shoe, fitting: { wearer: { sex } }, number }: Seen): Finding[] {
  const { upperWeight } = shoe.fitting;
  if (upperWeight === undefined) return [];
  const weight = number('shoeWeight'), limit = limitFor(SHOE_MOST, sex);
  if (!over(weight, limit)) return [];
  return [{
    code: 'SHOE_HEAVY', severity: 'warn', side: shoe.side, measured: weight, limit, unit: 'g', where: 'whole shoe',
    text: `The whole shoe weighs ${grams(weight)}, ${grams(upperWeight)} of it above the sole; at most ${limitWords(SHOE_MOST, sex)} is worn gladly.`, basis: PRACTICE,
  }];
}

/**
 * Both whole shoes where what stands above the soles was weighed, else the new soles alone. A rocker and a raise are
 * not the same kind of sole, so those two only ask for the scale.
 */
export function weightDifference([left, right]: readonly Seen[]): Finding[] {
  if (!left || !right) return [];
  const both = [left, right], whole = both.every(({ shoe }) => shoe.fitting.upperWeight !== undefined);
  if (!whole && !both.every(({ shoe }) => partsOf(shoe))) return [];
  const [a, b] = [left, right].map((seen) => (whole ? wholeWeight(seen) : seen.number('soleWeight'))) as [number, number];
  const off = Math.abs(a - b), alike = whole || both.every(isRocker);
  if (!over(off, PAIR_WITHIN)) return [];
  const todo = whole ? 'Take heavier or lighter material on one side (order.foam, order.outsole).' : 'Weigh what stands above both soles and enter it (left.upperWeight, right.upperWeight): it may even out.';
  return [{
    code: 'WEIGHT_DIFFERS', severity: alike ? 'warn' : 'note', measured: off, limit: PAIR_WITHIN, unit: 'g', where: 'pair',
    text: `The ${a > b ? 'left' : 'right'} ${whole ? 'shoe' : 'new sole'} is ${grams(off)} heavier (left ${grams(a)}, right ${grams(b)}); within ${grams(PAIR_WITHIN)} is not felt. ${todo}`,
    basis: PRACTICE,
  }];
}

/** A shoe that stays as it is has no new sole to add. */
const wholeWeight = ({ shoe, number }: Seen): number => (partsOf(shoe) ? number('shoeWeight') : shoe.fitting.upperWeight!);
