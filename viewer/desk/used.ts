import type { Design } from '../../src/checks/design.ts';
import { inputOf } from '../../src/checks/inputs.ts';
import type { ShoeFitting } from '../../src/fitting/fitting.ts';
import { inTableUnit } from '../../src/fitting/convert.ts';
import { isRangeName, rangeOf } from '../../src/fitting/ranges.ts';
import { inDegrees } from '../../src/geometry/units.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import { erringFields, untoldAccuracy } from '../../src/spread/accuracy.ts';
import type { Used } from './protocol.ts';

/** All numbers and words a design rests on, also those nobody filled in: estimates and the trade's defaults. Pure. */
export const usedIn = ({ shoes, fitting: { making } }: Design): Used => Object.fromEntries([...leavesOf(making, 'making').map(asOnSheet), ...shoes.flatMap((shoe) => [
  ...leavesOf(shoe.fitting.foot, 'foot'), ...leavesOf(shoe.fitting.last, 'last'), ...orderOf(shoe.fitting), ...apexOf(shoe), ...accuraciesOf(shoe.fitting),
].map(([path, value]) => [`${shoe.side}.${path.replace('foot.stance.', 'foot.')}`, value] as const))]);

/** Where a design keeps a number of the workshop elsewhere than the sheet. */
const ON_SHEET: Readonly<Record<string, string>> = {
  'making.block.tab.width': 'making.block.tabWidth', 'making.block.tab.height': 'making.block.tabHeight', 'making.mould.cast.name': 'making.mould.material', 'making.mould.cast.density': 'making.mould.density',
};
/** The sheet has the shrink along, across and upwards in percent, a mould as what its part is stretched by. */
const SHRINK = /^making\.mould\.shrink\[(\d)\]$/, WAYS = ['length', 'width', 'height'];
function asOnSheet([path, value]: Leaf): Leaf {
  const way = SHRINK.exec(path)?.[1];
  return way === undefined ? [ON_SHEET[path] ?? path, value] : [`making.mould.shrink.${WAYS[Number(way)]!}`, 100 * (Number(value) - 1)];
}

type Leaf = readonly [path: string, value: number | string];

function leavesOf(value: unknown, path: string): Leaf[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'number') return Number.isFinite(value) ? [[path, isRangeName(path) ? inTableUnit(value, rangeOf(path).unit) : value]] : [];
  if (typeof value === 'boolean') return [[path, value ? 'yes' : 'no']];
  if (Array.isArray(value)) return value.flatMap((row, i) => leavesOf(row, `${path}[${i}]`));
  if (typeof value !== 'object' || value === null) return [];
  if ('origin' in value && 'value' in value) return leavesOf(value.value, path);
  return Object.entries(value).flatMap(([name, inner]) => leavesOf(inner, `${path}.${name}`));
}

/** How far off each measure may be where the sheet does not tell: one standard deviation. */
function accuraciesOf(shoe: ShoeFitting): Leaf[] {
  return erringFields(shoe).flatMap((field): Leaf[] => {
    const usual = untoldAccuracy(field, shoe)!, deviation = inputOf(field).unit === 'deg' ? inDegrees(usual.deviation) : usual.deviation;
    return [field, ...(field === 'foot.pivotHeight' ? ['foot.malleolusHeight'] : [])].map((path): Leaf => [`${path}.accuracy`, deviation]);
  });
}

/** The sheet tells what is wanted of a stiffener in place of its thickness, and a cloth of the list by its name. */
function orderOf({ order }: ShoeFitting): Leaf[] {
  if (order.kind !== 'rocker' || !order.pack) return leavesOf(order, 'order');
  const { pack: { ply, plies: _, bench: __, ...pack }, ...others } = order, at = ply.kind === 'cloth' ? '' : ply.kind === 'measured' ? '.measuredPly' : '.ownCloth';
  return [...leavesOf(others, 'order'), ...leavesOf(pack, 'order.stiffener'), ...leavesOf(ply, `order.stiffener${at}`)];
}

/** The sheet has it as a share of the last's length. */
const apexOf = (shoe: Shoe): Leaf[] => (shoe.kind === 'rocker' ? [['order.apex', (100 * shoe.order.apexX) / shoe.last.length]] : []);
