import { hullOf } from '../geometry/hull.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { BentAt } from './beam.ts';
import type { FailureStrains } from '../materials/stiffeners.ts';
import { byStrain, byTsaiWu, strengthsOf, type Reserve, type Strengths } from './failure.ts';
import { effectiveOf, plyStates, type Deformed, type Laminate, type Triple } from './laminate.ts';
import type { Face, Section } from './section.ts';

/** The largest strain along the shoe in the plies of a cut; pulled is positive, at a height over the middle of the lowest pack. */
export interface Strain { readonly value: number; readonly at: Mm }

/** Strain along the shoe at a height of a face: what both faces do together, and what it does by itself. Toe up, the upper side is pressed. */
export const strainIn = ({ neutral }: Section, face: Face, { own, tied }: BentAt, z: Mm): number => -tied * (face.neutral - neutral) - own * (z - face.neutral);

export function largestStrain(section: Section, bent: BentAt): Strain {
  let value = 0, at = 0;
  for (const face of section.faces) for (const z of face.outermost) {
    const strain = strainIn(section, face, bent, z);
    if (Math.abs(strain) > Math.abs(value)) { value = strain; at = z; }
  }
  return { value, at };
}

/** What one ply face of a strip feels for a strain of 1 in the strip's middle, and for a curve of 1/mm; nothing held across. */
interface Felt { readonly ply: number; readonly name: string; readonly failsAt: FailureStrains; readonly strengths: Strengths; readonly own: readonly [Triple, Triple]; readonly stress: readonly [Triple, Triple] }

/** Worked out once for each laminate, as long as somebody holds it. */
function remembered<T>(work: (face: Face) => T): (face: Face) => T {
  const known = new WeakMap<Laminate, { readonly value: T }>();
  return (face) => {
    const found = known.get(face.laminate) ?? { value: work(face) };
    known.set(face.laminate, found);
    return found.value;
  };
}

const feltBy = remembered(({ laminate, plies }): readonly Felt[] => {
  const strained = plyStates(laminate, stripDeformed(laminate, 1, 0)), curved = plyStates(laminate, stripDeformed(laminate, 0, 1));
  return strained.map(({ ply, own, stress }, i) => {
    const { name, lamina, failsAt } = plies[ply]!.ply;
    return { ply, name, failsAt, strengths: strengthsOf(lamina, failsAt), own: [own, curved[i]!.own], stress: [stress, curved[i]!.stress] };
  });
});
const modulusOf = remembered(({ laminate }): number => effectiveOf(laminate).ex);

/** The strip along the shoe that has a strain in its middle and a curve, and nothing across. */
function stripDeformed({ compliance: c }: Laminate, strain: number, curve: number): Deformed {
  const a = c[0]![0]!, b = c[0]![3]!, d = c[3]![3]!, part = a * d - b * b, pull = (d * strain - b * curve) / part, moment = (a * curve - b * strain) / part;
  return c.map((row) => row[0]! * pull + row[3]! * moment);
}

const mix = ([one, two]: readonly [Triple, Triple], strain: number, curve: number): Triple => [one[0] * strain + two[0] * curve, one[1] * strain + two[1] * curve, one[2] * strain + two[2] * curve];

/** How many times the load may grow, and where along the plate that is decided. */
export interface Placed { readonly times: number; readonly at: Mm }
export const lesser = <T extends Placed>(a: T, b: T): T => (b.times < a.times ? b : a);

/** Where a ply first fails. @property ply from the bottom of its pack */
export interface FirstPly extends Reserve, Placed { readonly pack: 'below' | 'above'; readonly ply: number; readonly name: string }

/** A cut of the sole with how it is bent there. */
export interface BentCut { readonly x: Mm; readonly section: Section; readonly bent: BentAt }

/** How packs of one laminate are strained in their middles and curved, over all cuts, with where. */
interface Strips { readonly face: Face; readonly pack: FirstPly['pack']; readonly points: Point[]; readonly at: Map<Point, Mm> }

/**
 * The ply that fails first of all cuts, by maximum strain and by Tsai-Wu. What a ply bears is a convex region of strain and
 * curve, so of all the places of one laminate only those on the hull of their strains and curves need to be looked at.
 */
export function firstPly(cuts: readonly BentCut[]): FirstPly {
  let worst: FirstPly = { times: Infinity, by: 'strain', pack: 'below', ply: 0, name: '', at: 0 };
  for (const { face, pack, points, at } of stripsIn(cuts)) for (const point of outermost(points)) for (const { ply, name, failsAt, strengths, own, stress } of feltBy(face)) {
    const byMost = byStrain(mix(own, ...point), failsAt), bySurface = byTsaiWu(mix(stress, ...point), strengths), times = Math.min(byMost, bySurface);
    if (times < worst.times) worst = { times, by: byMost <= bySurface ? 'strain' : 'Tsai-Wu', pack, ply, name, at: at.get(point) ?? 0 };
  }
  return worst;
}

/** Points on their hull; of points that all lie on one place, themselves. */
function outermost(points: readonly Point[]): readonly Point[] {
  const hull = hullOf(points);
  return hull.length > 0 ? hull : points.slice(0, 1);
}

function stripsIn(cuts: readonly BentCut[]): Iterable<Strips> {
  const found = new Map<Laminate, Strips>();
  for (const { x, section, bent } of cuts) section.faces.forEach((face, i) => {
    const strips: Strips = found.get(face.laminate) ?? { face, pack: i === 1 ? 'above' : 'below', points: [], at: new Map() };
    for (const point of stripsOf(section, face, bent)) { strips.points.push(point); strips.at.set(point, x); }
    found.set(face.laminate, strips);
  });
  return found.values();
}

/** [strain in the middle of the pack, its curve] at each place across that is looked at; a turned-up edge is pulled or pressed evenly at its top. */
function stripsOf(section: Section, face: Face, bent: BentAt): Point[] {
  const flat = face.across.map((over): Point => [strainIn(section, face, bent, face.middle + over), -bent.own]);
  return face.edgeTop === undefined ? flat : [...flat, [strainIn(section, face, bent, face.edgeTop), 0]];
}

/** How many times the load may grow before a pressed face wrinkles on its core, and before the core is sheared through. Infinite without a core. */
export function coreReserves(section: Section, bent: BentAt): { readonly wrinkling: number; readonly shear: number } {
  const { core, faces, tie, width, apart } = section;
  if (!core) return { wrinkling: Infinity, shear: Infinity };
  const wrinkles = faces.map((face) => {
    const ex = modulusOf(face), pressed = -strainIn(section, face, bent, face.middle) * ex;
    return pressed > 0 ? wrinklingStress(ex, core.modulus, core.shear) / pressed : Infinity;
  });
  const stress = Math.abs((tie * bent.slip) / (width * apart));
  return { wrinkling: Math.min(...wrinkles), shear: stress > 0 ? core.shearStrength / stress : Infinity };
}

/** Stress at which a pressed face wrinkles on its core, MPa. Source: N. J. Hoff and S. E. Mautner 1945, the cautious factor ½ (from memory). */
export const wrinklingStress = (face: number, core: number, shear: number): number => 0.5 * Math.cbrt(face * core * shear);

/** How many times the load may grow before a strip of metal yields. One that slides is stretched by its bond's share of what its place would be, and bent all the same. */
export function yieldReserve(section: Section, bent: BentAt): number {
  if (section.faces.every(({ strips }) => strips.length === 0)) return Infinity;
  return Math.min(Infinity, ...section.faces.flatMap((face) => face.strips.flatMap(({ faces, yieldsAt, bond }) => faces.map((z) => {
    const middle = strainIn(section, face, bent, (faces[0] + faces[1]) / 2), strain = Math.abs(strainIn(section, face, bent, z) - (1 - bond) * middle);
    return strain > 0 ? yieldsAt / strain : Infinity;
  }))));
}
