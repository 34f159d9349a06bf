import { degrees } from '../../src/geometry/units.ts';
import { CORES } from '../../src/materials/stiffeners.ts';
import { USUAL_PLIES } from '../../src/fitting/readMaking.ts';
import type { PliesOrder } from '../../src/fitting/making.ts';
import type { Design } from '../../src/checks/design.ts';
import type { LaidPack } from '../../src/making/plies/layers.ts';
import { pliesOf, type Plies } from '../../src/making/plies/plies.ts';
import { shoePlies } from '../../src/making/plies/shoePlies.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { assess, type Asked } from '../../src/stiffener/assess.ts';
import { plateUnder } from '../../src/stiffener/plate.ts';
import { plyOf, type Ply } from '../../src/stiffener/ply.ts';
import type { PlacedPly, Stiffener, Stretch } from '../../src/stiffener/stiffener.ts';
import type { ClothName } from '../../src/materials/stiffeners.ts';

/* Packs put together by hand, so that what is made of them is tested apart from how they are found. */

export function clothPly(cloth: ClothName): Ply {
  const read = plyOf({ kind: 'cloth', cloth });
  if (!read.ok) throw new Error(read.faults.map(({ text }) => text).join('; '));
  return read.value;
}
export const placed = (cloth: ClothName, angleDeg = 0, over?: Stretch): PlacedPly => ({ ply: clothPly(cloth), angle: degrees(angleDeg), ...(over ? { over } : {}) });

export const TWILL = 'carbon twill 200', UD = 'carbon unidirectional 200';
/** Two plies under and three over 3 mm of leather board, the middle ones at 45°, with two strips of straight fibres across the ball that would end at one line. */
export const BOARDED: Stiffener = {
  below: [placed(TWILL), placed(UD, 0, { from: 160, to: 245 }), placed(TWILL, 45)],
  above: [placed(TWILL), placed(UD, 0, { from: 160, to: 245 }), placed(TWILL, 45), placed(TWILL)],
  core: { name: 'leather board', material: CORES['leather board'], thickness: 3, over: { from: 60, to: 400 } }, attached: [],
};
/** Five plies on a cambered bottom, edges turned up. */
export const BOWED: Stiffener = { below: [], above: [0, 45, 0, 45, 0].map((angle) => placed(TWILL, angle)), attached: [], camber: { height: 3, counted: 'half' }, edges: 6 };

export function packOn(shoe: RockerShoe, stiffener: Stiffener, { from, ...asked }: Partial<Asked> & { readonly from?: number } = {}): LaidPack {
  const plate = plateUnder(shoe.last, shoe.shape.feather, shoe.shape.upper, from), whole: Asked = { mass: 80, wanted: 'rigid', ...asked }, read = assess(stiffener, plate, whole);
  if (!read.ok) throw new Error(read.faults.map(({ text }) => text).join('; '));
  return { stiffener, plate, asked: whole, assessed: read.value, underFoam: stiffener === UNDER_FOAM };
}

export const rockersOf = ({ shoes }: Design): RockerShoe[] => shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [shoe] : []));

export const pliesWith = (design: Design, stiffener: Stiffener, order: PliesOrder = USUAL_PLIES, asked: Parameters<typeof packOn>[2] = {}): Plies =>
  pliesOf(rockersOf(design).map((shoe) => shoePlies(shoe, packOn(shoe, stiffener, asked), design.fitting, order)), order);
/** Two packs with the foam body between them, 12 mm thick. */
export const UNDER_FOAM: Stiffener = {
  below: [placed(TWILL), placed(TWILL, 45)], above: [placed(TWILL), placed(TWILL, 45), placed(TWILL)], attached: [],
  core: { name: 'the foam body (firm EVA)', material: CORES['firm EVA'], thickness: 12 },
};
