import type { PliesOrder } from '../../fitting/making.ts';
import { windowRound } from '../../geometry/clip.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { laidPart } from '../nest/laid.ts';
import { nest, wasteOf } from '../nest/nest.ts';
import { CLOTH_APART, rollFor, ROOMY, turnsOf, type PlyPart } from './turns.ts';

/** One cloth as it comes off its roll, warp along x. Areas in mm². @property waste neither ply nor strip that stays whole, as a share of the length cut off */
export interface ClothCut {
  readonly number: number;
  readonly name: string;
  /** G/m² of cloth, where it is known. */
  readonly areal?: number;
  readonly width: Mm;
  readonly length: Mm;
  readonly beside: Mm;
  readonly area: number;
  readonly waste: number;
  readonly parts: readonly FlatPart[];
  /** Names of plies that the roll is too narrow for. */
  readonly left: readonly string[];
}

/** All plies of a job, cloth by cloth, both shoes from one roll. */
export function clothsFor(all: readonly PlyPart[], order: Pick<PliesOrder, 'rollWidth'>): ClothCut[] {
  const names = [...new Set(all.map(({ layer }) => layer.ply.name))];
  return names.map((name, i) => clothOf(i + 1, name, all.filter(({ layer }) => layer.ply.name === name), order.rollWidth));
}

function clothOf(number: number, name: string, plies: readonly PlyPart[], width: Mm): ClothCut {
  const fits = plies.filter((one) => rollFor(one) <= width), left = plies.filter((one) => !fits.includes(one)).map(({ part }) => part.name);
  const areal = plies[0]?.layer.ply.grams?.cloth, any = { number, name, width, left, ...(areal === undefined ? {} : { areal }) };
  if (fits.length === 0) return { ...any, length: 0, beside: 0, area: 0, waste: 0, parts: [] };
  const long = fits.reduce((sum, { part: { outline } }) => { const { least, most } = windowRound([outline]); return sum + Math.hypot(most[0] - least[0], most[1] - least[1]) + CLOTH_APART + ROOMY; }, 2 * CLOTH_APART);
  const sheet = { length: long, width }, { placed, sheets } = nest(fits.map(({ part }) => part), sheet, { apart: CLOTH_APART, turns: fits.map(turnsOf) });
  const use = sheets[0]!, length = Math.ceil(long - use.clear);
  return {
    ...any, length, beside: use.beside, area: use.parts, waste: wasteOf(use, sheet) / (length * width),
    parts: placed.map((place) => laidPart(fits[place.part]!.part, place)),
  };
}
