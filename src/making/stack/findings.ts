import type { Finding } from '../../checks/finding.ts';
import { mm, sizeWords } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { RackSheet, StackOrder } from '../../fitting/making.ts';
import { rangeOf } from '../../fitting/ranges.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FoamName } from '../../materials/materials.ts';
import type { Pair } from '../../pair/shoe.ts';
import { flatLoops, sizeOf } from './blanks.ts';
import { builtFor } from './buildUp.ts';
import type { Built } from './cut.ts';
import { MOST_LAYERS, plansFor, type Plan } from './plan.ts';
import { leftOut, noFoam, softNamed, weighsOtherwise } from './rackFindings.ts';
import { isNamed, sheetsFor, whyLeftOut } from './sheets.ts';

/** What stands in the way of building up from the rack, with the nearest sheet that would do, put in and tried. */
export function stackFindings(pair: Pair): Finding[] {
  const { stack: order, rack } = pair.fitting.making;
  if (!order) return [];
  const built = builtFor(pair), foams = [...new Set(built.map(({ shoe }) => shoe.order.foam))], has = (foam: FoamName): boolean => sheetsFor(rack, order, 'whole', foam).length > 0;
  return [
    ...foams.flatMap((foam) => (has(foam) ? leftOut(rack, order, foam) : noFoam(built.find(({ shoe }) => shoe.order.foam === foam)!, order, rack))), ...softNamed(rack, order),
    ...built.filter(({ shoe }) => has(shoe.order.foam)).flatMap((one) => [...tooSmall(one, order, rack), ...manyLayers(one, order, rack)]),
    ...notMeasured(built, rack), ...weighsOtherwise(pair, built),
  ];
}

/** Layers one under the other where there are most: zones stand beside each other. */
const highOf = ({ layers }: Plan): number =>
  Math.max(...layers.map(({ zone }) => layers.filter((one) => one.zone === zone || one.zone.name === 'whole').length));

const COMMON = { unit: 'mm', where: 'foam body', basis: PRACTICE } as const;

/** Labels are off by up to this. Common practice of the trade, 0.3 to 0.5 mm. */
const LABEL_OFF: Mm = 0.5;

function notMeasured(built: readonly Built[], rack: readonly RackSheet[]): Finding[] {
  const layers = Math.max(0, ...built.map(({ plans: [best] }) => (best ? highOf(best) : 0)));
  if (layers === 0 || rack.every(({ usual }) => !usual)) return [];
  return [{
    ...COMMON, code: 'STACK_NOT_MEASURED', severity: 'warn', measured: layers * LABEL_OFF, limit: 0,
    text: `The stacks reckon with a usual rack and the thickness on its labels. A label is up to ${mm(LABEL_OFF)} off, so ${layers} layers up to ${mm(layers * LABEL_OFF)}. Measure the sheets and put them on the sheet (making.rack).`,
  }];
}

const EVERY_SIZE: Mm = 1e5;
const sized = (rack: readonly RackSheet[], length: Mm, width: Mm): RackSheet[] => rack.map((sheet) => ({ ...sheet, length, width }));

/** The size at which every layer of a stack goes on its sheet: that of the largest blank there is with sheets of any size. */
function tooSmall({ shoe, cover, plans }: Built, order: StackOrder, rack: readonly RackSheet[]): Finding[] {
  const [plan] = plans.length > 0 ? [] : plansFor(cover, shoe, order, sized(rack, EVERY_SIZE, EVERY_SIZE));
  if (!plan) return [];
  const sizes = plan.layers.flatMap(({ zone, sheet, reach, bottom }) => flatLoops(cover.face, cover.loops(zone, reach, bottom - reach), bottom - sheet.thickness / 2).map(sizeOf));
  const [length, width] = [0, 1].map((k) => Math.ceil(Math.max(...sizes.map((size) => size[k]!)) + 2 * order.apart + 1)) as [Mm, Mm];
  const works = plansFor(cover, shoe, order, sized(rack, length, width)).length > 0, largest = rack.filter((sheet) => isNamed(sheet, order) || !whyLeftOut(sheet, shoe.order.foam)).reduce((most, sheet) => (sheet.length * sheet.width > most.length * most.width ? sheet : most));
  return [{
    ...COMMON, code: 'STACK_SHEET_SMALL', severity: 'warn', side: shoe.side, measured: Math.max(largest.length, largest.width), limit: length,
    text: `No stack is made for the ${shoe.side} shoe: its layers do not go on the sheets of the rack that may be used, of which the largest is ${sizeWords(largest.length, largest.width)}.${works ? ` Sheets of ${sizeWords(length, width)} take them, with ${mm(order.trim)} of trim (making.stack.trim) and ${mm(order.apart)} to the edge (making.stack.apart).` : ''}`,
  }];
}

/** Every joint is brushed twice, waits and may open; more layers than this are not worth while. Common practice of the trade. */
const MANY_LAYERS = 8;

/** More layers than are worth while, or more than anybody glues: then there is no stack. */
function manyLayers(one: Built, order: StackOrder, rack: readonly RackSheet[]): Finding[] {
  const { shoe, cover, plans: [best] } = one, layers = best && highOf(best), [thickest] = sheetsFor(rack, order, 'whole', shoe.order.foam).toReversed();
  if (!thickest || (layers !== undefined && layers <= MANY_LAYERS) || (!best && plansFor(cover, shoe, order, sized(rack, EVERY_SIZE, EVERY_SIZE)).length > 0)) return [];
  const begin = best ? `The ${shoe.side} sole takes ${layers} layers` : `No stack is made for the ${shoe.side} shoe: it would take more than ${MOST_LAYERS} layers`;
  return [{
    ...COMMON, code: 'STACK_MANY_LAYERS', severity: 'warn', side: shoe.side, measured: layers ?? MOST_LAYERS + 1, limit: MANY_LAYERS, unit: '',
    text: `${begin}, for the thickest sheet of ${shoe.order.foam} in the rack (making.rack) that may be used is ${mm(thickest.thickness)} and ${mm(cover.most)} are needed.${thickerSheet(one, order, rack, thickest) ?? sparingLayers(one, order, rack) ?? ''}`,
  }];
}

/** Layers of the best stack, where they are few enough. */
function fewWith({ shoe, cover }: Built, order: StackOrder, rack: readonly RackSheet[]): number | undefined {
  const [best] = plansFor(cover, shoe, order, rack), layers = best ? highOf(best) : Infinity;
  return layers <= MANY_LAYERS ? layers : undefined;
}

/** A sheet besides that brings the layers down, in whole mm: the thinnest that may, or one found by halves between that and one for the whole depth. */
function thickerSheet(one: Built, order: StackOrder, rack: readonly RackSheet[], thickest: RackSheet): string | undefined {
  const fewer = (thickness: Mm): number | undefined => fewWith(one, order, [...rack, { ...thickest, thickness }]);
  const told = (thickness: Mm, layers: number): string => ` With a sheet of ${mm(thickness, 0)} besides ${layers} do.`;
  let most = Math.min(Math.ceil(one.cover.most), rangeOf('making.rack.thickness').limits[1]), least = Math.ceil(Math.max(thickest.thickness + 0.5, one.cover.most / MANY_LAYERS - order.glueLine));
  const first = least < most ? fewer(least) : undefined;
  if (first !== undefined) return told(least, first);
  let layers = fewer(most);
  while (layers !== undefined && most - least > 1) {
    const middle = Math.round((least + most) / 2), found = fewer(middle);
    if (found === undefined) least = middle;
    else [most, layers] = [middle, found];
  }
  return layers === undefined ? undefined : told(most, layers);
}

/** Where no sheet helps, layers are taken one more at a time though they save little. */
const SPARING: readonly Mm[] = [1, 2, 5, 10, 20];

function sparingLayers(one: Built, order: StackOrder, rack: readonly RackSheet[]): string | undefined {
  for (const layerSaves of SPARING.filter((saves) => saves > order.layerSaves)) {
    const fewer = fewWith(one, { ...order, layerSaves }, rack);
    if (fewer !== undefined) return ` With a layer more only where it saves ${mm(layerSaves, 0)} of foam (making.stack.layerSaves) ${fewer} do.`;
  }
  return undefined;
}
