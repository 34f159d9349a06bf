import type { PliesOrder } from '../../fitting/making.ts';
import type { Pair } from '../../pair/shoe.ts';
import { clothsFor, type ClothCut } from './cloths.ts';
import { packedShoes, plyParts, shoePlies, type ShoePlies } from './shoePlies.ts';

/** The stiffeners of a job, and the cloth they are cut from. */
export interface Plies { readonly shoes: readonly ShoePlies[]; readonly cloths: readonly ClothCut[] }

/** The plies of every shoe whose pack is known; undefined where none are ordered or none is known. */
export function pliesFor(pair: Pair): Plies | undefined {
  const order = pair.fitting.making.plies, packed = order ? packedShoes(pair) : [];
  return order && packed.length > 0 ? pliesOf(packed.map(({ shoe, pack }) => shoePlies(shoe, pack, pair.fitting, order)), order) : undefined;
}

/** @param shoes of one job, whose plies are cut from the same rolls */
export const pliesOf = (shoes: readonly ShoePlies[], order: PliesOrder): Plies => ({ shoes, cloths: clothsFor(shoes.flatMap(plyParts), order) });
