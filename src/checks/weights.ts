import { enclosedArea } from '../geometry/path.ts';
import { volumeOf } from '../geometry/mesh.ts';
import type { Grams } from '../geometry/units.ts';
import { FOAMS, OUTSOLES, STIFFENER } from '../materials/materials.ts';
import type { Shoe, SoleParts } from '../pair/shoe.ts';

interface Amounts<T> { readonly foam: T; readonly outsole: T; readonly stiffener: T; readonly sole: T }

/** Volumes in cm³ and weights in g. */
interface Weights { readonly volume: Amounts<number>; readonly weight: Amounts<Grams> }

const CUBIC_MM_PER_CM = 1000;

/** The stiffener weighs what its plies do where they are known; else it is a plate of even thickness over the whole plan. Foam and outsole are their solids. */
export function weightsOf({ order }: Pick<Shoe, 'order'>, { shape, solids }: Pick<SoleParts, 'shape' | 'solids'>): Weights {
  const volume = {
    foam: volumeOf(solids.foam) / CUBIC_MM_PER_CM, outsole: volumeOf(solids.outsole) / CUBIC_MM_PER_CM,
    stiffener: (enclosedArea(shape.edge) * shape.stiffener) / CUBIC_MM_PER_CM, sole: volumeOf(solids.whole) / CUBIC_MM_PER_CM,
  };
  const foam = volume.foam * FOAMS[order.foam].density, outsole = volume.outsole * OUTSOLES[order.outsole.material].density;
  const stiffener = ('packGrams' in order ? order.packGrams : undefined) ?? volume.stiffener * STIFFENER.density;
  return { volume, weight: { foam, outsole, stiffener, sole: foam + outsole + stiffener } };
}
