import type { StackOrder } from '../../fitting/making.ts';
import { volumeOf } from '../../geometry/mesh.ts';
import { degrees } from '../../geometry/units.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import type { FlatPart } from '../flatPart.ts';
import { laidPart } from '../nest/laid.ts';
import { areaOf, nest } from '../nest/nest.ts';
import { areaOfLoops, flatLoops, type Cover } from './blanks.ts';
import { blanksOf, type Blank } from './pieces.ts';
import type { Plan, PlannedLayer } from './plan.ts';
import type { CutSheet, Layer, ShoeStack } from './stack.ts';

/** A sole to be built up, and the stacks that may do it. */
export interface Built { readonly shoe: Shoe; readonly parts: SoleParts; readonly cover: Cover; readonly plans: readonly Plan[] }

/** The blanks of one layer. */
export interface Cut { readonly layer: PlannedLayer; readonly blanks: readonly Blank[] }

/** Cuts the layers of plans for one sole; what two plans have in common is cut once. */
export function cutter({ shoe, parts, cover }: Built, reference: string): (plan: Plan) => Cut[] {
  const known = new Map<string, readonly Blank[]>();
  return (plan) => plan.layers.map((layer): Cut => {
    const next = chainOf(plan, layer).filter((one) => one.reach === layer.bottom), label = [`${reference} ${shoe.side}`, `${numberOf(plan, layer)} of ${countOf(plan, layer)} ${layer.sheet.name}`] as const;
    const key = JSON.stringify([label, layer.zone.name, layer.reach, layer.bottom, next.map((one) => [one.zone.name, one.bottom])]);
    const blanks = known.get(key) ?? blanksOf(shoe, parts, cover, { layer, next, label });
    known.set(key, blanks);
    return { layer, blanks };
  });
}

const chainOf = ({ layers }: Plan, { zone }: PlannedLayer): readonly PlannedLayer[] => layers.filter((one) => one.zone === zone || one.zone.name === 'whole' || zone.name === 'whole');
/** A layer's number is its depth in its own zone. */
const numberOf = (plan: Plan, layer: PlannedLayer): number => chainOf(plan, layer).filter((one) => one.reach < layer.reach && (one.zone === layer.zone || one.zone.name === 'whole')).length + 1;
/** Layers under the zone, the one that runs through counted in; of a layer that runs through, those of the tallest zone. */
const countOf = (plan: Plan, layer: PlannedLayer): number => Math.max(...chainOf(plan, layer).map((one) => numberOf(plan, one)));

/** Blanks turn freely: foam has no grain. */
const TURNS = [0, 90, 180, 270].map(degrees);

/** Blanks laid on their sheets, and the sheet each lies on by its number. */
export interface LaidOut { readonly sheets: readonly CutSheet[]; readonly files: ReadonlyMap<FlatPart, number> }

export function layOn(cut: readonly Cut[], { apart }: StackOrder): LaidOut {
  const files = new Map<FlatPart, number>(), sheets: CutSheet[] = [];
  for (const sheet of new Set(cut.map(({ layer }) => layer.sheet))) {
    const parts = cut.flatMap(({ layer, blanks }) => (layer.sheet === sheet ? blanks.map(({ part }) => part) : [])), laid = nest(parts, sheet, { apart, turns: TURNS });
    if (laid.left.length > 0) throw new Error(`${parts[laid.left[0]!]!.name} does not go on a sheet it was chosen for`);
    laid.sheets.forEach((use, i) => {
      const placed = laid.placed.filter((one) => one.sheet === i), number = sheets.length + 1;
      placed.forEach(({ part }) => files.set(parts[part]!, number));
      sheets.push({ number, sheet, use, parts: placed.map((one) => laidPart(parts[one.part]!, one)) });
    });
  }
  return { sheets, files };
}

/** The stack of one sole as it is cut and laid. */
export function shoeStack({ shoe, parts, cover }: Built, plan: Plan, cut: readonly Cut[], { glueLine }: StackOrder, files: LaidOut['files']): ShoeStack {
  const layers = cut.map(({ layer, blanks }): Layer => ({
    ...layer, number: numberOf(plan, layer), of: countOf(plan, layer), joint: areaOfLoops(cover.bare(layer.zone, layer.reach, layer.bottom - layer.reach)), foam: foamIn(cover, layer),
    pieces: blanks.map((blank) => ({ ...blank, area: areaOf(blank.part), file: files.get(blank.part)! })),
  }));
  return {
    side: shoe.side, layers, body: volumeOf(parts.solids.foam), glue: layers.reduce((sum, { joint }) => sum + joint * glueLine, 0),
    blanks: layers.reduce((sum, { pieces, sheet }) => sum + pieces.reduce((all, { area }) => all + area, 0) * sheet.thickness, 0),
  };
}

/** Sections at which a layer is measured through. */
const THROUGH = 8;

/** What of the body a layer holds, by its sections from top to bottom. */
function foamIn({ face, section }: Cover, { zone, sheet: { thickness }, bottom }: PlannedLayer): number {
  const step = thickness / THROUGH, depths = Array.from({ length: THROUGH }, (_, i) => bottom - thickness + (i + 0.5) * step);
  return depths.reduce((sum, depth) => sum + areaOfLoops(flatLoops(face, section(zone, depth), depth)) * step, 0);
}
