import type { Design } from '../checks/design.ts';
import { decidesIt } from '../checks/packDecides.ts';
import { WAY_HEADS, WAY_MEANS, waysTo } from '../checks/packWays.ts';
import { foundOrLaid, gradeWords, isSlanted, layerWords, MIRRORED, packInShort } from '../checks/packWords.ts';
import type { LengthUnit } from '../fitting/lengthUnit.ts';
import type { Side } from '../fitting/words.ts';
import { packFor, type Pack } from '../stiffener/pack.ts';
import { leftOf, table, wrapped } from './textTable.ts';

/** How each stiffener is laid, beside other ways to it, as text no wider than the screen. */
export function stiffenerTable({ shoes, fitting }: Design, columns: number): string {
  const lines = shoes.flatMap((shoe) => {
    const pack = packFor(shoe, fitting);
    return pack ? [...ofPack(shoe.side, pack, columns, fitting.units), ''] : [];
  });
  const none = ['No stiffener is wanted or laid: so nothing is known of how far it bends. A group in order.stiffener, { "wanted": "rigid" }, has one found.'];
  return (lines.length > 0 ? lines : none.flatMap((line) => wrapped(line, columns))).map((line) => `${line}\n`).join('');
}

function ofPack(side: Side, pack: Pack, columns: number, units: LengthUnit): string[] {
  const heads = ['from the last down', 'thick', 'angle', 'where'].map((head, i) => ({ head, most: i === 0 ? 40 : 24 })), layers = layerWords(pack, units), say = (line: string): string[] => wrapped(line, columns);
  return [
    `${side} stiffener, ${foundOrLaid(pack)}`, ...say(packInShort(pack, units)), ...say(gradeWords(pack, '')), '',
    ...close(table(heads, layers.map(({ name, thickness, angle, where }) => [name, thickness, angle, where]))), ...(isSlanted(pack, side) ? say(MIRRORED) : []), '',
    ...besides(pack, columns, units), ...Object.entries(WAY_MEANS).flatMap(([head, means]) => say(`${head}: ${means}`)), '', ...decidesIt(pack, units).flatMap(say),
  ];
}

const close = (lines: readonly string[]): string[] => lines.filter((line) => line !== '');

/** How wide each of `WAY_HEADS` is, and the least a way takes. */
const WIDTHS = [5, 8, 6, 6, 8, 8, 6, 7, 6, 6, 9, 12, 10], WIDE = WIDTHS.with(WAY_HEADS.indexOf('least to spare'), 36), LEAST_WAY = 24, NUMBER = 2;
/** Those that stand beside the way where there is no room for all; the others follow below, by the number of the way. */
const FIRST = ['plies', 'thick', 'weight', 'resin', 'bends', 'keeps to'];

function besides(pack: Pack, columns: number, units: LengthUnit): string[] {
  const ways = waysTo(pack, units).map(({ way, numbers }, i) => ({ way, numbers, number: String(i + 1) })), heads = WAY_HEADS.map((head, i) => ({ head, most: WIDTHS[i]! }));
  if (leftOf(columns, WIDE) >= LEAST_WAY) return [...close(table([{ head: 'way', most: leftOf(columns, WIDE) }, ...heads.map(({ head }, i) => ({ head, most: WIDE[i]! }))], ways.map(({ way, numbers }) => [way, ...numbers]))), ''];
  const beside = (first: boolean): number[] => heads.flatMap(({ head }, i) => (FIRST.includes(head) === first ? [i] : [])), widths = beside(true).map((i) => WIDTHS[i]!), number = { head: '', most: NUMBER };
  return [
    ...close(table([number, { head: 'way', most: leftOf(columns, [NUMBER, ...widths]) }, ...beside(true).map((i) => heads[i]!)], ways.map(({ way, numbers, number: n }) => [n, way, ...beside(true).map((i) => numbers[i]!)]))), '',
    ...close(table([number, ...beside(false).map((i) => heads[i]!)], ways.map(({ numbers, number: n }) => [n, ...beside(false).map((i) => numbers[i]!)]))), '',
  ];
}
