import { weightsOf } from '../checks/weights.ts';
import { enclosedArea, pointAlong, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Grams, Mm } from '../geometry/units.ts';
import { FOAMS, OUTSOLES, STIFFENER } from '../materials/materials.ts';
import type { RockerOrder } from '../prescription/order.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { rollX } from '../profile/rollLine.ts';
import type { RockerCase } from '../profile/rocker.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import { foamFace, type SoleShape } from '../solid/soleShape.ts';
import { solidsOf } from '../solid/solids.ts';

/** What the sole weighs as it is meshed and made, the very figure of the shoe. @throws Infeasible where its walls do not close */
export function trueWeight(given: RockerCase, chordGap: Mm): Grams {
  const { shape, bodies } = soleFrom(given);
  return weightsOf({ order: given.order }, { shape, solids: solidsOf(bodies, chordGap) }).weight.sole;
}

/** A cell of the plan. */
interface Cell { readonly at: Point; readonly area: number }

const STRIP: Mm = 4, ACROSS = 5, ROUND = 480;

/** The plan within its edge cut into cells, in strips across. The edge is one line for all that may be changed of a rocker. */
function cellsOf(edge: Path): Cell[] {
  const round = Array.from({ length: ROUND }, (_, i) => pointAlong(edge, (i * edge.length) / ROUND)), ends = round.map(([x]) => x);
  const from = Math.min(...ends), strips = Math.ceil((Math.max(...ends) - from) / STRIP), wide = (Math.max(...ends) - from) / strips;
  return Array.from({ length: strips }, (_, k) => from + (k + 0.5) * wide).flatMap((x) => {
    const cuts = round.flatMap((a, i): number[] => {
      const b = round[(i + 1) % ROUND]!;
      return a[0] < x === b[0] < x ? [] : [a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
    });
    const least = Math.min(...cuts), across = (Math.max(...cuts) - least) / ACROSS;
    return Array.from({ length: ACROSS }, (_, j): Cell => ({ at: [x, least + (j + 0.5) * across], area: wide * across }));
  });
}

/** The weight summed over cells of the plan, walls taken upright: some per cent off, but off alike for every rocker on one last. */
function roughWeight(shape: SoleShape, cells: readonly Cell[], { foam, outsole, packGrams }: Pick<RockerOrder, 'foam' | 'outsole' | 'packGrams'>): Grams {
  const { upper, build, face, line, stiffener, edge } = shape, ground = heightsOf(face), inner = heightsOf(foamFace(shape));
  const light = FOAMS[foam].density, heavy = OUTSOLES[outsole.material].density;
  const cut = cells.reduce((sum, { at, area }) => {
    const along = rollX(line, at), joint = inner(along);
    return sum + area * ((upper(...at) + build - stiffener - joint) * light + (joint - ground(along)) * heavy);
  }, 0);
  return cut / CUBIC_MM_PER_CM + (packGrams ?? (enclosedArea(edge) * stiffener * STIFFENER.density) / CUBIC_MM_PER_CM);
}
const CUBIC_MM_PER_CM = 1000;

/** A quick scale for the rockers of one last, set by one whose true weight is known. */
export function scaleSetBy(known: { readonly shape: SoleShape; readonly weight: Grams }, order: Pick<RockerOrder, 'foam' | 'outsole' | 'packGrams'>): (shape: SoleShape) => Grams {
  const cells = cellsOf(known.shape.edge), set = known.weight / roughWeight(known.shape, cells, order);
  return (shape) => set * roughWeight(shape, cells, order);
}
