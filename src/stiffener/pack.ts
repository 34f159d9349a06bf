import type { Fitting, PackOrder, ShoeFitting } from '../fitting/fitting.ts';
import { USUAL_PLIES } from '../fitting/readMaking.ts';
import type { Side } from '../fitting/words.ts';
import { isEstimated } from '../fitting/measure.ts';
import type { Mm } from '../geometry/units.ts';
import type { MatchShoe, RockerShoe } from '../pair/shoe.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { rollX } from '../profile/rollLine.ts';
import { foamFace, type SoleShape } from '../solid/soleShape.ts';
import { curveOf, isMeasured } from '../walk/stanceCurve.ts';
import { walkOnRocker } from '../walk/walking.ts';
import type { Asked, Assessed } from './assess.ts';
import { measuredAs, weigh, type Bench, type Choice, type Open, type Weighed } from './choices.ts';
import { benchOf, laidAs, openIn, type FoamCore } from './laying.ts';
import { leverOn, rollLoads } from './loads.ts';
import { plateUnder } from './plate.ts';
import { benchLinesOf, CLAMP_BEHIND, hungAs, perKgOf } from './hung.ts';
import { ADDITIONS, readingOf, withMore, type Added, type Reading } from './reading.ts';
import { assessedOr, searched, spareOf, triedOf, type Keeps, type Tried } from './search.ts';
import type { Plate, Stiffener } from './stiffener.ts';
import type { PackGrams } from './weighed.ts';

/** The stiffener of one shoe: what is laid or was found, in its place, with what it does. */
export interface Pack {
  readonly stiffener: Stiffener;
  readonly plate: Plate;
  readonly asked: Asked;
  readonly assessed: Assessed;
  readonly order: PackOrder;
  /** Laid as the sheet says, or found for what it wants. */
  readonly by: 'sheet' | 'search';
  readonly keeps: Keeps;
  readonly spare: Tried['spare'];
  /** What the stack counts for it, mm: of a pack on either side of the foam body both packs. */
  readonly thickness: Mm;
  readonly plies: number;
  readonly grams: PackGrams;
  /** The foam body is its core: some plies lie under it. */
  readonly underFoam: boolean;
  readonly test?: BenchRead;
  /** What was chosen from, and what of it, where it was sought. */
  readonly sought?: Sought;
}

/** What a pack was sought from. */
export interface Sought {
  readonly open: Open;
  readonly bench: Bench;
  readonly choice: Choice;
  /** What would be open under the same shoe if another pack were ordered. */
  readonly otherwise: (order: PackOrder) => Pick<Sought, 'open' | 'bench'>;
  /** The same object for packs of which nothing differs that decides them or other packs beside them. */
  readonly like: object;
}

/** Works out once what hangs on other packs that may be sought beside one, for all packs that are alike. @param none what there is of a pack that is laid */
export function onceForAlike<Found>(work: (pack: Pack, sought: Sought) => Found, none: Found): (pack: Pack) => Found {
  const alike = new WeakMap<object, { readonly found: Found }>();
  return (pack) => {
    if (!pack.sought) return none;
    const one = alike.get(pack.sought.like) ?? { found: work(pack, pack.sought) };
    alike.set(pack.sought.like, one);
    return one.found;
  };
}

/** What the bench test of a laid pack tells: of the bare pack, without what lies on it in the shoe. */
export interface BenchRead {
  /** Droop that was reckoned, camber counted whole, and the one that was read less what the clamp gave; mm. */
  readonly reckoned: Mm;
  readonly read: Mm;
  /** How much of what the gauge showed at the load was the clamp's giving, told by the one at the tread line. */
  readonly gave: Mm;
  readonly lever: Mm;
  /** One over the other. */
  readonly times: number;
  readonly reading: Reading;
}

/** What of a shoe decides its pack; it may not be meshed yet. */
export type Under = Omit<RockerShoe, 'solids'>;

const known = new WeakMap<SoleShape, { readonly order: PackOrder; readonly mass: number; readonly stagger: Mm; readonly pack: Pack; readonly waited: boolean }>();

/**
 * The pack of a shoe, remembered; undefined where it does not roll, or where the sheet gives only a thickness, or no mass.
 * @param pace waits while a hand drags: what was found last for the same wishes stays, where anything was; seeks when it rests;
 *   where left out, whatever is known of that shoe
 */
export function packFor(shoe: Under | MatchShoe, { wearer: { mass }, making: { plies } }: Pick<Fitting, 'wearer' | 'making'>, pace?: 'waits' | 'seeks'): Pack | undefined {
  if (shoe.kind === 'match') return undefined;
  const { order } = shoe.fitting, wished = order.kind === 'rocker' ? order.pack : undefined;
  if (!wished || !mass) return undefined;
  const before = known.get(shoe.shape), { stagger } = plies ?? USUAL_PLIES;
  if (before && before.order === wished && before.mass === mass.value && before.stagger === stagger && !(pace === 'seeks' && before.waited)) return before.pack;
  const waits = pace === 'waits', pack = work(shoe, wished, { mass: mass.value, stagger, waits });
  known.set(shoe.shape, { order: wished, mass: mass.value, stagger, pack, waited: waits });
  return pack;
}

/** Lays a pack under a shoe that asks for another one, so that it is the one that is told of. */
export function keepPack(shoe: Under, pack: Pack): void {
  known.set(shoe.shape, { order: pack.order, mass: pack.asked.mass, stagger: pack.plate.stagger ?? USUAL_PLIES.stagger, pack, waited: false });
}

function work(shoe: Under, order: PackOrder, { mass, stagger, waits }: { readonly mass: number; readonly stagger: Mm; readonly waits: boolean }): Pack {
  const { last, shape } = shoe, plate = { ...plateUnder(last, shape.feather, shape.upper), stagger }, foam = foamIn(order, shoe), bench = benchOf(order, last, plate, camberMeasured(shoe), foam);
  const asked: Asked = { mass, wanted: order.wanted, ...(order.bendAtMost === undefined ? {} : { bendAtMost: order.bendAtMost }), ...walked(shoe, mass, plate) };
  const pack = order.plies ? laidPack(order, bench, asked, foam) : foundPack({ shoe, order, bench, asked, foam, waits });
  keep(packsLast, wishesOf(shoe.side, order, mass), pack);
  return pack;
}

const camberMeasured = ({ fitting: { last: { camber } } }: Under): boolean => !isEstimated(camber);

/** Of a client who was seen to walk, the moments of the roll; else those of common practice. */
function walked(shoe: Under, mass: number, plate: Plate): Pick<Asked, 'walking' | 'waist'> {
  if (!isMeasured(curveOf(shoe.fitting.foot?.walk))) return {};
  const { ahead, waist } = rollLoads(walkOnRocker(shoe).own, mass, plate);
  return { ...(ahead.length > 0 ? { walking: ahead } : {}), waist };
}

/** Foam takes part where plies may lie under it, or where it is bonded to the plate. */
const foamIn = ({ underFoam, bond }: PackOrder, shoe: Under): FoamCore | undefined => (underFoam || bond > 0 ? foamUnder(shoe) : undefined);

/** Foam on the long axis, between the stiffener and the outsole. */
function foamUnder({ shape, order }: Under): FoamCore {
  const { upper, build, line, stiffener } = shape, inner = heightsOf(foamFace(shape));
  return { foam: order.foam, thickness: (x) => Math.max(upper(x, 0) + build - stiffener - inner(rollX(line, [x, 0])), 0) };
}

function laidPack(order: PackOrder, bench: Bench, asked: Asked, foam: FoamCore | undefined): Pack {
  const laid = laidAs(order, bench, foam), test = order.bench && benchRead(order.bench, laid.stiffener, bench, asked);
  // A reading that no pack of its kind can give tells nothing, and the camber stays as good as unread.
  const isCounted = test !== undefined && test.reading.means !== 'test again', counted = isCounted ? { ...asked, softer: test.times } : asked;
  const stiffener = isCounted ? laid.stiffener : unproved(laid.stiffener), tried = triedOf(weighedAs(stiffener, bench, laid.foam), bench, counted);
  return { ...packOf(tried, bench, counted, order, laid.foam), by: 'sheet', ...(test ? { test } : {}) };
}

/** What is told of its camber counts half again. */
const unproved = (stiffener: Stiffener): Stiffener => (stiffener.camber?.counted === 'whole' ? { ...stiffener, camber: { ...stiffener.camber, counted: 'half' } } : stiffener);

/** What the maker lays, weighed like a choice. */
function weighedAs(stiffener: Stiffener, { plate }: Bench, foam: boolean): Weighed {
  const { below, above, edges = 0 } = stiffener;
  const choice: Choice = { below: below.length, above: above.length, edges, patch: false };
  return { choice, ...measuredAs(stiffener, plate, foam), plies: below.length + above.length };
}

function packOf({ stiffener, assessed, keeps, spare, thickness, plies, grams }: Tried, { plate }: Bench, asked: Asked, order: PackOrder, underFoam: boolean): Omit<Pack, 'by'> {
  return { stiffener, plate, asked, assessed, order, keeps, spare, thickness, plies, grams, underFoam };
}

/** Hung as its card says, nearer to the tread line where no lever is told and it has no room for the card's. */
function benchRead({ mass, droop, lever, atTread }: NonNullable<PackOrder['bench']>, stiffener: Stiffener, { plate }: Bench, asked: Asked): BenchRead {
  const lines = benchLinesOf({ plate, assessed: { lever: leverOn(plate) } }), at = leverOn(plate, lever ?? (lines ? lines.load - plate.ball : undefined)), behind = lines ? CLAMP_BEHIND : 0;
  const perKg = perKgOf(hungAs(stiffener, 'bare pack'), plate, asked, plate.ball + at, behind);
  if (!perKg) throw new RangeError('a pack that cannot be hung');
  const gave = atTread === undefined || behind === 0 ? 0 : Math.max(atTread - mass * perKg.atBall, 0) * ((at + behind) / behind), read = Math.max(droop - gave, 0), reckoned = mass * perKg.droop, times = read / reckoned;
  return { reckoned, read, gave, lever: at, times, reading: readingOf({ stiffener, plate, asked }, times) };
}

/** The fewest plies more that make a pack keep to what must be, or where it does to all; undefined where none of up to five do. */
export function moreOn({ stiffener, plate, asked, keeps }: Pack): Added | undefined {
  const wanted = keeps === 'not' ? 'must' : 'all';
  return ADDITIONS.find((add) => spareOf(assessedOr(withMore(stiffener, add), { plate }, asked), asked)[wanted] >= 1);
}

interface Search { readonly shoe: Under; readonly order: PackOrder; readonly bench: Bench; readonly asked: Asked; readonly foam: FoamCore | undefined; readonly waits: boolean }

/** The choices found last, by all that decides them, and the packs by the wishes alone. What is kept changes no answer but one that waits. */
const found = new Map<string, Tried | undefined>(), packsLast = new Map<string, Pack>(), likes = new Map<string, object>();
const KEPT = 12;

function keep<T>(kept: Map<string, T>, key: string, value: T): void {
  kept.delete(key);
  kept.set(key, value);
  for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
}

function foundPack({ shoe, order, bench, asked, foam, waits }: Search): Pack {
  const open = openIn(order, bench.plate, foam), { last, shape, rocker } = shoe;
  const body = [shoe.order.foam, shape.build, shape.stiffener, shape.outsole, rocker.face], under = [bench.plate.stagger, last, bench.camber?.counted];
  const decides = JSON.stringify([order, asked.mass, ...under, asked.walking, ...(foam ? body : [])]);
  const before = waits && !found.has(decides) ? packsLast.get(wishesOf(shoe.side, order, asked.mass))?.sought?.choice : undefined;
  const tried = before ? triedOf(asBefore(before, bench, foam), bench, asked) : sought(decides, open, bench, asked);
  const { choice } = tried, underFoam = choice.core?.foam === true, beside = JSON.stringify([order, asked, ...under, choice, underFoam, ...body]), like = likes.get(beside) ?? {};
  keep(likes, beside, like);
  return { ...packOf(tried, bench, asked, order, underFoam), by: 'search', sought: { open, bench, choice, like, otherwise: (other) => otherwiseUnder(shoe, order, bench, other) } };
}

/** Plies that stay are the same ones: what is known of them need not be worked out anew. */
function otherwiseUnder(shoe: Under, order: PackOrder, { plate, ply, outer }: Bench, other: PackOrder): Pick<Sought, 'open' | 'bench'> {
  const foam = foamIn(other, shoe), bench = benchOf(other, shoe.last, plate, camberMeasured(shoe), foam);
  const same = other.ply === order.ply && other.resin === order.resin && other.outerCloth === order.outerCloth;
  return { open: openIn(other, plate, foam), bench: same ? { ...bench, ply, ...(outer ? { outer } : {}) } : bench };
}

const wishesOf = (side: Side, order: PackOrder, mass: number): string => JSON.stringify([side, order, mass]);

/** What the stack counted last for the same wishes, so that a hand that drags waits for one shoe only; undefined where nothing was found yet. */
export function countedLast({ side, order }: ShoeFitting, { mass }: Fitting['wearer']): Pick<Pack, 'thickness' | 'grams'> | undefined {
  return order.kind === 'rocker' && order.pack && mass ? packsLast.get(wishesOf(side, order.pack, mass.value)) : undefined;
}

function sought(decides: string, open: Open, bench: Bench, asked: Asked): Tried {
  const tried = found.get(decides) ?? searched(open, bench, asked);
  if (!tried) throw new RangeError('no pack is thin enough for what is asked');
  keep(found, decides, tried);
  return tried;
}

/** The choice as it was, in the shoe as it is now. */
const asBefore = (choice: Choice, bench: Bench, foam: FoamCore | undefined): Weighed =>
  weigh(choice.core?.foam && foam ? { ...choice, core: { ...choice.core, thickness: foam.thickness } } : choice, bench);
