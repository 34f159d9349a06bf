import { degrees } from '../../src/geometry/units.ts';
import { CORES, type CoreName, type FailureStrains } from '../../src/materials/stiffeners.ts';
import type { Lamina, Ply } from '../../src/stiffener/ply.ts';
import { assess, type Asked, type Assessed } from '../../src/stiffener/assess.ts';
import type { Counted, CoreLayer, PlacedPly, Plate, Stiffener } from '../../src/stiffener/stiffener.ts';

export const FAILS: FailureStrains = { pull1: 0.01, press1: 0.008, pull2: 0.01, press2: 0.008, shear: 0.015, basis: 'invented for the test' };
/** Hand-laid cloth of 50 GPa, as section 7 of the design reckons with. */
export const CLOTH: Lamina = { e1: 50_000, e2: 50_000, g12: 3_500, nu12: 0.05 };
export const ply = (thickness: number, lamina = CLOTH): Ply => ({ name: `ply ${thickness}`, lamina, thickness, density: 1.5, failsAt: FAILS, basis: 'invented for the test' });
export const plies = (n: number, thickness = 0.3, angleDeg = 0): PlacedPly[] => Array.from({ length: n }, () => ({ ply: ply(thickness), angle: degrees(angleDeg) }));

/** 80 wide, the load at its tip, 70 ahead of the ball. */
export const strip: Plate = { from: 20, to: 270, width: () => 80, ball: 200, heel: 30 };
export const asked: Asked = { mass: 80, wanted: 'rigid', lever: 70 };
export const coreOf = (name: CoreName, thickness: number, count: Counted = 'counted'): CoreLayer => ({ name, material: CORES[name], thickness, count });
export const flat = (n: number, thickness = 0.3): Stiffener => ({ below: plies(n, thickness), above: [], attached: [] });
export const sandwich = (below: number, above: number, core: CoreLayer): Stiffener => ({ below: plies(below), above: plies(above), core, attached: [] });

export function assessed(stiffener: Stiffener, plate = strip, wanted = asked): Assessed {
  const found = assess(stiffener, plate, wanted);
  if (!found.ok) throw new Error(found.faults.map(({ text }) => text).join(' '));
  return found.value;
}
