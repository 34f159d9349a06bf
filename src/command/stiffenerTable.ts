import type { Design } from '../checks/design.ts';
import { deg, grams, mm, rounded } from '../checks/say.ts';
import { inDegrees, MM_PER_INCH } from '../geometry/units.ts';
import { alternativesTo, assumptionsOf, wouldKeep, type Would } from '../stiffener/alternatives.ts';
import { inShort, layersDown, type LaidLayer } from '../stiffener/layers.ts';
import { packFor, type Pack } from '../stiffener/pack.ts';
import type { Keeps, Tried } from '../stiffener/search.ts';
import { leftOf, table, wrapped } from './textTable.ts';

/** How each stiffener is laid, beside other ways to it, as text no wider than the screen. */
export function stiffenerTable({ shoes, fitting }: Design, columns: number): string {
  const inches = fitting.units === 'in', lines = shoes.flatMap((shoe) => {
    const pack = shoe.kind === 'rocker' ? packFor(shoe, fitting) : undefined;
    return pack ? [...ofPack(shoe.side, pack, columns, inches), ''] : [];
  });
  const none = ['No stiffener is wanted or laid: the sheet gives a thickness at most. A group in order.stiffener, { "wanted": "rigid" }, has one found.'];
  return (lines.length > 0 ? lines : none.flatMap((line) => wrapped(line, columns))).map((line) => `${line}\n`).join('');
}

function ofPack(side: string, pack: Pack, columns: number, inches: boolean): string[] {
  const lines = (rows: string[]): string[] => rows.filter((line) => line !== '');
  const heads = ['from the last down', 'thick', 'angle', 'where'].map((head, i) => ({ head, most: i === 0 ? 40 : 24 }));
  return [
    `${side} stiffener, ${pack.by === 'sheet' ? 'as laid' : 'as found'}`, ...wrapped(inShort(pack.stiffener, pack.underFoam), columns), '',
    ...lines(table(heads, layersDown(pack).map((layer) => layerRow(layer, inches)))), '', ...besides(pack, columns, inches), ...decides(pack, columns),
  ];
}

const length = (value: number, inches: boolean, digits = 2): string => (inches ? `${rounded(value / MM_PER_INCH, 3)} in` : mm(value, digits));

const layerRow = ({ name, thickness, angle, over }: LaidLayer, inches: boolean): string[] =>
  [name, length(thickness, inches), angle === undefined ? '' : deg(angle, 0), over ? `${length(over.from, inches, 0)} to ${length(over.to, inches, 0)}` : 'all along'];

const KEEPS: Readonly<Record<Keeps, string>> = { all: 'all', must: 'bend, stumble', not: 'no' };

/** Safety is how many times a stumble may be as hard before a ply fails. */
function besides(pack: Pack, columns: number, inches: boolean): string[] {
  const own = [pack.by === 'sheet' ? 'as laid' : 'as found', ...numbersOf(pack, inches)], others = [...alternativesTo(pack).map(({ way, tried }) => rowOf(way, tried, inches)), ...wouldKeep(pack).map((would) => rowOf(wouldWay(would), would.tried, inches))];
  const fixed = ['plies', 'thick', 'weight', 'resin', 'bends', 'strain', 'safety', 'keeps to'];
  const widths = [6, 8, 6, 6, 6, 7, 6, 13], heads = [{ head: 'way', most: Math.max(16, leftOf(columns, widths)) }, ...fixed.map((head, i) => ({ head, most: widths[i]! }))];
  return [...table(heads, [own, ...others]).filter((line) => line !== ''), ''];
}

type Numbers = Pick<Pack, 'plies' | 'thickness' | 'grams' | 'assessed' | 'keeps'>;
function numbersOf({ plies, thickness, grams: weight, assessed: { bench, walking, stumble }, keeps }: Numbers, inches: boolean): string[] {
  return [String(plies), length(thickness, inches, 1), grams(weight.pack), weight.resin === undefined ? '' : grams(weight.resin), deg(inDegrees(bench.bend), 2), `${rounded(Math.abs(walking.strain) * 100, 2)} %`, rounded(stumble.firstPly.times, 2), KEEPS[keeps]];
}

const rowOf = (way: string, tried: Tried, inches: boolean): string[] => [`${way}: ${inShort(tried.stiffener, tried.choice.core?.foam === true)}`, ...numbersOf(tried, inches)];
const WAYS: Readonly<Record<Would['what'], string>> = { plies: 'more plies', thickness: 'thicker', cloth: 'another cloth', camber: 'cambered more' };
const wouldWay = ({ what }: Would): string => WAYS[what];

/** The assumption that moves the bend most is told first. */
function decides(pack: Pack, columns: number): string[] {
  return assumptionsOf(pack).flatMap(({ text, bends: [worst, best], grades }, i) =>
    wrapped(`${i === 0 ? 'What decides it: ' : ''}${text}: ${deg(worst, 2)} (${grades[0]}) to ${deg(best, 2)} (${grades[1]}).`, columns));
}
