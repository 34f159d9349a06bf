import type { Grams, Mm } from '../geometry/units.ts';
import { SHEET_GLUE } from '../materials/stiffeners.ts';
import type { Ply } from './ply.ts';
import { stepsOf } from './steps.ts';
import { at, type Attached, type CoreLayer, type PlacedPly, type Plate, type Stiffener, type Stretch } from './stiffener.ts';

/** What a pack weighs when it is cured and trimmed, layer by layer: the one place every paper, figure and file has it from. */

/** A ply as it lies, g; of a measured one nobody knows how it parts. Area in mm². */
export interface PlyGrams { readonly area: number; readonly cloth?: Grams; readonly resin?: Grams; readonly weight: Grams }

/** What each layer of a pack weighs; 0 where there is none. */
export interface LayerGrams {
  /** In the order of laying, from the foot down. */
  readonly plies: readonly PlyGrams[];
  /** As it is cut, dry. */
  readonly core: Grams;
  /** Resin that its two faces drink. */
  readonly coat: Grams;
  /** Between the sheets it is glued up of. */
  readonly glue: Grams;
  /** A strip of steel on the pack. */
  readonly shank: Grams;
}

/** A pack by what it is made of. Of a ply that was measured cloth and resin are not known apart: they are left out. */
export interface PackGrams {
  /** Dry. */
  readonly cloth?: Grams;
  /** All that stays in it, that of the core's coat too. */
  readonly resin?: Grams;
  readonly core: Grams;
  /** Between the sheets of its core. */
  readonly glue?: Grams;
  /** A strip of steel on it. */
  readonly shank?: Grams;
  /** All together. */
  readonly pack: Grams;
}

/** Resin that is rubbed into each face of a core that drinks it, g/m². Foam has closed pores and takes next to none. Common practice. */
export const CORE_COAT = 100;
const CLOSED: readonly string[] = ['light EVA', 'firm EVA', 'hard EVA'];
export const drinks = ({ name }: { readonly name: string }): boolean => !CLOSED.includes(name);

const SQUARE_M = 1e6, FACES = 2;

/** @param foam the core is the foam body, which is no part of it */
export function layerGramsOf(stiffener: Stiffener, plate: Plate, foam: boolean): LayerGrams {
  const { below, above, core, edges = 0, attached } = stiffener, steps = stepsOf(stiffener, plate, foam), upper = above.length > 0 ? above : below;
  const plies = (all: readonly PlacedPly[], stepped: readonly Mm[]): PlyGrams[] => all.toReversed().map(({ ply, over }, i) => plyGrams(ply, areaOf(plate, over, (stepped[i] ?? 0) - (all === upper ? edges : 0))));
  const coreArea = core && !foam ? areaOf(plate, core.over, steps.core ?? 0) : 0;
  return {
    plies: [...plies(above, steps.above), ...plies(below, steps.below)], core: core && !foam ? (coreArea * at(core.thickness, plate.ball) * core.material.density) / 1000 : 0,
    coat: core && !foam && drinks(core) ? (FACES * coreArea * CORE_COAT) / SQUARE_M : 0,
    glue: core && !foam ? (jointsOf(core) * coreArea * SHEET_GLUE.perJoint) / SQUARE_M : 0, shank: attached.reduce((sum, layer) => sum + stripGrams(layer, plate), 0),
  };
}

const jointsOf = ({ sheets }: CoreLayer): number => Math.max((sheets?.count ?? 1) - 1, 0);

/** A strip that comes with the stiffener, as long as it lies on the plate. */
function stripGrams({ density = 0, width, thickness, over }: Attached, plate: Plate): Grams {
  const from = Math.max(over?.from ?? plate.from, plate.from), to = Math.min(over?.to ?? plate.to, plate.to);
  return width === undefined || to <= from ? 0 : (density * width * at(thickness, (from + to) / 2) * (to - from)) / 1000;
}

const plyGrams = ({ grams, thickness, density }: Ply, area: number): PlyGrams =>
  ({ area, ...(grams ? { cloth: (grams.cloth * area) / SQUARE_M, resin: (grams.resin * area) / SQUARE_M } : {}), weight: (area * thickness * density) / 1000 });

export function packGramsOf({ plies, core, coat, glue, shank }: LayerGrams): PackGrams {
  const sum = (of: (one: PlyGrams) => number): Grams => plies.reduce((total, one) => total + of(one), 0), isKnown = plies.every(({ cloth }) => cloth !== undefined);
  return {
    ...(isKnown ? { cloth: sum(({ cloth = 0 }) => cloth), resin: sum(({ resin = 0 }) => resin) + coat } : {}), core, ...(glue > 0 ? { glue } : {}), ...(shank > 0 ? { shank } : {}),
    pack: sum(({ weight }) => weight) + core + coat + glue + shank,
  };
}

/** How far resin laid by hand, and a core as it is sold, may be off what is counted with. Common practice. */
const RESIN_OFF = 0.2, CORE_OFF = 0.1;
/** Between what a pack may weigh that is as it should be. Of plies that were measured half is taken to be resin. */
export function weightBand({ resin, core, glue = 0, shank = 0, pack }: PackGrams): readonly [least: Grams, most: Grams] {
  const off = RESIN_OFF * (resin ?? (pack - core - glue - shank) / 2) + CORE_OFF * core;
  return [pack - off, pack + off];
}

export const gramsOf = (stiffener: Stiffener, plate: Plate, foam: boolean): PackGrams => packGramsOf(layerGramsOf(stiffener, plate, foam));

/** The same as wide all through as the plate, its core dry: packs that differ only in how plies are split weigh alike. */
export function bulkOf({ below, above, core, edges = 0, attached }: Stiffener, plate: Plate, foam: boolean): Grams {
  const upper = above.length > 0 ? above : below, wide = ({ over }: PlacedPly, all: readonly PlacedPly[]): number => measured(plate, over).area + (all === upper ? 2 * edges * ((over ?? plate).to - (over ?? plate).from) : 0);
  const plies = [below, above].flatMap((all) => all.map((one) => wide(one, all) * one.ply.thickness * one.ply.density)).reduce((sum, one) => sum + one, 0);
  const whole = measured(plate, undefined).area, cored = core && !foam ? whole * (at(core.thickness, plate.ball) * core.material.density + (jointsOf(core) * SHEET_GLUE.perJoint) / 1000) : 0;
  return (plies + cored) / 1000 + attached.reduce((sum, layer) => sum + stripGrams(layer, plate), 0);
}

/** A stretch of the plate: its area, and how long its edge is where more is set in. */
interface Measured { readonly area: number; readonly edge: Mm; readonly isWhole: boolean }
const measures = new WeakMap<Plate, Map<string, Measured>>(), STEP: Mm = 1;

function measured(plate: Plate, over: Stretch | undefined): Measured {
  const known = measures.get(plate) ?? new Map<string, Measured>(), key = over ? `${over.from} ${over.to}` : '', one = known.get(key) ?? measure(plate, over);
  known.set(key, one);
  measures.set(plate, known);
  return one;
}

function measure({ from, to, width }: Plate, over: Stretch | undefined): Measured {
  const begin = over?.from ?? from, end = over?.to ?? to, n = Math.max(1, Math.ceil((end - begin) / STEP)), step = (end - begin) / n;
  const widths = Array.from({ length: n + 1 }, (_, i) => width(begin + i * step)), middles = Array.from({ length: n }, (_, i) => width(begin + (i + 0.5) * step));
  const sides = middles.reduce((sum, _, i) => sum + 2 * Math.hypot(step, (widths[i + 1]! - widths[i]!) / 2), 0);
  return { area: middles.reduce((sum, wide) => sum + wide * step, 0), edge: sides + (over ? 0 : widths[0]! + widths[n]!), isWhole: over === undefined };
}

/** mm² of a plate, or of a stretch of it, set in further. A round line set in encloses less by its length times the way in, and a round of that way is gained back. */
function areaOf(plate: Plate, over: Stretch | undefined, setIn: Mm): number {
  const { area, edge, isWhole } = measured(plate, over);
  return Math.max(area - edge * setIn + (isWhole ? Math.PI * setIn ** 2 : 0), 0);
}
