import type { RackSheet, StackOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Last } from '../../last/last.ts';
import type { Shoe } from '../../pair/shoe.ts';
import { ROUGH, stepOf, type Cover, type Zone } from './blanks.ts';
import { leastStacks, type Choice } from './choose.ts';
import { sheetsFor } from './sheets.ts';

/** A layer of a stack: the sheet it is cut from, and how deep the foam reaches above and below it. */
export interface PlannedLayer { readonly zone: Zone; readonly sheet: RackSheet; readonly reach: Mm; readonly bottom: Mm }

/** Layers from the face downwards, zone by zone. @property cost of all blanks, and of every layer more, in mm³ of foam */
export interface Plan { readonly cost: number; readonly layers: readonly PlannedLayer[] }

/** How many stacks of one shoe are nested to see what is left over of the sheets. */
const KEEP = 8;

/** More layers than this nobody glues one on the other: each joint is brushed twice, waits and may open. Common practice of the trade. */
export const MOST_LAYERS = 24;

const WHOLE: Zone = { name: 'whole', from: -Infinity, to: Infinity };

/** The first layer runs through; below it heel, middle and forepart part where the sheet names foam of their own for one of them. */
function zonesOf({ heel, forepart }: StackOrder, { seatLength, innerBall, outerBall }: Last, { face }: Cover): readonly Zone[] {
  if (heel === undefined && forepart === undefined) return [WHOLE];
  const breast = heel === undefined ? -Infinity : face.along(seatLength), ball = forepart === undefined ? Infinity : face.along((innerBall + outerBall) / 2);
  return [
    ...(heel === undefined ? [] : [{ name: 'heel', from: -Infinity, to: breast } as const]), { name: 'middle', from: breast, to: ball } as const,
    ...(forepart === undefined ? [] : [{ name: 'forepart', from: ball, to: Infinity } as const]),
  ];
}

/** What of a shoe a stack hangs on: its last, and the foam that is ordered. */
export interface Stacked { readonly last: Last; readonly order: Pick<Shoe['order'], 'foam'> }

/** The stacks of least cost for one sole, best first; none where a sheet is too small or there is none of the foam ordered. */
export function plansFor(cover: Cover, { last, order: { foam } }: Stacked, order: StackOrder, rack: readonly RackSheet[]): Plan[] {
  const zones = zonesOf(order, last, cover), sheets = sheetsFor(rack, order, 'whole', foam);
  if (zones.length === 1) return choices(cover, WHOLE, order, sheets, 0).map((choice) => planOf(WHOLE, choice, sheets, order, 0));
  return sheets.flatMap((sheet): Plan[] => {
    const cost = costOf(cover, WHOLE, order, sheet, 0), below = order.glueLine + sheet.thickness;
    const rest = zones.map((zone) => {
      const own = sheetsFor(rack, order, zone.name, foam), [best] = choices(cover, zone, order, own, below);
      return best && planOf(zone, best, own, order, below);
    });
    if (cost === undefined || !rest.every((plan) => plan !== undefined)) return [];
    return [{ cost: cost + rest.reduce((sum, plan) => sum + plan.cost, 0), layers: [{ zone: WHOLE, sheet, reach: 0, bottom: below }, ...rest.flatMap(({ layers }) => layers)] }];
  }).toSorted((a, b) => a.cost - b.cost || a.layers.length - b.layers.length).slice(0, KEEP);
}

function choices(cover: Cover, zone: Zone, order: StackOrder, sheets: readonly RackSheet[], from: Mm): readonly Choice[] {
  const isEnough = perStep((reach) => cover.bare(zone, reach, 0).length === 0), costs = sheets.map((sheet) => perStep((reach) => costOf(cover, zone, order, sheet, reach)));
  return leastStacks({
    adds: sheets.map(({ thickness }) => order.glueLine + thickness), costOf: (sheet, reach) => costs[sheet]!(reach), enough: isEnough, keep: KEEP,
    layers: { most: from > 0 ? MOST_LAYERS - 1 : MOST_LAYERS, deepest: deepestOf(isEnough, cover.most) },
  }, from);
}

/** Where it is enough for the first time, to the mm. */
function deepestOf(isEnough: (reach: Mm) => boolean, most: Mm): Mm {
  let reach = 0;
  while (reach < most && !isEnough(reach)) reach++;
  return reach;
}

/** An answer for each step of the depth: within one all layers need the same. */
function perStep<Answer>(work: (reach: Mm) => Answer): (reach: Mm) => Answer {
  const known = new Map<number, Answer>();
  return (reach) => {
    const step = stepOf(reach);
    if (!known.has(step)) known.set(step, work(reach));
    return known.get(step)!;
  };
}

/**
 * What a layer costs in foam, mm³: its blanks, and what one layer less would be worth;
 * undefined where a blank does not go on the sheet.
 */
function costOf(cover: Cover, zone: Zone, { glueLine, apart, layerSaves }: StackOrder, { thickness, length, width }: RackSheet, reach: Mm): number | undefined {
  const { area, sizes } = cover.blanks(zone, reach, glueLine, thickness), room = [length - 2 * apart - DRAWN, width - 2 * apart - DRAWN] as const;
  const fits = sizes.every(([long, wide]) => (long <= room[0] && wide <= room[1]) || (wide <= room[0] && long <= room[1]));
  return fits ? area * thickness + cover.area * layerSaves : undefined;
}

/** Arcs drawn through the points of an outline may pass them a little, and rough ones lie off them on both sides. */
const DRAWN: Mm = 0.2 + 2 * ROUGH;

function planOf(zone: Zone, { cost, sheets: chosen }: Choice, sheets: readonly RackSheet[], { glueLine }: StackOrder, from: Mm): Plan {
  let reach = from;
  const layers = chosen.map((i): PlannedLayer => {
    const above = reach;
    reach += glueLine + sheets[i]!.thickness;
    return { zone, sheet: sheets[i]!, reach: above, bottom: reach };
  });
  return { cost, layers };
}
