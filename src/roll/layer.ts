import { tableOf } from '../geometry/table.ts';
import type { Mm } from '../geometry/units.ts';
import { FOAMS, OUTSOLES, type FoamName } from '../materials/materials.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { planPoint, rollX, rollY } from '../profile/rollLine.ts';
import { groundPoint } from '../solid/groundLine.ts';
import { foamFace } from '../solid/soleShape.ts';

/** What gives way between the stiff upper part of a shoe and the floor, told by the place along the walking line. */
export interface Layer {
  /** How wide the ground face is there, mm. */
  readonly width: (along: Mm) => Mm;
  /** How far it gives under a pressure, mm for each MPa: the thickness of each of its layers over its modulus. */
  readonly give: (along: Mm) => number;
  /** How thick it is, mm. */
  readonly thick: (along: Mm) => Mm;
}

/** Sheets of one name differ: the softest and the hardest sold under it. */
export type Softness = 'softest' | 'hardest';

/** What of a rocker decides how it stands. */
export type Stood = Pick<RockerShoe, 'shape' | 'bodies' | 'rocker' | 'order'>;

/** Foam and outsole of a rocker: as wide as its ground line, and as thick as it is on the long axis of the walking line. */
export function layersOf(shoe: Stood): (softness: Softness, foam?: FoamName) => Layer {
  const { shape, order } = shoe, { line, outsole, stiffener, build, upper } = shape, inner = heightsOf(foamFace(shape)), width = widthOf(shoe);
  const foamThick = (along: Mm): Mm => Math.max(upper(...planPoint(line, along, 0)) + build - stiffener - inner(along), 0);
  return (softness, foam = order.foam) => {
    const end = softness === 'softest' ? 0 : 1, foamModulus = FOAMS[foam].modulus[end], outsoleModulus = OUTSOLES[order.outsole.material].modulus[end];
    return { width, thick: (along) => foamThick(along) + outsole, give: (along) => foamThick(along) / foamModulus + outsole / outsoleModulus };
  };
}

/** From flank to flank of the ground line, straight between its places, which lie some 4 mm apart. */
function widthOf({ shape, bodies: { whole: { rim } } }: Stood): (along: Mm) => Mm {
  const at = groundPoint(shape);
  const flank = (places: readonly number[]): ((along: Mm) => Mm) => {
    const points = places.map((w) => { const [x, y] = at(w); return [x, y] as const; });
    return tableOf(points.map((point) => rollX(shape.line, point)), points.map((point) => rollY(shape.line, point)));
  };
  const inner = flank(rim.inner.places), outer = flank(rim.outer.places);
  return (along) => Math.max(outer(along) - inner(along), 0);
}
