import type { Finding } from '../../checks/finding.ts';
import { grams, mm, rounded, sizeWords } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import { weightsOf } from '../../checks/weights.ts';
import type { RackSheet, StackOrder } from '../../fitting/making.ts';
import type { Grams } from '../../geometry/units.ts';
import { FOAMS, type FoamName } from '../../materials/materials.ts';
import type { Pair } from '../../pair/shoe.ts';
import { stacksFor } from './buildUp.ts';
import { weightOf } from './cuttingList.ts';
import type { Built } from './cut.ts';
import { plansFor } from './plan.ts';
import { isNamed, sheetsFor, SOFTEST_WORDS, whyLeftOut, whyNoBody } from './sheets.ts';
import type { ShoeStack } from './stack.ts';

const COMMON = { where: 'foam body', basis: PRACTICE } as const;

const listed = (names: readonly string[]): string => (names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}` : names.join(''));

/** Sheets with why each is left out, those of one reason together. */
function whys(rack: readonly RackSheet[], whyOf: (sheet: RackSheet) => string | undefined): string[] {
  const names = new Map<string, string[]>();
  for (const sheet of rack) {
    const why = whyOf(sheet);
    if (why) names.set(why, [...(names.get(why) ?? []), sheet.name]);
  }
  return [...names].map(([why, of]) => `${listed(of)}: ${why}.`);
}

/** What of the rack is not taken unasked. */
export function leftOut(rack: readonly RackSheet[], order: StackOrder, foam: FoamName): Finding[] {
  const out = whys(rack, (sheet) => (isNamed(sheet, order) ? undefined : whyLeftOut(sheet, foam)));
  if (out.length === 0) return [];
  return [{
    ...COMMON, code: 'STACK_LEFT_OUT', severity: 'note', unit: '',
    text: `Sheets of the rack are left out of the stack. ${out.join(' ')} To use one all the same name it for a zone (making.stack.heel, making.stack.forepart); what is ${foam} and looks like something else is used where it says so (making.rack.material), unless it is too soft or too dense.`,
  }];
}

/** No sheet for the layer that runs through; the foams the rack has sheets of, and a sheet that would do, put in and tried. */
export function noFoam({ shoe, cover }: Built, order: StackOrder, rack: readonly RackSheet[]): Finding[] {
  const { last, order: { foam } } = shoe, works = (of: FoamName, sheets: readonly RackSheet[]): boolean => plansFor(cover, { last, order: { foam: of } }, order, sheets).length > 0;
  const others = FOAM_NAMES.filter((other) => other !== foam && works(other, rack)), sheet: RackSheet = { ...TRIED, name: foam, material: foam, density: FOAMS[foam].density };
  const ways = [
    ...others.map((other) => `Ordered of ${other} (order.foam) it is made of ${listed(sheetsFor(rack, order, 'whole', other).map(({ name }) => name))}.`),
    ...(works(foam, [...rack, sheet]) ? [`A sheet of ${foam} put in the rack does: ${mm(sheet.thickness, 0)}, ${rounded(sheet.density, 2)} g/cm³, not softer than ${SOFTEST_WORDS}, ${sizeWords(sheet.length, sheet.width)}.`] : []),
  ];
  return [{
    ...COMMON, code: 'STACK_NO_FOAM', severity: 'warn', unit: '',
    text: [`No stack is made of ${foam}: no sheet of the rack (making.rack) is left for it.`, ...whys(rack, (one) => whyLeftOut(one, foam)), ...ways].join(' '),
  }];
}

const FOAM_NAMES = Object.keys(FOAMS) as FoamName[];
/** A sheet as they are sold. */
const TRIED = { thickness: 10, length: 1150, width: 950, usual: false } as const;

/** Sheets named for a zone are used whatever they are; what is no foam for a body is remarked. */
export function softNamed(rack: readonly RackSheet[], order: StackOrder): Finding[] {
  const named = rack.filter((sheet, i) => isNamed(sheet, order) && rack.findIndex(({ name }) => name === sheet.name) === i), out = whys(named, whyNoBody);
  if (out.length === 0) return [];
  return [{ ...COMMON, code: 'STACK_NAMED_SOFT', severity: 'note', unit: '', text: `Used because it is named for a zone of the stack (making.stack.heel, making.stack.forepart), though as a rule it would not be. ${out.join(' ')} A soft layer gives way, and the rocker with it.` }];
}

/** Weights nearer than this share are one: sheets of one foam differ so much. */
const SAME_WEIGHT = 0.05;

/** Where the sheets chosen weigh otherwise than the foam the other papers reckon with. */
export function weighsOtherwise(pair: Pair, built: readonly Built[]): Finding[] {
  const mayDiffer = built.some(({ shoe: { order: { foam } }, plans }) => plans.some(({ layers }) => layers.some(({ sheet }) => sheet.density !== FOAMS[foam].density || (sheet.material ?? foam) !== foam)));
  const stacks = mayDiffer ? stacksFor(pair)?.shoes ?? [] : [];
  return stacks.flatMap((stack) => {
    const one = built.find(({ shoe }) => shoe.side === stack.side);
    return one ? otherWeight(stack, one.shoe.order.foam, weightsOf(one.shoe, one.parts).weight.foam) : [];
  });
}

/** @param figure what drawing and job sheet tell: the whole body, lines of glue with it */
function otherWeight({ side, layers }: ShoeStack, foam: FoamName, figure: Grams): Finding[] {
  const chosen = layers.reduce((sum, layer) => sum + weightOf(layer.foam, { thickness: 1, density: layer.sheet.density }), 0), sheets = [...new Set(layers.map(({ sheet }) => sheet))];
  if (Math.abs(chosen / figure - 1) <= SAME_WEIGHT && sheets.every(({ material = foam }) => material === foam)) return [];
  const told = sheets.map(({ name, material, density }) => `${name}${material && material !== foam ? ` (${material})` : ''} ${rounded(density, 2)}`);
  return [{
    ...COMMON, code: 'STACK_WEIGHS_OTHERWISE', severity: 'note', side, measured: chosen, limit: figure, unit: 'g',
    text: `The ${side} foam body weighs ${grams(chosen)} of the sheets chosen, lines of glue not counted, in g/cm³: ${listed(told)}. Drawing and job sheet reckon with ${foam} of ${rounded(FOAMS[foam].density, 2)}, ${grams(figure)}; the cutting list weighs the sheets.`,
  }];
}
