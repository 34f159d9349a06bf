import type { PliesOrder } from '../../fitting/making.ts';
import { enclosedArea, lengthOf, pointOn, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { clamp, rootBetween } from '../../geometry/solve.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import type { Pack } from '../../stiffener/pack.ts';
import { NARROWEST, SET_IN } from '../../stiffener/plate.ts';
import type { Ply } from '../../stiffener/ply.ts';
import { SKIVED } from '../../stiffener/section.ts';
import { levelsOf, mostStagger } from '../../stiffener/steps.ts';
import { at, type CoreLayer, type PlacedPly, type Plate, type Stretch } from '../../stiffener/stiffener.ts';
import { setOut } from '../setOut.ts';
import { stripOf } from './strip.ts';

/** How far the end of a strip stays from any other end, so that plies do not stop at one line: about twenty times as thick as a ply. Common practice. */
export const END_STEP: Mm = 5;
/** Shorter than this a strip is not worth laying. Common practice. */
export const LEAST_STRIP: Mm = 30;

/**
 * What of a pack plies are cut from. @property underFoam the foam body is its core: the plies below lie under it, flat on the way
 * its underside runs, and the core is no layer
 */
export type LaidPack = Pick<Pack, 'stiffener' | 'plate' | 'asked' | 'assessed'> & { readonly underFoam?: boolean };

/** A layer as it is cut, LEFT shoe, seen from above, mm. Numbers run in the order of laying, from the foot down: the shoe lies on its back. */
export type Layer = PlyLayer | CoreShape;
interface AnyLayer {
  readonly number: number;
  /** How many steps it is set in beyond the first. */
  readonly level: number;
  /** How far it stays inside the feather line; less than nothing where it reaches beyond, for edges that are turned up. */
  readonly inset: Mm;
  readonly outline: Path;
  /** As it lies in plan, where the outline is laid flat. */
  readonly plan?: Path;
  /** Mm². */
  readonly area: number;
  /** Where a strip or a core begins and ends as it is cut; all along the plate where left out. */
  readonly over?: Stretch;
}
export interface PlyLayer extends AnyLayer {
  readonly kind: 'ply';
  readonly ply: Ply;
  readonly angle: Rad;
  readonly pack: 'above' | 'below';
  /** Where its edges are turned up. */
  readonly fold?: Path;
}
/** @property skives places along the shoe from which a core is skived down towards its end */
export interface CoreShape extends AnyLayer { readonly kind: 'core'; readonly core: CoreLayer; readonly thickest: Mm; readonly skives: readonly Mm[] }

export interface Layers {
  readonly layers: readonly Layer[];
  /** How far any two edges really keep from each other; less than ordered where the plate is too narrow for it. */
  readonly stagger: Mm;
  /** Strips that are too short for their ends to be stepped; they are cut as they are placed. */
  readonly short: readonly ShortStrip[];
}
/** @property least length at which its ends could be stepped */
export interface ShortStrip { readonly number: number; readonly length: Mm; readonly least: Mm }

interface Wanted { readonly placed?: PlacedPly; readonly core?: CoreLayer; readonly pack: PlyLayer['pack'] }

/** Bottom up as the stiffener is told, foot first as it is laid. */
function inOrder({ below, above, core }: LaidPack['stiffener'], foamBetween: boolean): Wanted[] {
  return [
    ...above.map((placed): Wanted => ({ placed, pack: 'above' })).reverse(), ...(core && !foamBetween ? [{ core, pack: 'below' } as const] : []),
    ...below.map((placed): Wanted => ({ placed, pack: 'below' })).reverse(),
  ];
}

/** What a pack is cut to. @param feather line of the last, LEFT shoe @param lay where a place of the plan comes to lie when the underside of the foam is laid flat */
export function layersOf({ stiffener, plate, underFoam = false }: Pick<LaidPack, 'stiffener' | 'plate' | 'underFoam'>, feather: Path, { stagger: ordered }: Pick<PliesOrder, 'stagger'>, lay?: (at: Point) => Point): Layers {
  const wanted = inOrder(stiffener, underFoam), stagger = Math.min(ordered, mostStagger(plate, wanted.length)), levels = levelsOf(wanted.map(({ placed }) => placed?.over !== undefined)), taken: Mm[] = [], short: ShortStrip[] = [];
  const layers = wanted.map((one, i): Layer => {
    const own = one.placed?.over ?? one.core?.over, stepped = own && stepIn(own, plate, taken, one.core !== undefined);
    if (stepped?.needs !== undefined) short.push({ number: i + 1, length: stepped.over.to - stepped.over.from, least: stepped.needs });
    if (stepped) taken.push(stepped.over.from, stepped.over.to);
    return cutOf(one, {
      number: i + 1, level: levels[i]!,
      inset: SET_IN + levels[i]! * stagger, step: levels[i]! * stagger, feather, plate, ...(underFoam && one.pack === 'below' && lay ? { lay } : {}), edges: one.pack === 'above' ? stiffener.edges ?? 0 : 0, ...(stepped ? { over: stepped.over } : {}),
    });
  });
  return { layers, stagger, short };
}

/** A stretch whose ends keep off all others; the core is cut as it is. @returns how long it would have to be, where it is too short for that */
function stepIn(over: Stretch, { from: rear, to: tip }: Plate, taken: readonly Mm[], isCore: boolean): { readonly over: Stretch; readonly needs?: Mm } {
  const whole: Stretch = { from: Math.max(over.from, rear), to: Math.min(over.to, tip) };
  if (isCore) return { over: whole };
  const from = whole.from > rear ? clearOf(whole.from, 1, taken) : whole.from, to = whole.to < tip ? clearOf(whole.to, -1, taken) : whole.to;
  return to - from >= LEAST_STRIP || isAlone(whole, from, to) ? { over: { from, to } } : { over: whole, needs: whole.to - whole.from + LEAST_STRIP - (to - from) };
}
const isAlone = (whole: Stretch, from: Mm, to: Mm): boolean => whole.from === from && whole.to === to;

function clearOf(end: Mm, inwards: 1 | -1, taken: readonly Mm[]): Mm {
  const near = taken.find((other) => Math.abs(other - end) < END_STEP - 1e-9);
  return near === undefined ? end : clearOf(near + inwards * END_STEP, inwards, taken);
}

interface Cut { readonly number: number; readonly level: number; readonly inset: Mm; readonly step: Mm; readonly feather: Path; readonly plate: Plate; readonly edges: Mm; readonly over?: Stretch; readonly lay?: (at: Point) => Point }

function cutOf({ placed, core, pack }: Wanted, { number, level, inset, step, feather, plate, edges, over, lay }: Cut): Layer {
  const round = (by: Mm): Path => along(setOut(feather, -by), plate, step, over), plan = round(inset - edges), outline = lay ? laidFlat(plan, lay) : plan;
  const any = { number, level, inset: inset - edges, outline, area: enclosedArea(outline), ...(lay ? { plan } : {}), ...(over ? { over } : {}) };
  if (placed) return { ...any, kind: 'ply', ply: placed.ply, angle: placed.angle, pack, ...(edges > 0 ? { fold: round(inset) } : {}) };
  return { ...any, kind: 'core', core: core!, thickest: thickestOf(core!, plate), skives: skivesOf(core!, plate) };
}

/** A line as a row of short straight ones, none further off than a hundredth of a millimetre, each end laid flat. */
function laidFlat(path: Path, lay: (at: Point) => Point): Path {
  const points = path.flatMap((piece) => { const n = Math.ceil(lengthOf(piece) / CHORD); return Array.from({ length: n }, (_, i) => lay(pointOn(piece, i / n))); });
  return points.map((from, i) => ({ kind: 'line', from, to: points[(i + 1) % points.length]! }));
}
const CHORD: Mm = 1.5;

/** The line set in, cut across where the plate does not run to its ends, and where the layer is a strip. */
function along(line: Path, plate: Plate, step: Mm, over: Stretch | undefined): Path {
  const back = isCutAcross(plate, plate.from - 1) ? plate.from + step : -Infinity, tip = isCutAcross(plate, plate.to + 1) ? plate.to - step : Infinity;
  const from = over && over.from > plate.from ? over.from : back, to = over && over.to < plate.to ? over.to : tip;
  return stripOf(line, from, to);
}
/** Where the plate would still be wide enough just beyond its end, it was ended on purpose. */
const isCutAcross = ({ width }: Plate, beyond: Mm): boolean => width(beyond) >= NARROWEST;

const PLACES = 60;
const thickestOf = ({ thickness, over }: CoreLayer, { from, to }: Plate): Mm => {
  const [a, b] = [over?.from ?? from, over?.to ?? to];
  return Math.max(...Array.from({ length: PLACES + 1 }, (_, i) => at(thickness, clamp(a + ((b - a) * i) / PLACES, from, to))));
};

/** Where a core that ends on the plate has its full thickness. */
function skivesOf({ thickness, over }: CoreLayer, { from, to }: Plate): Mm[] {
  if (!over) return [];
  const middle = (over.from + over.to) / 2, full = (x: Mm, end: Mm): number => Math.abs(x - end) / SKIVED - at(thickness, x);
  const reached = (end: Mm): Mm[] => (full(middle, end) > 0 ? [rootBetween((x) => full(x, end), end, middle)] : [middle]);
  return [...(over.from > from ? reached(over.from) : []), ...(over.to < to ? reached(over.to) : [])];
}
