import { describe, expect, test } from 'vitest';
import { inDegrees } from '../../src/geometry/units.ts';
import { CLOTHS } from '../../src/materials/stiffeners.ts';
import { beamOf } from '../../src/stiffener/beam.ts';
import { GRADE_UP_TO } from '../../src/stiffener/grades.ts';
import { BENCH_MOMENT, WALKING_MOMENT } from '../../src/stiffener/loads.ts';
import { plyOf, type Lamina, type Ply } from '../../src/stiffener/ply.ts';
import { cutsOf } from '../../src/stiffener/section.ts';
import { ply } from './support.ts';

/* Held against what others printed. */

const glassAt = (fibreShare: number): Ply => {
  const areal = CLOTHS['glass twill 280'].areal, read = plyOf({ kind: 'cloth', cloth: 'glass twill 280', thickness: areal / (1000 * 2.54 * fibreShare) });
  if (!read.ok) throw new Error(read.faults.map(({ text }) => text).join(' '));
  return read.value;
};

/** A strip on two supports, pressed in its middle; how far that goes down, mm. */
function pressedIn(lamina: Lamina, { length, width, thick, force }: { readonly length: number; readonly width: number; readonly thick: number; readonly force: number }): number {
  const section = cutsOf({ below: Array.from({ length: 4 }, () => ({ ply: ply(thick / 4, lamina), angle: 0 })), above: [], attached: [] })(0, width)!, parts = 40, nodes = Array.from({ length: parts + 1 }, (_, i) => (i * length) / parts);
  const bent = beamOf(nodes, nodes.slice(1).map(() => section), [{ node: 0, what: ['height'] }, { node: parts, what: ['height'] }])([{ node: parts / 2, force: -force }]);
  return -bent.height[parts / 2]!;
}

describe('a coupon pressed on two supports', () => {
  // E = L³ F / (4 b h³ Y): the textbook's formula for the modulus in bending (also in ASTM D790, from memory).
  test.each([['a hand-laid cloth', { e1: 50_000, e2: 50_000, g12: 3_500, nu12: 0.05 }], ['straight carbon', { e1: 125_000, e2: 9_000, g12: 4_500, nu12: 0.3 }]] as const)('%s gives back the modulus it was made of', (_, lamina) => {
    const length = 60, width = 15, thick = 1.6, force = 40;
    expect((length ** 3 * force) / (4 * width * thick ** 3 * pressedIn(lamina, { length, width, thick, force })) / lamina.e1).toBeCloseTo(1, 3);
  });
});

describe('woven glass and epoxy at 45 % fibre', () => {
  // E 29.7 GPa, ν 0.17, G 5.3 GPa at a fibre share of 0.45: course handout of Texas A&M University. Ours is cloth laid by hand, softened by its crimp: more cautious, so that a plate bends less than is told, never more.
  const { lamina: { e1, e2, g12, nu12 }, fibreShare } = glassAt(0.45);
  test('ours is softer than was measured, by no more than a third', () => {
    expect(fibreShare).toBeCloseTo(0.45, 9);
    expect(e1).toBe(e2);
    expect(e1 / 29_700).toBeGreaterThan(0.66);
    expect(e1 / 29_700).toBeLessThan(1);
    expect(g12 / 5_300).toBeGreaterThan(0.5);
    expect(g12 / 5_300).toBeLessThan(1);
    expect(Math.abs(nu12 - 0.17)).toBeLessThan(0.06);
  });
});

describe('grades on the scale of shoes that were measured', () => {
  const stiffness = (grade: keyof typeof GRADE_UP_TO, mass: number): number => (BENCH_MOMENT * mass) / inDegrees(GRADE_UP_TO[grade]), inWalking = (grade: keyof typeof GRADE_UP_TO): number => (inDegrees(GRADE_UP_TO[grade]) * WALKING_MOMENT) / BENCH_MOMENT;
  // Running shoes 0.04, 0.25 and, with a stiff plate, 0.38 N·m for each degree: table 9 of a review in J Sports Sci Med 19 (2020), after Stefanyshyn and Nigg 2000.
  test('even slight flex is several times as stiff as a running shoe with a stiff plate, for the lightest client too', () => {
    for (const mass of [40, 60, 80, 110]) {
      expect(stiffness('slight flex', mass)).toBeGreaterThan(2 * 0.38);
      expect(stiffness('rigid', mass)).toBeGreaterThan(3 * stiffness('slight flex', mass));
    }
    expect(stiffness('rigid', 80)).toBeCloseTo(6.67, 2);
  });
  // In push-off the toe is bent by 60° barefoot, 45 to 50 in a soft shoe, 25 to 30 in a stiff one: Bojsen-Moeller and Lamoreux 1979, Acta Orthop Scand 50:471.
  test('walked in, slight flex stays below a stiff shoe, rigid far below it', () => {
    expect(inWalking('slight flex')).toBeLessThan(25);
    expect(inWalking('slight flex')).toBeGreaterThan(15);
    expect(inWalking('rigid')).toBeLessThan(25 / 3);
  });
});
