import type { Fitting } from '../../fitting/fitting.ts';
import type { RackSheet } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import { windowRound } from '../../geometry/clip.ts';
import { enclosedArea, type Path } from '../../geometry/path.ts';
import type { Grams, Mm } from '../../geometry/units.ts';
import { CEMENT, OUTSOLES, type OutsoleName } from '../../materials/materials.ts';
import { partsOf, type Shoe } from '../../pair/shoe.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { PackGrams } from '../../stiffener/weighed.ts';
import { packFor } from '../../stiffener/pack.ts';
import { pliesArea, pliesWeight, PLY_INSET } from '../plies.ts';
import { unrolledOutsole } from '../unrolled.ts';
import type { Layer, Piece } from './stack.ts';

/** What is taken from the store for one shoe, besides the layers of its stack. Areas in mm². */
export interface Besides {
  readonly side: Side;
  readonly outsole: { readonly material: OutsoleName; readonly thickness: Mm; readonly size: Size; readonly area: number; readonly weight: Grams; readonly cement: Grams };
  readonly stiffener?: StiffenerBesides;
}

/**
 * @property estimated only its thickness is known: equal weights of cloth and resin stand for it
 * @property cloth dry, and the resin in it; of plies that were measured nobody knows them apart
 * @property weight of plies and core
 */
export interface StiffenerBesides {
  readonly estimated: boolean;
  readonly thickness: Mm;
  readonly size: Size;
  readonly area: number;
  readonly cloth?: Grams;
  readonly resin?: Grams;
  readonly core?: Grams;
  readonly weight: Grams;
  readonly cement: Grams;
}
export type Size = readonly [length: Mm, width: Mm];

const PER_CM3 = 1000, PER_M2 = 1e6;

/** Cement for one joint: it is brushed on both faces. */
export const cementFor = (area: number): Grams => (2 * area * CEMENT.perFace) / PER_M2;

export const weightOf = (area: number, { thickness, density }: Pick<RackSheet, 'thickness' | 'density'>): Grams => ((area * thickness) / PER_CM3) * density;

/** What an area of a sheet costs, in the workshop's own money; undefined where the sheet has no price. */
export const costFor = (area: number, { price }: Pick<RackSheet, 'price'>): number | undefined => (price === undefined ? undefined : (area / PER_M2) * price);

/** Share of a layer that is ground away. */
export function groundShare({ pieces, sheet: { thickness }, foam }: Layer): number {
  const cut = pieces.reduce((sum, { area }: Piece) => sum + area, 0) * thickness;
  return cut > 0 ? Math.max(0, 1 - foam / cut) : 0;
}

export function besidesFor(shoe: Shoe, fitting: Pick<Fitting, 'wearer' | 'making'>): Besides | undefined {
  const parts = partsOf(shoe);
  if (!parts) return undefined;
  const pack = packFor(shoe, fitting), { shape } = parts, { outsole: { material, thickness } } = shoe.order, flat = unrolledOutsole(shape), area = enclosedArea(flat);
  return {
    side: shoe.side, outsole: { material, thickness, size: sizeOfPath(flat, 0), area, weight: weightOf(area, { thickness, density: OUTSOLES[material].density }), cement: cementFor(area) },
    ...(shape.stiffener > 0 && { stiffener: stiffenerFor(shape, pack?.grams) }),
  };
}

function stiffenerFor(shape: SoleShape, known: PackGrams | undefined): StiffenerBesides {
  const area = pliesArea(shape), any = { thickness: shape.stiffener, size: sizeOfPath(shape.feather, PLY_INSET), area, cement: cementFor(area) };
  if (!known) { const weight = pliesWeight(shape); return { ...any, estimated: true, cloth: weight / 2, resin: weight / 2, weight }; }
  const { pack: weight, core, ...parts } = known;
  return { ...any, estimated: false, ...parts, ...(core > 0 ? { core } : {}), weight };
}

function sizeOfPath(path: Path, inset: Mm): Size {
  const { least, most } = windowRound([path]);
  return [most[0] - least[0] - 2 * inset, most[1] - least[1] - 2 * inset];
}
