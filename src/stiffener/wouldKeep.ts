import type { PackOrder, PlyOrder } from '../fitting/fitting.ts';
import { outerOf } from '../fitting/readStiffener.ts';
import type { PackSide } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import { CORES, type ClothName, type CoreName } from '../materials/stiffeners.ts';
import { EDGE_HEIGHTS, isWithin, PLIES_MOST, weigh, type Bench, type Choice, type CoreChoice, type Open, type Weighed } from './choices.ts';
import { onceForAlike, type Pack, type Sought } from './pack.ts';
import { hoping, looking, searched, triedOf, type Tried } from './search.ts';
import { at, type PlacedPly } from './stiffener.ts';

/** What would keep to more than a pack that was sought. Each is put in and sought like the pack itself, so that the sheet that says so gets that very pack. */

/** What else an order would say. @property cloth in place of the one that is ordered */
export interface OrderChange {
  readonly core?: CoreName;
  readonly coreThickness?: Mm;
  readonly cloth?: ClothName;
  readonly edges?: Mm;
  readonly underFoam?: boolean;
  readonly thicknessAtMost?: Mm;
  readonly camber?: Mm;
  /** From the bottom up; of the pack's cloth where none is named. */
  readonly plies?: readonly { readonly pack: PackSide; readonly cloth?: string }[];
}

/** Another order, and the pack that it gets. */
export interface Would { readonly change: OrderChange; readonly keeps: 'all' | 'must'; readonly tried: Tried }

/** What is tried of a kind, the least change first. @property only leaves of what is then open what was not open before */
interface Kind { readonly wishes: readonly Wish[]; readonly only?: (open: Open) => Open }
/** @property core any: left open */
type Wish = Omit<OrderChange, 'core' | 'coreThickness' | 'plies'> & { readonly core?: CoreName | 'any' };

const CORE_NAMES = Object.keys(CORES) as readonly CoreName[];
const ROOMS: readonly Mm[] = [12, 15], CAMBERS: readonly Mm[] = [3, 5], PLIES_BEYOND = 16;
/** The first where the plies are of another fibre than carbon. */
const CLOTHS_TRIED: readonly ClothName[] = ['carbon twill 200', 'carbon unidirectional 200', 'carbon unidirectional 300'];

/**
 * Of each kind of change the first that keeps to all, else the first that keeps to what must be where the pack does not; two
 * changes at once where none does alone. Worked out once for packs that are alike.
 * @param some only what is quick to look for where that helps, and no further than to what does
 */
export function wouldKeep(pack: Pack, some?: 'some'): readonly Would[] {
  if (pack.keeps === 'all') return [];
  const looks = [quick, slow, later], found: Would[] = [];
  for (const look of looks) if (!some || found.length === 0) found.push(...look(pack));
  return found.length > 0 || pack.keeps === 'must' ? found : twoAtOnce(pack);
}

/** Looked for first: more room, another cloth, and of a core that is told in one thickness any other. */
const quick = onceForAlike((pack, sought): readonly Would[] => {
  const { sheets, room, cloth } = kindsFor(pack, sought);
  return [sheets, room, cloth].flatMap((kind) => firstThat([kind], pack, sought));
}, []);

const slow = onceForAlike((pack, sought): readonly Would[] => {
  const { cores, edges, underFoam } = kindsFor(pack, sought);
  return [...cores, edges, underFoam].flatMap((kind) => firstThat([kind], pack, sought));
}, []);

/** What takes longer to look for: another last, and more plies. */
const later = onceForAlike((pack, sought): readonly Would[] => [...firstThat([kindsFor(pack, sought).camber], pack, sought), ...byPlies(pack, sought)], []);

const twoAtOnce = onceForAlike((pack, sought): readonly Would[] => {
  const { anyCore, room, cloth, edges, underFoam } = kindsFor(pack, sought);
  return [[anyCore, cloth], [room, cloth], [anyCore, room], [edges, cloth], [underFoam, cloth], [edges, room]].flatMap((two) => firstThat(two, pack, sought));
}, []);

type Kinds = Readonly<Record<'sheets' | 'edges' | 'underFoam' | 'room' | 'cloth' | 'camber' | 'anyCore', Kind>> & { readonly cores: readonly Kind[] };

/** Every kind of change, each with nothing to try where the order says it already. */
function kindsFor({ order, plate: { ball } }: Pack, { open, bench }: Sought): Kinds {
  const { core, coreThickness, ply } = order, others = CORE_NAMES.filter((name) => open.cores.every((one) => one?.name !== name));
  const cambered = bench.camber && bench.camber.counted !== 'none' ? at(bench.camber.height, ball) : 0;
  return {
    cores: core === undefined ? [] : others.map((name): Kind => ({ wishes: [{ core: name }], only: (next) => ({ ...next, cores: next.cores.filter((one) => one?.name === name) }) })),
    anyCore: { wishes: core === undefined ? [] : [{ core: 'any' }] },
    sheets: { wishes: typeof core === 'string' && core !== 'none' && coreThickness !== undefined ? [{ core }] : [] },
    edges: { wishes: EDGE_HEIGHTS.filter((edges) => edges > order.edges).map((edges) => ({ edges })), only: (next) => ({ ...next, edges: next.edges.filter((one) => one > 0) }) },
    underFoam: { wishes: order.underFoam ? [] : [{ underFoam: true }], only: (next) => ({ ...next, cores: next.cores.filter((one) => one?.foam) }) },
    room: { wishes: ROOMS.filter((room) => room > order.thicknessAtMost).slice(0, 1).map((thicknessAtMost) => ({ thicknessAtMost })) },
    cloth: { wishes: CLOTHS_TRIED.filter((cloth) => ply.kind !== 'cloth' || ply.cloth !== cloth).map((cloth) => ({ cloth })) },
    camber: { wishes: CAMBERS.filter((camber) => camber > cambered).map((camber) => ({ camber })) },
  };
}

/** The first wish, of one kind or of two at once, that keeps to all; else the first that keeps to what must be, where the pack does not. */
function firstThat(kinds: readonly Kind[], pack: Pack, sought: Sought): Would[] {
  const wishes = kinds.reduce<readonly Wish[]>((all, { wishes: more }) => all.flatMap((wish) => more.map((one) => ({ ...wish, ...one }))), [{}]);
  const only = kinds.length === 1 ? kinds[0]?.only : undefined, least = pack.keeps === 'not' ? 'must' : 'all';
  let fair: Would | undefined;
  for (const wish of wishes) {
    const order = ordered(pack.order, wish), { open, bench } = sought.otherwise(order), tried = searched(only ? only(open) : open, bench, pack.asked, { least });
    if (!tried || tried.keeps === 'not' || !isWithin(tried, order.thicknessAtMost)) continue;
    const would: Would = { change: settled(wish, tried), keeps: tried.keeps, tried };
    if (tried.keeps === 'all') return [would];
    fair ??= would;
  }
  return fair ? [fair] : [];
}

/** The order as it would be. A core that is changed is sought in every thickness; outermost plies that are usual for a cloth go with it. */
function ordered(order: PackOrder, { core, cloth, ...wish }: Wish): PackOrder {
  const { core: _, coreThickness: __, ...coreless } = order, kept: PackOrder = { ...(core === undefined ? order : coreless), ...wish, ...(core === undefined || core === 'any' ? {} : { core }) };
  return cloth === undefined ? kept : clothed(kept, { kind: 'cloth', cloth });
}

function clothed({ outerCloth: typed, ...order }: PackOrder, ply: PlyOrder): PackOrder {
  const outerCloth = typed === outerOf(order.ply) ? outerOf(ply) : typed;
  return { ...order, ply, ...(outerCloth ? { outerCloth } : {}) };
}

/** As it is to be typed: a core with the thickness that was found, no more room than is needed. The same pack is the best of what is open then. */
function settled({ core, thicknessAtMost, ...wish }: Wish, { choice, thickness }: Tried): OrderChange {
  return { ...wish, ...(core === undefined ? {} : typed(choice)), ...(thicknessAtMost === undefined ? {} : { thicknessAtMost: roomFor(thickness, thicknessAtMost) }) };
}

/** The core of a choice, as it is told on a sheet. */
function typed({ core }: Choice): Pick<OrderChange, 'core' | 'coreThickness'> {
  const name = CORE_NAMES.find((one) => one === core?.name);
  return core && name && typeof core.thickness === 'number' ? { core: name, coreThickness: core.thickness } : {};
}

/** A tenth of a mm, and as much more as a value that is typed in inches may be short of it. */
const SHORT: Mm = 0.02;
const roomFor = (thickness: Mm, most: Mm): Mm => Math.min(Math.ceil((thickness + SHORT) * 10) / 10, most);

/** More plies than are sought, the fewest of them: laid all along, as a list of plies is typed. */
function byPlies(pack: Pack, { open, bench }: Sought): readonly Would[] {
  const { order, asked, keeps } = pack, hope = hoping(bench, asked), closely = looking(bench, asked), least = keeps === 'not' ? 'must' : 'all';
  for (let plies = PLIES_MOST + 1; plies <= PLIES_BEYOND; plies++) {
    const laid = open.cores.flatMap((core) => laidOf(plies, core, order.edges)).map((choice) => weigh(choice, bench)).filter((one) => isWithin(one, order.thicknessAtMost));
    const good = laid.filter(({ stiffener }) => hope(stiffener)[least] >= 1).flatMap((one) => { const spare = closely(one, least, 1); return spare[least] >= 1 ? [{ one, spare }] : []; });
    if (good.length === 0) continue;
    const tried = triedOf(good.sort((a, b) => a.one.grams.pack - b.one.grams.pack || b.spare.all - a.spare.all)[0]!.one, bench, asked);
    return tried.keeps === 'not' ? [] : [{ change: asLaid(tried, order, bench), keeps: tried.keeps, tried }];
  }
  return [];
}

const laidOf = (plies: number, core: CoreChoice | undefined, edges: Mm): Choice[] =>
  (core ? Array.from({ length: plies - 1 }, (_, i): Choice => ({ below: i + 1, above: plies - 1 - i, core, edges, patch: false })) : [{ below: plies, above: 0, edges, patch: false }]);

/** Ply for ply, with whatever else the order leaves open or says otherwise. */
function asLaid({ choice, stiffener: { below, above } }: Weighed, order: PackOrder, { ply: usual }: Bench): OrderChange {
  const of = (pack: PackSide) => ({ ply: { name } }: PlacedPly) => ({ pack, ...(name === usual.name ? {} : { cloth: name }) });
  const { core } = typed(choice), thickness = choice.core?.thickness, leavesFoam = order.underFoam && choice.core?.foam !== true;
  return {
    plies: [...below.map(of('below')), ...above.map(of('above'))], ...(leavesFoam ? { underFoam: false } : {}),
    ...(order.core === undefined && core ? { core } : {}), ...(order.coreThickness === undefined && typeof thickness === 'number' ? { coreThickness: thickness } : {}),
  };
}
