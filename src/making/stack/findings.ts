import type { Finding } from '../../checks/finding.ts';
import { mm } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { RackSheet, StackOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FoamName } from '../../materials/materials.ts';
import type { Pair } from '../../pair/shoe.ts';
import { flatLoops, sizeOf } from './blanks.ts';
import { builtFor } from './buildUp.ts';
import type { Built } from './cut.ts';
import { plansFor, type Plan } from './plan.ts';
import { leftOut, noFoam, softNamed, weighsOtherwise } from './rackFindings.ts';
import { isNamed, sheetsFor, whyLeftOut } from './sheets.ts';

/** What stands in the way of building up from the rack, with the nearest sheet that would do, put in and tried. */
export function stackFindings(pair: Pair): Finding[] {
  const { stack: order, rack } = pair.fitting.making;
  if (!order) return [];
  const built = builtFor(pair), foams = [...new Set(built.map(({ shoe }) => shoe.order.foam))], has = (foam: FoamName): boolean => sheetsFor(rack, order, 'whole', foam).length > 0;
  return [
    ...foams.flatMap((foam) => (has(foam) ? leftOut(rack, order, foam) : noFoam(built.find(({ shoe }) => shoe.order.foam === foam)!, order, rack))), ...softNamed(rack, order),
    ...built.filter(({ shoe }) => has(shoe.order.foam)).flatMap((one) => (one.plans.length === 0 ? tooSmall(one, order, rack) : manyLayers(one, order, rack))),
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

/** The size at which every layer of a stack goes on its sheet: that of the largest blank there is with sheets of any size. */
function tooSmall({ shoe, cover }: Built, order: StackOrder, rack: readonly RackSheet[]): Finding[] {
  const sized = (length: Mm, width: Mm): RackSheet[] => rack.map((sheet) => ({ ...sheet, length, width }));
  const [plan] = plansFor(cover, shoe, order, sized(EVERY_SIZE, EVERY_SIZE));
  const sizes = (plan?.layers ?? []).flatMap(({ zone, sheet, reach, bottom }) => flatLoops(cover.face, cover.loops(zone, reach, bottom - reach), bottom - sheet.thickness / 2).map(sizeOf));
  const [length, width] = [0, 1].map((k) => Math.ceil(Math.max(...sizes.map((size) => size[k]!)) + 2 * order.apart + 1)) as [Mm, Mm];
  const works = plansFor(cover, shoe, order, sized(length, width)).length > 0, largest = rack.filter((sheet) => isNamed(sheet, order) || !whyLeftOut(sheet, shoe.order.foam)).reduce((most, sheet) => (sheet.length * sheet.width > most.length * most.width ? sheet : most));
  return [{
    ...COMMON, code: 'STACK_SHEET_SMALL', severity: 'warn', side: shoe.side, measured: Math.max(largest.length, largest.width), limit: length,
    text: `No stack is made for the ${shoe.side} shoe: its layers do not go on the sheets of the rack that may be used, of which the largest is ${largest.length} × ${largest.width} mm.${works ? ` Sheets of ${length} × ${width} mm take them, with ${mm(order.trim)} of trim (making.stack.trim) and ${mm(order.apart)} to the edge (making.stack.apart).` : ''}`,
  }];
}

/** Every joint is brushed twice, waits and may open; more layers than this are not worth while. Common practice of the trade. */
const MANY_LAYERS = 8;

function manyLayers({ shoe, cover, plans }: Built, order: StackOrder, rack: readonly RackSheet[]): Finding[] {
  const layers = highOf(plans[0]!), [thickest] = sheetsFor(rack, order, 'whole', shoe.order.foam).toReversed();
  if (layers <= MANY_LAYERS || !thickest) return [];
  for (let thickness = Math.ceil(Math.max(thickest.thickness + 0.5, cover.most / MANY_LAYERS - order.glueLine)); thickness <= Math.ceil(cover.most); thickness++) {
    const [better] = plansFor(cover, shoe, order, [...rack, { ...thickest, thickness }]), fewer = better ? highOf(better) : layers;
    if (fewer <= MANY_LAYERS) return [{
      ...COMMON, code: 'STACK_MANY_LAYERS', severity: 'warn', side: shoe.side, measured: layers, limit: MANY_LAYERS, unit: '',
      text: `The ${shoe.side} sole takes ${layers} layers, for the thickest sheet of ${shoe.order.foam} in the rack (making.rack) that may be used is ${mm(thickest.thickness)} and ${mm(cover.most)} are needed. With a sheet of ${mm(thickness, 0)} besides ${fewer} do.`,
    }];
  }
  return [];
}
