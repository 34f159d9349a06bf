import type { PliesOrder } from '../../fitting/making.ts';
import { USUAL_PLIES } from '../../fitting/readMaking.ts';
import type { Fitting } from '../../fitting/fitting.ts';
import type { Side } from '../../fitting/words.ts';
import { crossings } from '../../geometry/crossings.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Pair, RockerShoe } from '../../pair/shoe.ts';
import { packFor, type Pack } from '../../stiffener/pack.ts';
import { layerGramsOf } from '../../stiffener/weighed.ts';
import { foamFace, type SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart } from '../flatPart.ts';
import { flatPlace } from '../unrolled.ts';
import { amountsOf, isPly, type Amounts } from './amounts.ts';
import { layersOf, type LaidPack, type Layers } from './layers.ts';
import { benchLinesOf } from '../../stiffener/hung.ts';
import { partOf, type LineAcross } from './parts.ts';
import type { PlyPart } from './turns.ts';

/** The stiffener of one shoe as it is cut, weighed, laid and proved. Parts are on their own side, one a layer. */
export interface ShoePlies extends Layers {
  readonly side: Side;
  readonly shoe: RockerShoe;
  readonly pack: LaidPack;
  readonly order: PliesOrder;
  readonly parts: readonly FlatPart[];
  readonly amounts: Amounts;
  /** Lines of the bench test, as they lie in plan. */
  readonly across: readonly LineAcross[];
}

/** Shoes whose pack is known. */
export const packedShoes = ({ shoes, fitting }: Pair): { readonly shoe: RockerShoe; readonly pack: Pack }[] => shoes.flatMap((shoe) => {
  const pack = shoe.kind === 'rocker' ? packFor(shoe, fitting) : undefined;
  return shoe.kind === 'rocker' && pack ? [{ shoe, pack }] : [];
});

/** As ordered, or as is usual where only templates are. */
export function shoePlies(shoe: RockerShoe, pack: LaidPack, { job, version }: Pick<Fitting, 'job' | 'version'>, order: PliesOrder = USUAL_PLIES): ShoePlies {
  const { shape, side } = shoe, lay = onFoam(shape), found = layersOf(pack, shape.feather, order, lay), ball = ballOf(shape), flatBall = { inner: lay(ball.inner), outer: lay(ball.outer) };
  const lettered = { side, of: found.layers.length, job: `${job.reference} ${job.date} v${version}` }, across = acrossFor(pack), flat = across.map((line) => ({ ...line, x: lay([line.x, 0])[0] }));
  const parts = found.layers.map((layer) => partOf(layer, { ...lettered, ball: layer.plan ? flatBall : ball, across: layer.plan ? flat : across }));
  const weights = layerGramsOf(pack.stiffener, { ...pack.plate, stagger: order.stagger }, pack.underFoam ?? false);
  return { side, shoe, pack, order, ...found, across, parts, amounts: amountsOf(found.layers, weights, order) };
}

/** What the bench test is set up by, lettered as its card calls it. */
function acrossFor(pack: LaidPack): LineAcross[] {
  const lines = benchLinesOf(pack);
  return lines ? [{ of: 'CLAMP_LINE', name: 'clamp line', x: lines.clamp }, { of: 'TREAD_LINE', name: 'tread line, gauge 2', x: lines.tread }, { of: 'LOAD_LINE', name: 'load line, gauge 1', x: lines.load }] : [];
}

export const plyParts = ({ side, layers, parts }: Pick<ShoePlies, 'side' | 'layers' | 'parts'>): PlyPart[] => layers.flatMap((layer, i) => (isPly(layer) ? [{ side, layer, part: parts[i]! }] : []));

/** Where a place of the plan comes to lie when the underside of the foam is laid flat. */
export const onFoam = (shape: SoleShape): ((at: Point) => Point) => flatPlace({ face: foamFace(shape), line: shape.line });

/** Both joints on the feather line, LEFT shoe. */
function ballOf({ feather, last }: SoleShape): { readonly inner: Point; readonly outer: Point } {
  const across = (x: Mm, sign: 1 | -1): Point => crossings(feather, ([px]) => px - x).find(([, y]) => y * sign > 0) ?? [x, 0];
  return { inner: across(last.innerBall, -1), outer: across(last.outerBall, 1) };
}
