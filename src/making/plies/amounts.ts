import type { PliesOrder } from '../../fitting/making.ts';
import { windowRound } from '../../geometry/clip.ts';
import type { Grams, Mm } from '../../geometry/units.ts';
import { packGramsOf, weightBand, type LayerGrams, type PlyGrams } from '../../stiffener/weighed.ts';
import type { Layer, PlyLayer } from './layers.ts';

/** Peel ply, film and pad reach beyond the largest ply by this all round. Common practice. */
export const BEYOND: Mm = 30;

/** What one ply takes, nothing spared. */
export interface PlyAmount extends PlyGrams { readonly number: number }

/** What is weighed out for one shoe. Areas in mm². */
export interface Amounts extends Mix {
  readonly plies: readonly PlyAmount[];
  readonly cloth: Grams;
  /** Resin and hardener that stay in the plies, and what the faces of the core drink. */
  readonly inPlies: Grams;
  readonly coat: Grams;
  /** Between the sheets the core is glued up of; it is no part of the mix. */
  readonly glue: Grams;
  /** Plies whose cloth and resin are not known. */
  readonly unknown: readonly number[];
  /** The whole pack, cured and trimmed, its core in it, and between what that may be. */
  readonly weight: Grams;
  readonly band: readonly [least: Grams, most: Grams];
  readonly core?: { readonly area: number; readonly weight: Grams };
  /** One piece that covers the largest ply and a border; peel ply is two of them, film two, pad one. */
  readonly cover: { readonly length: Mm; readonly width: Mm; readonly area: number };
}

export const isPly = (layer: Layer): layer is PlyLayer => layer.kind === 'ply';

/** What is weighed out and mixed: so much of resin and of hardener, with what is spared for brush, cup and peel ply. */
export interface Mix { readonly mixed: Grams; readonly resin: Grams; readonly hardener: Grams }

/** @param stays resin and hardener that stay in the pack  @param to100 hardener to 100 g of resin */
export function mixOf(stays: Grams, { spare, hardener: to100 }: Pick<PliesOrder, 'spare' | 'hardener'>): Mix {
  const mixed = stays * (1 + spare);
  return { mixed, resin: (mixed * 100) / (100 + to100), hardener: (mixed * to100) / (100 + to100) };
}

/** @param grams of the same layers */
export function amountsOf(layers: readonly Layer[], grams: LayerGrams, order: Pick<PliesOrder, 'spare' | 'hardener'>): Amounts {
  const plies = layers.filter(isPly).map(({ number }, i): PlyAmount => ({ number, ...grams.plies[i]! })), sum = (of: (one: PlyAmount) => number): number => plies.reduce((total, one) => total + of(one), 0);
  const inPlies = sum(({ resin = 0 }) => resin), { coat, glue } = grams, whole = packGramsOf(grams);
  const core = layers.find((layer) => layer.kind === 'core'), { least, most } = windowRound(layers.map(({ outline }) => outline));
  const [length, width] = [most[0] - least[0] + 2 * BEYOND, most[1] - least[1] + 2 * BEYOND];
  return {
    plies, cloth: sum(({ cloth = 0 }) => cloth), inPlies, coat, glue, ...mixOf(inPlies + coat, order),
    unknown: plies.filter(({ cloth }) => cloth === undefined).map(({ number }) => number), weight: whole.pack, band: weightBand(whole),
    ...(core ? { core: { area: core.area, weight: grams.core } } : {}), cover: { length, width, area: length * width },
  };
}
