import { mm } from '../checks/say.ts';
import { enclosedArea, pathLength } from '../geometry/path.ts';
import type { Grams, Mm } from '../geometry/units.ts';
import { STIFFENER } from '../materials/materials.ts';
import { SET_IN } from '../stiffener/plate.ts';
import type { SoleShape } from '../solid/soleShape.ts';

/** How far plies stay inside the feather line. */
export const PLY_INSET: Mm = SET_IN;

const CUBIC_MM_PER_CM = 1000;

/** mm². A line set in all round encloses less by its length times the way in, and a round of that way is gained back. */
export const pliesArea = ({ feather }: Pick<SoleShape, 'feather'>): number => enclosedArea(feather) - pathLength(feather) * PLY_INSET + Math.PI * PLY_INSET ** 2;

/** Of the plate as it is laid up, lighter than the figure on its papers, which counts a plate out to the edge. */
export const pliesWeight = (shape: SoleShape): Grams => ((pliesArea(shape) * shape.stiffener) / CUBIC_MM_PER_CM) * STIFFENER.density;

/** The foam is set down by the stiffener out to the edge, and the plies end before it: what is between must not stay hollow. */
export const rimRoundPlies = ({ stiffener }: Pick<SoleShape, 'stiffener'>): string =>
  `the foam body is lower by the stiffener out to the edge, so a rim ${mm(PLY_INSET, 0)} wide and ${mm(stiffener)} deep stays open round the plies, wider where the edge stands out`;
export const FILL_RIM = 'Fill it flush with cork filler, or with a strip as thick as the stiffener, before the body is cemented on (common practice)';
