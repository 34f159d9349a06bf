import type { MouldOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import { CASTS, type CastName } from '../../materials/materials.ts';

/**
 * The flash groove of a mould for pressed foam takes what is too much in it: a narrow land beside the cavity, where it is
 * squeezed off, then the groove with leaning sides. Common practice of compression moulding.
 */
const LAND: Mm = 3, WIDTH: Mm = 5, DEPTH: Mm = 2.5, LEAN: Mm = 0.5;
const GROOVE: readonly (readonly [out: Mm, down: Mm])[] = [[LAND, 0], [LAND + LEAN, DEPTH], [LAND + WIDTH - LEAN, DEPTH], [LAND + WIDTH, 0]];

/** Foam is pressed: without pour hole and vents, with a groove for what is squeezed out. */
export const isPressed = (name: CastName): boolean => CASTS[name].way === 'pressed';

/** Across the groove, how far out of the cavity and how far down; empty where none is needed. */
export const grooveOf = (name: CastName): typeof GROOVE => (isPressed(name) ? GROOVE : []);

/** How much of the width of the rim dowels and bolts may stand on. */
export const rimLeft = ({ rim, cast }: Pick<MouldOrder, 'rim' | 'cast'>): Mm => rim - (isPressed(cast.name) ? LAND + WIDTH : 0);
