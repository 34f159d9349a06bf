import type { FailureStrains } from '../materials/stiffeners.ts';
import type { Triple } from './laminate.ts';
import type { Lamina } from './ply.ts';

/**
 * How many times the load may grow before a ply first fails, everything growing in step; infinite where nothing is strained.
 * Failing first is not falling apart, but a stiffener does not come back from it.
 */
export interface Reserve { readonly times: number; readonly by: 'strain' | 'Tsai-Wu' }

/** By the largest strain along the ply, across and in shear. Source: R. M. Jones (1999), chapter 2 (from memory). */
export function byStrain([one, two, shear]: Triple, { pull1, press1, pull2, press2, shear: sheared }: FailureStrains): number {
  const times = (strain: number, pull: number, press: number): number => (strain > 0 ? pull / strain : strain < 0 ? press / -strain : Infinity);
  return Math.min(times(one, pull1, press1), times(two, pull2, press2), times(shear, sheared, sheared));
}

/** Stresses in MPa at which a ply fails, each alone. */
export interface Strengths { readonly pull1: number; readonly press1: number; readonly pull2: number; readonly press2: number; readonly shear: number }

export const strengthsOf = ({ e1, e2, g12 }: Lamina, { pull1, press1, pull2, press2, shear }: FailureStrains): Strengths =>
  ({ pull1: pull1 * e1, press1: press1 * e1, pull2: pull2 * e2, press2: press2 * e2, shear: shear * g12 });

/**
 * By Tsai and Wu's surface, with F12 = −½ √(F11 F22): the positive root of a t² + b t = 1.
 * Source: S. W. Tsai and E. M. Wu, J Compos Mater 5 (1971) 58 (from memory).
 */
export function byTsaiWu([one, two, shear]: Triple, { pull1, press1, pull2, press2, shear: sheared }: Strengths): number {
  const f11 = 1 / (pull1 * press1), f22 = 1 / (pull2 * press2), f66 = 1 / (sheared * sheared);
  const a = f11 * one * one + f22 * two * two + f66 * shear * shear - Math.sqrt(f11 * f22) * one * two;
  const b = (1 / pull1 - 1 / press1) * one + (1 / pull2 - 1 / press2) * two;
  const root = Math.sqrt(b * b + 4 * a);
  if (a === 0) return Infinity;
  return b > 0 ? 2 / (b + root) : (root - b) / (2 * a);
}
