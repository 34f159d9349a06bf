import type { Design } from '../checks/design.ts';
import { decidesIt, foundOrLaid, layerWords, packInShort, WAY_HEADS, waysTo } from '../checks/packWords.ts';
import type { LengthUnit } from '../fitting/lengthUnit.ts';
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

function ofPack(side: string, pack: Pack, columns: number, units: LengthUnit): string[] {
  const lines = (rows: string[]): string[] => rows.filter((line) => line !== '');
  const heads = ['from the last down', 'thick', 'angle', 'where'].map((head, i) => ({ head, most: i === 0 ? 40 : 24 }));
  return [
    `${side} stiffener, ${foundOrLaid(pack)}`, ...wrapped(packInShort(pack, units), columns), '',
    ...lines(table(heads, layerWords(pack, units).map(({ name, thickness, angle, where }) => [name, thickness, angle, where]))), '',
    ...besides(pack, columns, units), ...decidesIt(pack).flatMap((line) => wrapped(line, columns)),
  ];
}

const WIDTHS = [6, 8, 6, 6, 6, 7, 6, 13];

function besides(pack: Pack, columns: number, units: LengthUnit): string[] {
  const heads = [{ head: 'way', most: Math.max(16, leftOf(columns, WIDTHS)) }, ...WAY_HEADS.map((head, i) => ({ head, most: WIDTHS[i]! }))];
  return [...table(heads, waysTo(pack, units).map(({ way, numbers }) => [way, ...numbers])).filter((line) => line !== ''), ''];
}
