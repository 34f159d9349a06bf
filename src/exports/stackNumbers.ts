import type { Fitting } from '../fitting/fitting.ts';
import type { Shoe } from '../pair/shoe.ts';
import { wasteOf } from '../making/nest/nest.ts';
import { besidesFor, cementFor, costFor, groundShare, weightOf } from '../making/stack/cuttingList.ts';
import { groundAway, type CutSheet, type Layer, type Stacks } from '../making/stack/stack.ts';
import { sheetFileName } from './cuttingList.ts';

/** The stack of one shoe and what goes with it, as numbers; nothing for a shoe that has none. */
export function stackNumbers({ shoes }: Stacks, shoe: Shoe, fitting: Fitting): object | undefined {
  const stack = shoes.find(({ side }) => side === shoe.side), besides = besidesFor(shoe, fitting);
  if (!stack || !besides) return undefined;
  const { outsole, stiffener } = besides;
  return {
    blanksMm3: stack.blanks, bodyMm3: stack.body, glueMm3: stack.glue, groundAwayMm3: groundAway(stack), layers: stack.layers.map(layerNumbers),
    outsole: { material: outsole.material, thicknessMm: outsole.thickness, areaMm2: outsole.area, weightG: outsole.weight, cementG: outsole.cement },
    stiffener: stiffener && { estimated: stiffener.estimated, thicknessMm: stiffener.thickness, areaMm2: stiffener.area, clothG: stiffener.cloth, resinG: stiffener.resin, coreG: stiffener.core, cementG: stiffener.cement },
  };
}

const layerNumbers = (layer: Layer): object => ({
  number: layer.number, of: layer.of, zone: layer.zone.name, material: layer.sheet.name, thicknessMm: layer.sheet.thickness, measured: !layer.sheet.usual,
  reachesFromMm: layer.reach, reachesToMm: layer.bottom, groundAwayShare: groundShare(layer),
  pieces: layer.pieces.map(({ part: { name }, size: [length, width], area, file }) => ({
    name, lengthMm: length, widthMm: width, areaMm2: area, weightG: weightOf(area, layer.sheet), cementG: cementFor(area), cost: costFor(area, layer.sheet), sheet: file,
  })),
});

export const sheetNumbers = ({ number, sheet, parts, use }: CutSheet, reference: string): object => ({
  number, file: sheetFileName(reference, number), material: sheet.name, thicknessMm: sheet.thickness, lengthMm: sheet.length, widthMm: sheet.width,
  hardness: sheet.hardness, densityGCm3: sheet.density, price: sheet.price, blanks: parts.length, blanksMm2: use.parts, wasteMm2: wasteOf(use, sheet),
  costOfBlanks: costFor(use.parts, sheet), costOfBlanksAndWaste: costFor(use.parts + wasteOf(use, sheet), sheet),
});
