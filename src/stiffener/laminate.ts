import { inverseOf, timesColumn, type Matrix } from '../geometry/linear.ts';
import { cos, sin } from '../geometry/trig.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { Lamina, Ply } from './ply.ts';

/**
 * Classical lamination theory: thin plies bonded without slip, plane stress, normals stay straight. x along the shoe, y across,
 * z up; angles from x towards y. Left out: what heat and moisture do (plies cured warm carry stress of their own, and wet resin
 * is softer), and what happens at cut edges.
 * Source: R. M. Jones, Mechanics of Composite Materials (1999), chapters 2 and 4 (from memory); A. T. Nettles, NASA RP-1351 (1994).
 */
export interface LaidPly { readonly ply: Ply; readonly angle: Rad }

/** The plies a laminate is worked out from, from the bottom up. */
export interface ThinPly { readonly lamina: Lamina; readonly thickness: Mm; readonly angle: Rad }

/** Along x, along y, sheared (the whole angle by which a right angle closes). */
export type Triple = readonly [x: number, y: number, xy: number];

export interface Laminate {
  readonly plies: readonly ThinPly[];
  /** Heights of the ply faces from the middle, bottom up: one more than there are plies. */
  readonly levels: readonly Mm[];
  readonly thickness: Mm;
  /** [[A, B], [B, D]], N/mm, N, N·mm. */
  readonly stiffness: Matrix;
  readonly compliance: Matrix;
}

interface Reduced { readonly q11: number; readonly q12: number; readonly q22: number; readonly q66: number }

function reducedOf({ e1, e2, g12, nu12 }: Lamina): Reduced {
  const part = 1 - (nu12 * nu12 * e2) / e1;
  return { q11: e1 / part, q12: (nu12 * e2) / part, q22: e2 / part, q66: g12 };
}

/** Stress over strain in a lamina's own axes, MPa. */
export function reducedStiffness(lamina: Lamina): Matrix {
  const { q11, q12, q22, q66 } = reducedOf(lamina);
  return [[q11, q12, 0], [q12, q22, 0], [0, 0, q66]];
}

/** The same in the axes of the shoe. */
export function turnedStiffness(lamina: Lamina, angle: Rad): Matrix {
  const { q11, q12, q22, q66 } = reducedOf(lamina);
  const c = cos(angle), s = sin(angle), c2 = c * c, s2 = s * s, cs = c * s, twice = q12 + 2 * q66;
  const xx = q11 * c2 * c2 + 2 * twice * s2 * c2 + q22 * s2 * s2, yy = q11 * s2 * s2 + 2 * twice * s2 * c2 + q22 * c2 * c2;
  const xy = (q11 + q22 - 4 * q66) * s2 * c2 + q12 * (s2 * s2 + c2 * c2), ss = (q11 + q22 - 2 * q12 - 2 * q66) * s2 * c2 + q66 * (s2 * s2 + c2 * c2);
  const xs = cs * (c2 * (q11 - q12 - 2 * q66) + s2 * (q12 - q22 + 2 * q66)), ys = cs * (s2 * (q11 - q12 - 2 * q66) + c2 * (q12 - q22 + 2 * q66));
  return [[xx, xy, xs], [xy, yy, ys], [xs, ys, ss]];
}

/** @param plies from the bottom up; at least one, each thicker than nothing @throws RangeError */
export function laminateOf(plies: readonly ThinPly[]): Laminate {
  const thickness = plies.reduce((sum, ply) => sum + ply.thickness, 0);
  if (!(thickness > 0 && plies.every((ply) => ply.thickness > 0))) throw new RangeError(`a laminate needs plies thicker than 0 mm, got ${plies.map((ply) => ply.thickness).join(', ')}`);
  const levels = plies.reduce<Mm[]>((all, ply) => [...all, all.at(-1)! + ply.thickness], [-thickness / 2]);
  const stiffness = Array.from({ length: 6 }, () => new Array<number>(6).fill(0));
  plies.forEach(({ lamina, angle }, k) => {
    const q = turnedStiffness(lamina, angle), low = levels[k]!, high = levels[k + 1]!;
    const weights = [high - low, (high ** 2 - low ** 2) / 2, (high ** 3 - low ** 3) / 3];
    for (let i = 0; i < 6; i++) for (let j = 0; j < 6; j++)
      stiffness[i]![j] = stiffness[i]![j]! + q[i % 3]![j % 3]! * weights[(i < 3 ? 0 : 1) + (j < 3 ? 0 : 1)]!;
  });
  return { plies, levels, thickness, stiffness, compliance: inverseOf(stiffness) };
}

export const thinPly = ({ ply: { lamina, thickness }, angle }: LaidPly): ThinPly => ({ lamina, thickness, angle });

/** Moduli of the laminate as if it were one sheet, MPa: free to draw in and to curl, as a strip is. */
export interface Effective { readonly ex: number; readonly ey: number; readonly gxy: number; readonly nuxy: number; readonly bendingX: number; readonly bendingY: number }

export function effectiveOf({ compliance: c, thickness: h }: Laminate): Effective {
  return {
    ex: 1 / (h * c[0]![0]!), ey: 1 / (h * c[1]![1]!), gxy: 1 / (h * c[2]![2]!), nuxy: -c[0]![1]! / c[0]![0]!,
    bendingX: 12 / (h ** 3 * c[3]![3]!), bendingY: 12 / (h ** 3 * c[4]![4]!),
  };
}

/** How the middle strains and the laminate curves: [εx, εy, γxy, κx, κy, κxy], curvatures in 1/mm, strain at z is ε + z κ. */
export type Deformed = readonly number[];

/** @param forces N/mm and N·mm/mm: [Nx, Ny, Nxy, Mx, My, Mxy] */
export const deformedUnder = ({ compliance }: Laminate, forces: readonly number[]): Deformed => timesColumn(compliance, forces);

export function strainAt(deformed: Deformed, z: Mm): Triple {
  const at = (i: number): number => deformed[i]! + z * deformed[i + 3]!;
  return [at(0), at(1), at(2)];
}

/** A strain of the shoe's axes in those of a ply turned by an angle. */
function strainAlong([x, y, xy]: Triple, angle: Rad): Triple {
  const c = cos(angle), s = sin(angle);
  return [x * c * c + y * s * s + xy * c * s, x * s * s + y * c * c - xy * c * s, 2 * (y - x) * c * s + xy * (c * c - s * s)];
}

/** One face of one ply. */
export interface PlyState {
  /** From the bottom up. */
  readonly ply: number;
  readonly face: 'bottom' | 'top';
  readonly z: Mm;
  /** In the axes of the shoe, and in the ply's own with the stress there, MPa. */
  readonly strain: Triple;
  readonly own: Triple;
  readonly stress: Triple;
}

function stressOf(lamina: Lamina, [one, two, shear]: Triple): Triple {
  const { q11, q12, q22, q66 } = reducedOf(lamina);
  return [q11 * one + q12 * two, q12 * one + q22 * two, q66 * shear];
}

/** Strain and stress through the thickness: both faces of each ply, bottom up. */
export function plyStates({ plies, levels }: Laminate, deformed: Deformed): PlyState[] {
  return plies.flatMap(({ lamina, angle }, ply) => (['bottom', 'top'] as const).map((face): PlyState => {
    const z = levels[ply + (face === 'top' ? 1 : 0)]!, strain = strainAt(deformed, z), own = strainAlong(strain, angle);
    return { ply, face, z, strain, own, stress: stressOf(lamina, own) };
  }));
}
