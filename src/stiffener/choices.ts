import type { Grams, Mm } from '../geometry/units.ts';
import type { CoreMaterial } from '../materials/stiffeners.ts';
import { tightestRadius } from './plate.ts';
import type { Ply } from './ply.ts';
import { sheetsFor } from './sheets.ts';
import type { Along, Attached, CoreLayer, Counted, PlacedPly, Plate, Stiffener, Stretch } from './stiffener.ts';
import { bulkOf, gramsOf, type PackGrams } from './weighed.ts';

/** A core that may lie between two packs. */
export interface CoreChoice {
  readonly name: string;
  readonly material: CoreMaterial;
  readonly thickness: Along;
  /** The foam body, with a pack under it: it is there anyway. */
  readonly foam: boolean;
  readonly count?: Counted;
}

/** One way to lay a pack: how many plies below and above the core, what lies between, edges turned up, a strip across the ball on top. */
export interface Choice { readonly below: number; readonly above: number; readonly core?: CoreChoice; readonly edges: Mm; readonly patch: boolean }

/** What lies on the plate and takes part: all that lies above it, and the foam body under it, unless that is its core. */
export interface BenchAttached { readonly above: readonly Attached[]; readonly foam?: Attached }

/** What a pack is laid from and where. */
export interface Bench {
  readonly ply: Ply;
  /** The outermost ply on either side, where it is of another cloth. */
  readonly outer?: Ply;
  readonly plate: Plate;
  readonly camber?: NonNullable<Stiffener['camber']>;
  readonly attached?: BenchAttached;
}

/** What may be chosen from. */
export interface Open {
  readonly plies: { readonly least: number; readonly most: number };
  /** Undefined stands for none. */
  readonly cores: readonly (CoreChoice | undefined)[];
  readonly edges: readonly Mm[];
  /** The most that plies and core may be thick together; the foam body does not count. */
  readonly thicknessAtMost: Mm;
}

/** Plies that one pack is laid from; more than five nobody lays by hand. Common practice. */
export const PLIES_MOST = 5;
/** How high edges are turned up, where it is asked whether that would help; mm. Common practice. */
export const EDGE_HEIGHTS = [6, 8] as const;
/** A strip across the ball reaches so far behind and ahead of its line. Common practice. */
const PATCH = { behind: 30, ahead: 40 } as const;

const patchOver = ({ ball, from, to }: Plate): Stretch => ({ from: Math.max(ball - PATCH.behind, from), to: Math.min(ball + PATCH.ahead, to) });

/** Rounding of the arithmetic itself. */
const ARITHMETIC: Mm = 1e-9;
/** Whether a pack keeps within the most it may be thick. */
export const isWithin = ({ thickness }: Pick<Weighed, 'thickness'>, most: Mm): boolean => thickness <= most + ARITHMETIC;

/** Every way that is open (where all are thicker than is asked, the thinnest), the fewest plies first, of those the lightest, then the thinnest: the order in which they are tried. */
export function choicesIn(open: Open, bench: Bench): Weighed[] {
  const counts = Array.from({ length: open.plies.most - open.plies.least + 1 }, (_, i) => open.plies.least + i);
  const all = counts.flatMap((plies) => open.cores.flatMap((core) => open.edges.flatMap((edges) => [false, true].flatMap((patch) => splits(plies - (patch ? 1 : 0), core, edges, patch)))));
  const weighed = all.map((choice) => weigh(choice, bench)), most = Math.max(open.thicknessAtMost, Math.min(...weighed.map(({ thickness }) => thickness)));
  return weighed.filter((one) => isWithin(one, most)).sort((a, b) => a.plies - b.plies || a.bulk - b.bulk || a.thickness - b.thickness);
}

function splits(full: number, core: CoreChoice | undefined, edges: Mm, patch: boolean): Choice[] {
  if (!core) return full >= 1 ? [{ below: full, above: 0, edges, patch }] : [];
  return Array.from({ length: Math.max(0, full - 1) }, (_, i): Choice => ({ below: i + 1, above: full - 1 - i, core, edges, patch }));
}

export const attachedBeside = (attached: BenchAttached | undefined, foamBetween: boolean): readonly Attached[] =>
  (attached ? [...attached.above, ...(attached.foam && !foamBetween ? [attached.foam] : [])] : []);

/** All plies along the shoe: a weave is as stiff across. */
export function layUp({ below, above, core, edges, patch }: Choice, { ply, outer, plate, camber, attached }: Bench): Stiffener {
  const many = (count: number, strip: boolean, outside: Outside): readonly PlacedPly[] => sharedPlies({ ply, ...(outer ? { outer } : {}), plate, count, strip, outside });
  return {
    below: many(below, patch && !core, core ? 'bottom' : 'both'), above: core ? many(above, patch, 'top') : [], attached: attachedBeside(attached, core?.foam === true),
    ...(core ? { core: coreLaid(core, plate) } : {}),
    ...(camber ? { camber } : {}), ...(edges > 0 ? { edges } : {}),
  };
}

/** A core in the sheets it is glued up of; the foam body has none. */
export function coreLaid({ name, material, thickness, count, foam }: CoreChoice, plate: Plate): CoreLayer {
  const sheets = foam || typeof thickness !== 'number' ? undefined : sheetsFor(material, thickness, tightestRadius(plate));
  return { name, material, thickness, ...(count ? { count } : {}), ...(sheets ? { sheets } : {}) };
}

/** Where a list of plies looks out of the stiffener. */
type Outside = 'top' | 'bottom' | 'both';
interface Alike { readonly ply: Ply; readonly outer?: Ply; readonly plate: Plate; readonly count: number; readonly strip: boolean; readonly outside: Outside }

type Lists = Map<string, readonly PlacedPly[]>;
const shared = new WeakMap<Plate, WeakMap<Ply, Lists>>();

/** The same list for the same plies: what is worked out of it is worked out once. */
function sharedPlies(wanted: Alike): readonly PlacedPly[] {
  const { ply, outer, plate, count, strip, outside } = wanted, laid = shared.get(plate) ?? new WeakMap<Ply, Lists>(), lists: Lists = laid.get(ply) ?? new Map();
  const key = outer ? `${count} ${strip} ${outside} ${outer.name} ${outer.thickness}` : `${count} ${strip}`;
  const list = lists.get(key) ?? pliesOf(wanted);
  lists.set(key, list);
  laid.set(ply, lists);
  shared.set(plate, laid);
  return list;
}

/** A strip lies under the outermost ply. */
function pliesOf({ ply, outer = ply, plate, count, strip, outside }: Alike): readonly PlacedPly[] {
  const at = (i: number): Ply => ((outside !== 'top' && i === 0) || (outside !== 'bottom' && i === count - 1) ? outer : ply), all = Array.from({ length: count }, (_, i): PlacedPly => ({ ply: at(i), angle: 0 }));
  if (!strip) return all;
  const patch: PlacedPly = { ply, angle: 0, over: patchOver(plate) }, inside = outer !== ply && outside !== 'bottom' && count > 0 ? count - 1 : count;
  return [...all.slice(0, inside), patch, ...all.slice(inside)];
}

/** A choice as it is laid, how many plies it takes, how thick it is and what it weighs. */
export interface Weighed {
  readonly choice: Choice;
  readonly stiffener: Stiffener;
  readonly plies: number;
  readonly thickness: Mm;
  readonly grams: PackGrams;
  /** What it would weigh as wide all through as the plate, its core dry: by it choices are told apart, not by the gram that steps take. */
  readonly bulk: Grams;
}

/** Plies of a choice, its strip counted. */
const pliesIn = ({ below, above, patch }: Choice): number => below + above + (patch ? 1 : 0);

export function weigh(choice: Choice, bench: Bench): Weighed {
  const stiffener = layUp(choice, bench), foam = choice.core?.foam === true;
  return { choice, ...measuredAs(stiffener, bench.plate, foam), plies: pliesIn(choice) };
}

/** How thick a stiffener is and what it weighs. @param foam the core is the foam body, which does not count */
export const measuredAs = (stiffener: Stiffener, plate: Plate, foam: boolean): Omit<Weighed, 'choice' | 'plies'> =>
  ({ stiffener, thickness: thicknessOf(stiffener, foam), grams: gramsOf(stiffener, plate, foam), bulk: bulkOf(stiffener, plate, foam) });

/** Of plies and core where they are thickest, strips counted. @param foam the core is the foam body, which does not count */
function thicknessOf({ below, above, core }: Stiffener, foam: boolean): Mm {
  const plies = [...below, ...above].reduce((sum, { ply }) => sum + ply.thickness, 0);
  return plies + (core && !foam && typeof core.thickness === 'number' ? core.thickness : 0);
}
