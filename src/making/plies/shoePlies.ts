import type { PliesOrder } from '../../fitting/making.ts';
import { USUAL_PLIES } from '../../fitting/readMaking.ts';
import type { Fitting } from '../../fitting/fitting.ts';
import type { Side } from '../../fitting/words.ts';
import { crossings } from '../../geometry/crossings.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Pair, RockerShoe } from '../../pair/shoe.ts';
import { packFor, type Pack } from '../../stiffener/pack.ts';
import { foamFace, type SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart } from '../flatPart.ts';
import { flatPlace } from '../unrolled.ts';
import { amountsOf, isPly, type Amounts } from './amounts.ts';
import { layersOf, type LaidPack, type Layers } from './layers.ts';
import { partOf } from './parts.ts';
import type { PlyPart } from './turns.ts';

/** The stiffener of one shoe as it is cut, weighed, laid and proved. Parts are on their own side, one a layer. */
export interface ShoePlies extends Layers {
  readonly side: Side;
  readonly shoe: RockerShoe;
  readonly pack: LaidPack;
  readonly order: PliesOrder;
  readonly parts: readonly FlatPart[];
  readonly amounts: Amounts;
}

/** Shoes whose pack is known. */
export const packedShoes = ({ shoes, fitting }: Pair): { readonly shoe: RockerShoe; readonly pack: Pack }[] => shoes.flatMap((shoe) => {
  const pack = shoe.kind === 'rocker' ? packFor(shoe, fitting) : undefined;
  return shoe.kind === 'rocker' && pack ? [{ shoe, pack }] : [];
});

/** As ordered, or as is usual where only templates are. */
export function shoePlies(shoe: RockerShoe, pack: LaidPack, { job, version }: Pick<Fitting, 'job' | 'version'>, order: PliesOrder = USUAL_PLIES): ShoePlies {
  const { shape, side } = shoe, lay = onFoam(shape), found = layersOf(pack, shape.feather, order, lay), ball = ballOf(shape), flatBall = { inner: lay(ball.inner), outer: lay(ball.outer) };
  const lettered = { side, of: found.layers.length, job: `${job.reference} ${job.date} v${version}` };
  return { side, shoe, pack, order, ...found, parts: found.layers.map((layer) => partOf(layer, { ...lettered, ball: layer.plan ? flatBall : ball })), amounts: amountsOf(found.layers, order) };
}

export const plyParts = ({ side, layers, parts }: Pick<ShoePlies, 'side' | 'layers' | 'parts'>): PlyPart[] => layers.flatMap((layer, i) => (isPly(layer) ? [{ side, layer, part: parts[i]! }] : []));

/** Where a place of the plan comes to lie when the underside of the foam is laid flat. */
export const onFoam = (shape: SoleShape): ((at: Point) => Point) => flatPlace({ face: foamFace(shape), line: shape.line });

/** Both joints on the feather line, LEFT shoe. */
function ballOf({ feather, last }: SoleShape): { readonly inner: Point; readonly outer: Point } {
  const across = (x: Mm, sign: 1 | -1): Point => crossings(feather, ([px]) => px - x).find(([, y]) => y * sign > 0) ?? [x, 0];
  return { inner: across(last.innerBall, -1), outer: across(last.outerBall, 1) };
}
