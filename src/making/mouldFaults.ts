import { asTyped, lengthWords, quantityWords, roundedDown, roundedUp } from '../fitting/convert.ts';
import { fault, type Fault } from '../fitting/faults.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { MouldOrder } from '../fitting/making.ts';
import { rangeOf } from '../fitting/ranges.ts';
import type { Side } from '../fitting/words.ts';
import { distance } from '../geometry/point.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { partsOf, type Pair, type SoleParts } from '../pair/shoe.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { largestDraft, mouldRows, type MouldRow } from './cavity.ts';
import { mouldPart } from './mould.ts';
import { largestBolt, rimForBolt } from './mould/bolts.ts';
import { isPressed, rimLeft } from './mould/groove.ts';
import { baseOf, holes, jointRooms, roomInFace } from './places.ts';

/** What keeps the moulds of a job from being made, as corrections to the sheet, in its units. */
export function mouldFaults(pair: Pair): Fault[] {
  const known = found.get(pair) ?? find(pair);
  found.set(pair, known);
  return known;
}

/** The faults of each job that is still there: its findings ask for them too. */
const found = new WeakMap<Pair, Fault[]>();

function find({ fitting: { units, making: { mould: order, chordGap } }, shoes }: Pair): Fault[] {
  if (!order) return [];
  const faults = [...dowelOnRim({ order, units }), ...boltOnRim({ order, units }), ...shoes.flatMap((shoe) => {
    const parts = partsOf(shoe);
    return parts ? faultsOfOne({ side: shoe.side, order, units }, parts, chordGap) : [];
  })];
  return strictest(faults);
}

/** `most` ranks faults of one field. */
interface MouldFault extends Fault { readonly most?: number }

/** Of several limits on one field only the least is told: it holds for all. */
function strictest(faults: readonly MouldFault[]): Fault[] {
  const least = (one: MouldFault): boolean => faults.every((other) => other.path !== one.path || (one.most ?? 0) <= (other.most ?? 0));
  return faults.filter((one, i) => one.most === undefined || (least(one) && faults.findIndex((other) => other.path === one.path && least(other)) === i)).map(({ most: _, ...fault }) => fault);
}

/** Least wall left beside a dowel or a hole; less breaks out. Common practice of the trade. */
const WALL: Mm = 3;
/** Room for the rounding of sums. */
const EPSILON = 1e-6;

interface Asked { readonly side: Side; readonly order: MouldOrder; readonly units: Fitting['units'] }

function faultsOfOne(asked: Asked, parts: SoleParts, chordGap: Mm): MouldFault[] {
  const walls = [...flareFaults(asked, parts.shape), ...draftFaults(asked, parts, chordGap)];
  if (walls.length > 0) return walls;
  const rows = mouldRows(mouldPart(parts, asked.order).body, chordGap, asked.order);
  return [...rimFaults(asked, parts.shape, rows), ...jointFaults(asked, rows), ...holeFaults(asked, rows)];
}

type Field = 'rim' | 'dowel' | 'bolt' | 'pourHole' | 'ventHole';

/** A length against the most there is room for; `otherwise` is the rule where nothing the sheet lets through has room. */
function tooLarge({ order, units }: Pick<Asked, 'order' | 'units'>, field: Field, most: Mm, otherwise: string, help: string): MouldFault[] {
  if (order[field] <= most + EPSILON) return [];
  const said = roundedDown(most, units), works = said >= rangeOf(`making.mould.${field}`).limits[0];
  return [{ most, ...fault(['making', 'mould', field], works ? `must be at most ${lengthWords([said], units)}` : otherwise, asTyped(order[field], units), help) }];
}

/** Walls that flare out towards the ground hold the part in a cavity of one piece. */
function flareFaults({ side, order: { split } }: Asked, { taper }: SoleShape): MouldFault[] {
  const worst = Math.min(...Object.values(taper));
  if (split || worst >= 0) return [];
  return [{ most: worst, ...fault(['making', 'mould', 'split'], 'must be true where walls do not lean in towards the ground', false,
    `As ordered the ${side} sole flares out by ${inDegrees(-worst).toFixed(1)}° towards the ground, so it cannot leave a cavity in one piece. Put split to true for a cavity in two halves, or take the flare off order.taper.`) }];
}

/** The steeper the ground line climbs, the further walls must lean out for the draft. */
function draftFaults({ side, order, units }: Asked, parts: SoleParts, chordGap: Mm): MouldFault[] {
  if (order.split) return [];
  const largest = largestDraft(mouldPart(parts, order).body, chordGap, order);
  if (largest >= order.draft) return [];
  return [{ most: largest, ...fault(['making', 'mould', 'draft'], `must be at most ${quantityWords([inDegrees(largest)], 'deg', units)}`, Number(inDegrees(order.draft).toPrecision(6)),
    `The ground line of the ${side} sole is too steep for more. Or put split to true for a cavity in two halves.`) }];
}

/** Left between the rim and the point where a hollow of the outline would close. */
const HOLLOW_SPARE: Mm = 10;

/** A rim wider than the hollow of the waist would fold over itself; what the walls lean out counts with it. */
function rimFaults(asked: Asked, { edge }: SoleShape, rows: readonly MouldRow[]): MouldFault[] {
  const { side, order: { rim } } = asked, hollows = edge.flatMap((piece) => piece.kind === 'arc' && piece.sweep < 0 ? [piece.radius] : []);
  const out = Math.max(...rows.flatMap(({ inner, outer }) => [inner, outer].map((at) => distance([at.edge[0], at.edge[1]], [at.border[0], at.border[1]])))) - rim;
  return tooLarge(asked, 'rim', Math.min(...hollows) - HOLLOW_SPARE - out, 'has no room in the hollow of the outline',
    `A wider rim would fold over itself in the hollow of the ${side} waist.`);
}

const atLeast = (length: Mm, units: Fitting['units']): string => lengthWords([roundedUp(length, units)], units);
const wallWords = (units: Fitting['units']): string => `${atLeast(WALL, units)} of wall`;

/** The flash groove of a pressed mould takes its share of the rim. */
const grooveWords = (order: MouldOrder, units: Fitting['units']): string => order.rim > rimLeft(order) ? `, of which the flash groove takes ${atLeast(order.rim - rimLeft(order), units)},` : '';

function dowelOnRim({ order, units }: Pick<Asked, 'order' | 'units'>): MouldFault[] {
  const left = rimLeft(order);
  return tooLarge({ order, units }, 'dowel', left - 2 * WALL, 'has no room on the rim',
    `It stands on a rim of ${atLeast(order.rim, units)}${grooveWords(order, units)} with ${wallWords(units)} on both sides; this dowel needs a rim of ${atLeast(order.dowel + 2 * WALL + order.rim - left, units)}.`);
}

function boltOnRim({ order, units }: Pick<Asked, 'order' | 'units'>): MouldFault[] {
  const left = rimLeft(order);
  if (order.closing !== 'bolts' || rimForBolt(order.bolt) <= left + EPSILON) return [];
  return tooLarge({ order, units }, 'bolt', largestBolt(left), 'has no room on the rim',
    `It stands on a rim of ${atLeast(order.rim, units)}${grooveWords(order, units)} with ${wallWords(units)} on both sides and a washer over it; this bolt needs a rim of ${atLeast(rimForBolt(order.bolt) + order.rim - left, units)}. Or put closing to clamps.`);
}

/** Dowels across the joint of a split cavity run between cavity and border, and between base and rim. */
function jointFaults(asked: Asked, rows: readonly MouldRow[]): MouldFault[] {
  const { side, order, units } = asked;
  if (!order.split) return [];
  const rooms = jointRooms(rows, baseOf(rows, order)).flatMap(({ end, long, high }) => [
    { room: long, where: end === 'heel' ? 'behind the heel' : 'ahead of the toe', way: 'rim', now: order.rim },
    { room: high, where: end === 'heel' ? 'behind the heel, between base and rim' : 'ahead of the toe, between base and rim', way: 'floor', now: order.floor },
  ]);
  const { room, where, way, now } = rooms.reduce((least, one) => (one.room < least.room ? one : least));
  return tooLarge(asked, 'dowel', room - 2 * WALL, 'has no room across the joint of the halves',
    `A dowel holds the halves of the ${side} mould together ${where}, with ${wallWords(units)} on both sides; this one needs a ${way} of about ${atLeast(now + order.dowel + 2 * WALL - room, units)}.`);
}

/** Pour and vent holes lie inside the face under the last, apart from each other. */
function holeFaults(asked: Asked, rows: readonly MouldRow[]): MouldFault[] {
  if (isPressed(asked.order.cast.name)) return [];
  const { side, order, units } = asked, [pour, heelVent, toeVent] = holes(rows, order), vents = [heelVent, toeVent];
  const widest = (...places: readonly { readonly at: typeof pour.at }[]): Mm => 2 * (Math.min(...places.map(({ at }) => roomInFace(rows, at))) - WALL);
  const outside = [
    ...tooLarge(asked, 'pourHole', widest(pour), 'has no room in the face under the last', `It stands over the heel of the ${side} mould, inside the face under the last, with ${wallWords(units)} round it.`),
    ...tooLarge(asked, 'ventHole', widest(...vents), 'has no room in the face under the last', `The vents stand over heel and toe of the ${side} mould, inside the face under the last, with ${wallWords(units)} round them.`),
  ];
  if (outside.length > 0) return outside;
  const apart = Math.min(...vents.map(({ at }) => distance(pour.at, at)));
  return tooLarge(asked, 'pourHole', 2 * (apart - WALL) - order.ventHole, 'has no room beside the vent over the heel',
    `Between it and the vent over the heel of the ${side} mould there must be ${wallWords(units)}.`);
}
