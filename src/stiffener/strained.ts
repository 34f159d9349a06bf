import type { Mm } from '../geometry/units.ts';
import type { BentAt } from './beam.ts';
import { reserveOf, type Reserve } from './failure.ts';
import { effectiveOf, plyStates, type Deformed, type Laminate } from './laminate.ts';
import type { Face, Section } from './section.ts';

/** The largest strain along the shoe in the plies of a cut; pulled is positive, at a height over the middle of the lowest pack. */
export interface Strain { readonly value: number; readonly at: Mm }

/** Strain along the shoe at a height of a face: what both faces do together, and what it does by itself. Toe up, the upper side is pressed. */
export const strainIn = ({ neutral }: Section, face: Face, { own, tied }: BentAt, z: Mm): number => -tied * (face.neutral - neutral) - own * (z - face.neutral);

const largest = (all: readonly Strain[]): Strain => all.reduce((most, one) => (Math.abs(one.value) > Math.abs(most.value) ? one : most));

export function largestStrain(section: Section, bent: BentAt): Strain {
  return largest(section.faces.flatMap((face) => heightsOf(face).map((at): Strain => ({ value: strainIn(section, face, bent, at), at }))));
}

const heightsOf = ({ laminate: { thickness }, middle, across, edgeTop }: Face): Mm[] =>
  [...across.flatMap((over) => [middle + over - thickness / 2, middle + over + thickness / 2]), ...(edgeTop === undefined ? [] : [edgeTop])];

/** The strip along the shoe that has a strain in its middle and a curve, and nothing across. */
function stripDeformed({ compliance: c }: Laminate, strain: number, curve: number): Deformed {
  const a = c[0]![0]!, b = c[0]![3]!, d = c[3]![3]!, part = a * d - b * b, pull = (d * strain - b * curve) / part, moment = (a * curve - b * strain) / part;
  return c.map((row) => row[0]! * pull + row[3]! * moment);
}

/** Where the plies of a cut first fail. @property ply from the bottom of its pack */
export interface FirstPly extends Reserve { readonly pack: 'below' | 'above'; readonly ply: number; readonly name: string }

/** The ply of a cut that fails first, by maximum strain and by Tsai-Wu. */
export function firstPly(section: Section, bent: BentAt): FirstPly {
  const all = section.faces.flatMap((face, i) => deformations(section, face, bent).flatMap((deformed) => plyStates(face.laminate, deformed).map(({ ply, own, stress }): FirstPly => {
    const { ply: { name, lamina, failsAt } } = face.plies[ply]!;
    return { ...reserveOf(own, stress, lamina, failsAt), pack: i === 1 ? 'above' : 'below', ply, name };
  })));
  return all.reduce((worst, one) => (one.times < worst.times ? one : worst));
}

function deformations(section: Section, face: Face, bent: BentAt): Deformed[] {
  const flat = face.across.map((over) => stripDeformed(face.laminate, strainIn(section, face, bent, face.middle + over), -bent.own));
  return face.edgeTop === undefined ? flat : [...flat, stripDeformed(face.laminate, strainIn(section, face, bent, face.edgeTop), 0)];
}

/** How many times the load may grow before a pressed face wrinkles on its core, and before the core is sheared through. Infinite without a core. */
export function coreReserves(section: Section, bent: BentAt): { readonly wrinkling: number; readonly shear: number } {
  const { core, faces, tie, width, apart } = section;
  if (!core) return { wrinkling: Infinity, shear: Infinity };
  const wrinkles = faces.map((face) => {
    const { ex } = effectiveOf(face.laminate), pressed = -strainIn(section, face, bent, face.middle) * ex;
    return pressed > 0 ? wrinklingStress(ex, core.modulus, core.shear) / pressed : Infinity;
  });
  const stress = Math.abs((tie * bent.slip) / (width * apart));
  return { wrinkling: Math.min(...wrinkles), shear: stress > 0 ? core.shearStrength / stress : Infinity };
}

/** Stress at which a pressed face wrinkles on its core, MPa. Source: N. J. Hoff and S. E. Mautner 1945, the cautious factor ½ (from memory). */
export const wrinklingStress = (face: number, core: number, shear: number): number => 0.5 * Math.cbrt(face * core * shear);

/** How many times the load may grow before a strip of metal yields. */
export function yieldReserve(section: Section, bent: BentAt): number {
  return Math.min(Infinity, ...section.faces.flatMap((face) => face.strips.flatMap(({ faces, yieldsAt }) => faces.map((z) => {
    const strain = Math.abs(strainIn(section, face, bent, z));
    return strain > 0 ? yieldsAt / strain : Infinity;
  }))));
}
