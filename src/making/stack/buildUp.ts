import type { StackOrder } from '../../fitting/making.ts';
import { volumeOf } from '../../geometry/mesh.ts';
import { degrees } from '../../geometry/units.ts';
import { partsOf, type Pair, type Shoe, type SoleParts } from '../../pair/shoe.ts';
import type { FlatPart } from '../flatPart.ts';
import { laidPart } from '../nest/laid.ts';
import { areaOf, nest } from '../nest/nest.ts';
import { areaOfLoops, coverOf, flatLoops, type Cover } from './blanks.ts';
import { blanksOf, type Blank } from './pieces.ts';
import { plansFor, type Plan, type PlannedLayer } from './plan.ts';
import { leftOver, type CutSheet, type Layer, type ShoeStack, type Stacks } from './stack.ts';

/** A sole to be built up, and the stacks that may do it. */
export interface Built { readonly shoe: Shoe; readonly parts: SoleParts; readonly cover: Cover; readonly plans: readonly Plan[] }

/** Of so many pairs of stacks at most it is tried how they lie on the sheets; those that cost least first. */
const NESTED = 8;

/** What each sole needs, and the stacks the rack has for it, worked out once for findings and files. */
export function builtFor({ shoes, fitting: { making: { stack: order, rack } } }: Pair): readonly Built[] {
  const known = builtOnce.get(shoes);
  if (known?.order === order && known?.rack === rack) return known.built;
  const built = order ? shoes.flatMap((shoe): Built[] => {
    const parts = partsOf(shoe);
    if (!parts) return [];
    const cover = coverOf(parts, order.trim);
    return [{ shoe, parts, cover, plans: plansFor(cover, shoe.last, order, rack) }];
  }) : [];
  builtOnce.set(shoes, { order, rack, built });
  return built;
}

interface Known { readonly order: StackOrder | undefined; readonly rack: Pair['fitting']['making']['rack']; readonly built: readonly Built[] }
const builtOnce = new WeakMap<Pair['shoes'], Known>();

/** What the sheet orders built up from sheets; undefined where it orders none. */
export function stacksFor(pair: Pair): Stacks | undefined {
  const { job: { reference }, making: { stack: order } } = pair.fitting;
  return order && stacksFrom(builtFor(pair), order, reference);
}

/** Stacks for all soles that can have one: of the best of each, the ones that leave least of their sheets over. */
function stacksFrom(built: readonly Built[], order: StackOrder, reference: string): Stacks {
  const able = built.filter(({ plans }) => plans.length > 0), tries = pairsOf(able).slice(0, NESTED).map((plans) => stacksOf(able, plans, order, reference));
  const cost = ({ stacks, cost }: Tried): number => cost + leftOver(stacks);
  const best = tries.reduce<Tried | undefined>((least, one) => (!least || cost(one) < cost(least) - SAME ? one : least), undefined);
  return best?.stacks ?? { shoes: [], sheets: [] };
}

const SAME = 1e-3;
interface Tried { readonly stacks: Stacks; readonly cost: number }

/** One plan for each sole, all ways, the cheapest together first. */
function pairsOf(built: readonly Built[]): Plan[][] {
  const all = built.reduce<Plan[][]>((ways, { plans }) => ways.flatMap((way) => plans.map((plan) => [...way, plan])), [[]]);
  const cost = (way: readonly Plan[]): number => way.reduce((sum, plan) => sum + plan.cost, 0);
  return all.toSorted((a, b) => cost(a) - cost(b));
}

/** Blanks turn freely: foam has no grain. */
const TURNS = [0, 90, 180, 270].map(degrees);

interface Cut { readonly layer: PlannedLayer; readonly blanks: readonly Blank[] }

function stacksOf(built: readonly Built[], plans: readonly Plan[], order: StackOrder, reference: string): Tried {
  const cut = built.map((one, i) => plans[i]!.layers.map((layer): Cut => ({ layer, blanks: cutLayer(one, plans[i]!, layer, reference) })));
  const all = cut.flat().flatMap(({ layer, blanks }) => blanks.map((blank) => ({ sheet: layer.sheet, blank }))), files = new Map<FlatPart, number>(), sheets: CutSheet[] = [];
  for (const sheet of new Set(all.map((one) => one.sheet))) {
    const parts = all.filter((one) => one.sheet === sheet).map(({ blank }) => blank.part), laid = nest(parts, sheet, { apart: order.apart, turns: TURNS });
    laid.sheets.forEach((use, i) => {
      const placed = laid.placed.filter((one) => one.sheet === i), number = sheets.length + 1;
      placed.forEach(({ part }) => files.set(parts[part]!, number));
      sheets.push({ number, sheet, use, parts: placed.map((one) => laidPart(parts[one.part]!, one)) });
    });
  }
  const shoes = built.map((one, i) => shoeStack(one, plans[i]!, cut[i]!, order, files));
  return { stacks: { shoes, sheets }, cost: plans.reduce((sum, plan) => sum + plan.cost, 0) };
}

function shoeStack({ shoe, parts, cover }: Built, plan: Plan, cut: readonly Cut[], { glueLine }: StackOrder, files: ReadonlyMap<FlatPart, number>): ShoeStack {
  const layers = cut.map(({ layer, blanks }): Layer => ({
    ...layer, number: numberOf(plan, layer), of: countOf(plan, layer), joint: areaOfLoops(cover.bare(layer.zone, layer.reach, layer.bottom - layer.reach)), foam: foamIn(cover, layer),
    pieces: blanks.map((blank) => ({ ...blank, area: areaOf(blank.part), file: files.get(blank.part) ?? 0 })),
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

const chainOf = ({ layers }: Plan, { zone }: PlannedLayer): readonly PlannedLayer[] => layers.filter((one) => one.zone === zone || one.zone.name === 'whole' || zone.name === 'whole');
/** A layer's number is its depth in its own zone. */
const numberOf = (plan: Plan, layer: PlannedLayer): number => chainOf(plan, layer).filter((one) => one.reach < layer.reach).length + 1;

function cutLayer({ shoe, parts, cover }: Built, plan: Plan, layer: PlannedLayer, reference: string): Blank[] {
  const chain = chainOf(plan, layer), next = chain.filter((one) => one.reach === layer.bottom);
  return blanksOf(shoe, parts, cover, { layer, next, label: [`${reference} ${shoe.side}`, `${numberOf(plan, layer)} of ${countOf(plan, layer)} ${layer.sheet.name}`] });
}

/** Layers under the zone, the one that runs through counted in; of a layer that runs through, those of the tallest zone. */
const countOf = (plan: Plan, layer: PlannedLayer): number => Math.max(...chainOf(plan, layer).map((one) => numberOf(plan, one)));
