import type { PliesOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import { windowRound } from '../../geometry/clip.ts';
import type { Grams, Mm } from '../../geometry/units.ts';
import type { PackGrams } from '../../stiffener/choices.ts';
import type { Pack } from '../../stiffener/pack.ts';
import type { Layer, PlyLayer } from './layers.ts';

const PER_M2 = 1e6;
/** Peel ply, film and pad reach beyond the largest ply by this all round. Common practice. */
export const BEYOND: Mm = 30;

/** What one ply takes; grams are those of its own outline, nothing spared. Of a measured ply nobody knows how they part. */
export interface PlyAmount { readonly number: number; readonly area: number; readonly cloth?: Grams; readonly resin?: Grams; readonly weight: Grams }

/** What is weighed out for one shoe. Areas in mm². */
export interface Amounts {
  readonly plies: readonly PlyAmount[];
  readonly cloth: Grams;
  /** That stays in the plies. */
  readonly inPlies: Grams;
  /** With what is spared for brush, cup and peel ply; of it so much resin and so much hardener. */
  readonly mixed: Grams;
  readonly resin: Grams;
  readonly hardener: Grams;
  /** Plies whose cloth and resin are not known. */
  readonly unknown: readonly number[];
  /** The laid pack without its core. */
  readonly weight: Grams;
  readonly core?: { readonly area: number; readonly weight: Grams };
  /** One piece that covers the largest ply and a border; peel ply is two of them, film two, pad one. */
  readonly cover: { readonly length: Mm; readonly width: Mm; readonly area: number };
}

export const isPly = (layer: Layer): layer is PlyLayer => layer.kind === 'ply';
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

export function amountsOf(layers: readonly Layer[], { spare, hardener: to100 }: Pick<PliesOrder, 'spare' | 'hardener'>): Amounts {
  const plies = layers.filter(isPly).map(amountOf), inPlies = sum(plies.map(({ resin = 0 }) => resin)), mixed = inPlies * (1 + spare);
  const core = layers.find((layer) => layer.kind === 'core'), { least, most } = windowRound(layers.map(({ outline }) => outline));
  const [length, width] = [most[0] - least[0] + 2 * BEYOND, most[1] - least[1] + 2 * BEYOND];
  return {
    plies, cloth: sum(plies.map(({ cloth = 0 }) => cloth)), inPlies, mixed, resin: (mixed * 100) / (100 + to100), hardener: (mixed * to100) / (100 + to100),
    unknown: plies.filter(({ cloth }) => cloth === undefined).map(({ number }) => number), weight: sum(plies.map(({ weight }) => weight)),
    ...(core ? { core: { area: core.area, weight: (core.area * core.thickest * core.core.material.density) / 1000 } } : {}),
    cover: { length, width, area: length * width },
  };
}

function amountOf({ number, area, ply: { grams, thickness, density } }: PlyLayer): PlyAmount {
  const part = area / PER_M2;
  return { number, area, ...(grams ? { cloth: grams.cloth * part, resin: grams.resin * part } : {}), weight: (area * thickness * density) / 1000 };
}

/** Amounts of each shoe of a job. */
interface Cut { readonly shoes: readonly { readonly side: Side; readonly amounts: Amounts }[] }

/** What a stiffener takes and weighs: as its plies are cut, where they are; else as they are reckoned with, each as wide as the plate. */
export function gramsTaken(side: Side, { grams }: Pick<Pack, 'grams'>, plies: Cut | undefined): PackGrams {
  const cut = plies?.shoes.find((one) => one.side === side)?.amounts;
  if (!cut) return grams;
  const { cloth, inPlies, unknown, weight } = cut, core = cut.core?.weight ?? 0;
  return { ...(unknown.length === 0 ? { cloth, resin: inPlies } : {}), core, pack: weight + core };
}
