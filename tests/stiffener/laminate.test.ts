import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import { deformedUnder, effectiveOf, laminateOf, plyStates, reducedStiffness, strainAt, turnedStiffness, type Laminate, type ThinPly } from '../../src/stiffener/laminate.ts';
import type { Lamina } from '../../src/stiffener/ply.ts';

interface Case {
  readonly name: string; readonly E1: number; readonly E2: number; readonly G12: number; readonly nu12: number;
  readonly plies: readonly { readonly t: number; readonly angle: number }[];
  readonly expected: {
    readonly A?: readonly (readonly number[])[]; readonly D?: readonly (readonly number[])[];
    readonly Nx500_midplane_strain?: readonly number[]; readonly Mx5_curvature?: readonly number[];
    readonly Nx500_45ply_stress_1_2_12?: readonly number[]; readonly Mx5_45ply_z0p005_stress_1_2_12?: readonly number[];
    readonly strip_L?: number; readonly strip_W?: number; readonly tip_load_N?: number; readonly FE_mean_tip_deflection_mm?: number;
  };
  readonly ABD_recomputed: readonly (readonly number[])[];
}
const { cases }: { cases: readonly Case[] } = JSON.parse(readFileSync('tests/data/laminates/laminate-cases.json', 'utf8'));
const laminateIn = ({ E1, E2, G12, nu12, plies }: Case): Laminate => laminateOf(plies.map(({ t, angle }): ThinPly => ({ lamina: { e1: E1, e2: E2, g12: G12, nu12 }, thickness: t, angle: degrees(angle) })));
const named = (name: string): Case => cases.find((one) => one.name.startsWith(name))!;
const block = ({ stiffness }: Laminate, row: 0 | 3, column: 0 | 3): number[][] => [0, 1, 2].map((i) => [0, 1, 2].map((j) => stiffness[row + i]![column + j]!));

/** How far each value lies from the wanted one, as a share of the largest wanted. */
const off = (found: readonly (readonly number[])[], wanted: readonly (readonly number[])[]): number => {
  const size = Math.max(...wanted.flat().map(Math.abs));
  return Math.max(...wanted.flatMap((row, i) => row.map((value, j) => Math.abs(found[i]![j]! - value) / size)));
};
const within = (found: readonly number[], wanted: readonly number[], share: number): void => wanted.forEach((value, i) => expect(Math.abs(found[i]! / value - 1), `${i}: ${found[i]} for ${value}`).toBeLessThan(share));

describe('the open cases of tests/data/laminates', () => {
  test('there are six', () => expect(cases.map(({ name }) => name)).toHaveLength(6));
  test.each(cases)('$name: A, B and D as another laminate program has them', (one) => {
    expect(off(laminateIn(one).stiffness, one.ABD_recomputed)).toBeLessThan(1e-9);
  });
  test('stack of eight (ClassicalLaminateTheory.jl): A within 0.5, D within 0.001', () => {
    const one = named('quasi'), laminate = laminateIn(one);
    one.expected.A!.forEach((row, i) => row.forEach((value, j) => expect(Math.abs(block(laminate, 0, 0)[i]![j]! - value)).toBeLessThan(0.5)));
    one.expected.D!.forEach((row, i) => row.forEach((value, j) => expect(Math.abs(block(laminate, 3, 3)[i]![j]! - value)).toBeLessThan(0.001)));
  });
  test('Mendonça 2005, page 201: A and D to nine digits', () => {
    const one = named('Mendonca'), laminate = laminateIn(one);
    expect(off(block(laminate, 0, 0), one.expected.A!)).toBeLessThan(1e-9);
    expect(off(block(laminate, 3, 3), one.expected.D!)).toBeLessThan(1e-9);
  });
  test('NASA RP-1351, examples 3 and 6: strains, curvatures and stresses within 2 %', () => {
    const one = named('NASA'), laminate = laminateIn(one), pulled = deformedUnder(laminate, [500, 0, 0, 0, 0, 0]), bent = deformedUnder(laminate, [0, 0, 0, 5, 0, 0]);
    within(pulled.slice(0, 3), one.expected.Nx500_midplane_strain!, 0.02);
    within(bent.slice(3), one.expected.Mx5_curvature!, 0.02);
    within(plyStates(laminate, pulled).find(({ ply }) => ply === 1)!.stress, one.expected.Nx500_45ply_stress_1_2_12!, 0.02);
    within(plyStates(laminate, bent).find(({ ply, face }) => ply === 2 && face === 'top')!.stress, one.expected.Mx5_45ply_z0p005_stress_1_2_12!, 0.02);
  });
  test.each([['cantilever ud0', 0.002], ['cantilever xply', 0.002], ['cantilever qi', 0.013]])('%s: the strip bends as by finite elements within %f, by d11 of the whole inverse', (name, tolerance) => {
    const one = named(name), { strip_L: L, strip_W: W, tip_load_N: P, FE_mean_tip_deflection_mm: wanted } = one.expected, laminate = laminateIn(one);
    expect(Math.abs((P! * L! ** 3 * laminate.compliance[3]![3]!) / (3 * W!) / wanted! - 1)).toBeLessThan(tolerance);
    if (name.endsWith('qi')) expect(Math.abs((P! * L! ** 3) / (3 * W! * laminate.stiffness[3]![3]!) / wanted! - 1)).toBeGreaterThan(0.05);
  });
});

/** GPa, mm; A in MN/m, D in N·m. */
const REMMERS: Lamina = { e1: 133_400, e2: 7_226, g12: 3_254, nu12: 0.26 };

describe('worked examples of books and courses', () => {
  test('reduced stiffness: Mendonça page 102', () => {
    const q = reducedStiffness({ e1: 39_000, e2: 8_300, g12: 4_000, nu12: 0.26 });
    within([q[0]![0]!, q[0]![1]!, q[1]![1]!], [39569.27, 2189.5, 8421.152], 1e-6);
  });
  test('reduced (E2 of a fibre as stiff across), and turned by 20° (E2 of one that is not): TU Eindhoven, pycomposites, to five digits', () => {
    const q = reducedStiffness({ e1: 133_440, e2: 8_784.4, g12: 3_254.2, nu12: 0.26 }), turned = turnedStiffness({ e1: 133_440, e2: 7_226.3, g12: 3_254.2, nu12: 0.26 }, degrees(20));
    within([q[0]![0]!, q[0]![1]!, q[1]![1]!], [134036, 2294.15, 8823.65], 2e-5);
    within([turned[0]![0]!, turned[0]![1]!, turned[1]![1]!, turned[0]![2]!, turned[1]![2]!, turned[2]![2]!], [106262.6, 14735, 9222, 35669.8, 5043.6, 16103.4], 2e-5);
  });
  test('[0/45/−45/90]s of 0.25 (TU Eindhoven): A, D, and strains under six forces', () => {
    const turns = [0, 45, -45, 90], laminate = laminateOf([...turns, ...turns.toReversed()].map((angle) => ({ lamina: REMMERS, thickness: 0.25, angle: degrees(angle) }))), s = laminate.stiffness;
    within([s[0]![0]!, s[0]![1]!, s[2]![2]!].map((value) => value / 1000), [110.084, 34.87, 37.607], 1e-3);
    within([s[3]![3]!, s[3]![4]!, s[4]![4]!, s[3]![5]!, s[4]![5]!, s[5]![5]!].map((value) => value / 1000), [62.3905, 9.6797, 14.8864, 3.9587, 3.9587, 10.592], 1e-3);
    const deformed = deformedUnder(laminate, [10, 5, 6, 3, 10, 1]);
    within(deformed.map((value, i) => value * (i < 3 ? 1e6 : 1e3)), [84.98, 18.5, 159.54, -0.05835, 0.7537, -0.16547], 2e-3);
  });
  test('Kaw, example 4.2, [0/30/−45] of 5 mm, unsymmetric: A, B, D and what 1000 N/m both ways does', () => {
    const lamina: Lamina = { e1: 181_000, e2: 10_300, g12: 7_170, nu12: 0.28 }, laminate = laminateOf([-45, 30, 0].map((angle) => ({ lamina, thickness: 5, angle: degrees(angle) })));
    const mirrored = laminateOf([0, 30, -45].map((angle) => ({ lamina, thickness: 5, angle: degrees(angle) }))), s = mirrored.stiffness;
    // His z runs down, so his first ply is on top of ours; B changes its sign with that, A and D do not.
    within([s[0]![0]!, s[0]![1]!, s[0]![2]!, s[1]![1]!, s[1]![2]!, s[2]![2]!].map((value) => value * 1e3), [1.739e9, 3.884e8, 5.663e7, 4.533e8, -1.141e8, 4.525e8], 1e-3);
    within([s[0]![3]!, s[0]![4]!, s[0]![5]!, s[1]![4]!], [-3.129e6, 9.855e5, -1.072e6, 1.158e6], 1e-3);
    within([s[3]![3]!, s[3]![4]!, s[3]![5]!, s[4]![4]!, s[4]![5]!, s[5]![5]!].map((value) => value / 1e3), [3.343e4, 6.461e3, -5.24e3, 9.32e3, -5.596e3, 7.663e3], 1e-3);
    within(deformedUnder(mirrored, [1, 1, 0, 0, 0, 0]).map((value, i) => value * (i < 3 ? 1 : 1e3)), [3.123e-7, 3.492e-6, -7.598e-7, 2.971e-5, -3.285e-4, 4.101e-4], 2e-3);
    expect(laminate.stiffness[0]![3]!).toBeCloseTo(-s[0]![3]!, 6);
  });
  test('a strain is that of the middle and of the curve', () => expect(strainAt([1, 2, 3, 4, 5, 6], 0.5)).toEqual([3, 4.5, 6]));
  test('one ply along is its own laminate', () => {
    const { ex, ey, gxy, nuxy, bendingX } = effectiveOf(laminateOf([{ lamina: REMMERS, thickness: 0.3, angle: 0 }]));
    within([ex, ey, gxy, nuxy, bendingX], [133_400, 7_226, 3_254, 0.26, 133_400], 1e-9);
  });
  test('no laminate without a ply that is thicker than nothing', () => {
    expect(() => laminateOf([])).toThrow(RangeError);
    expect(() => laminateOf([{ lamina: REMMERS, thickness: 0, angle: 0 }])).toThrow('thicker than 0');
    expect(() => laminateOf([{ lamina: REMMERS, thickness: NaN, angle: 0 }])).toThrow(RangeError);
  });
});
