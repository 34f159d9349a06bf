import { describe, expect, test } from 'vitest';
import { SPRING_STEEL } from '../../src/materials/stiffeners.ts';
import { degrees } from '../../src/geometry/units.ts';
import { asOne, cutsOf, type Section } from '../../src/stiffener/section.ts';
import { coreReserves, firstPly, largestStrain, strainIn, wrinklingStress, yieldReserve } from '../../src/stiffener/strained.ts';
import { byStrain, byTsaiWu, strengthsOf } from '../../src/stiffener/failure.ts';
import type { Stiffener } from '../../src/stiffener/stiffener.ts';
import { chanceFrom } from '../support/random.ts';
import { CLOTH, coreOf, FAILS, flat, plies, ply, sandwich } from './support.ts';

const cut = (stiffener: Stiffener, width = 80): Section => cutsOf(stiffener)(100, width)!;
const N_M2 = 1e6, near = (value: number, wanted: number, share = 1e-6): void => expect(Math.abs(value / wanted - 1), `${value} for ${wanted}`).toBeLessThan(share);

describe('a cut across the stiffener', () => {
  test.each([[4, 0.25, 0.3333], [5, 0.25, 0.6510], [5, 0.3, 1.125]])('%d plies of %f: %f N·m² (reference values 6.31, b t³/12)', (n, t, wanted) => near(asOne(cut(flat(n, t))) / N_M2, wanted, 2e-4));
  test.each([[4, 0.25, 1500], [5, 0.25, 960], [5, 0.3, 667]])('%d plies of %f: 20 N·m ask %d MPa of the outer fibre', (n, t, wanted) => {
    const section = cut(flat(n, t)), { value } = largestStrain(section, { own: 20_000 / section.own, tied: 0, slip: 0 });
    near(Math.abs(value) * 50_000, wanted, 1e-3);
  });
  test('a pack whose plies couple bends as d11 of the whole inverse, not as D11', () => {
    const ud = { e1: 130_000, e2: 9_000, g12: 4_500, nu12: 0.3 }, stiffener: Stiffener = { below: [0, 45].map((angle) => ({ ply: ply(0.3, ud), angle: degrees(angle) })), above: [], attached: [] };
    const section = cut(stiffener), { laminate } = section.faces[0]!;
    near(section.own, 80 / laminate.compliance[3]![3]!);
    expect(section.own).toBeLessThan(0.8 * 80 * laminate.stiffness[3]![3]!);
  });
  test('sandwich (Zenkert, 6.28): 0.5 mm faces of 50 GPa on 20 mm of 5 MPa are 5257.5 N·m for each m of width, shear stiffness 37.8 kN for each m', () => {
    const material = { density: 0.2, modulus: { least: 5, counted: 5, most: 5 }, shear: { least: 1.8, counted: 1.8, most: 1.8 }, shearStrength: 0.4, basis: 'example', bends: { moulded: 'it is', sold: [20], basis: 'example' } };
    const section = cut({ below: plies(1, 0.5), above: plies(1, 0.5), core: { name: 'foam', material, thickness: 20 }, attached: [] }, 1000);
    near(asOne(section) / 1e6, 5257.5, 1e-3);
    near(section.tie, 1000 * 1.8 * 20.5 ** 2 / 20);
    near(section.tie / 1000, 37.8, 2e-3);
  });
  test('camber across adds the variance of its parabola, 4/45 of its height squared; typed, half its height is counted', () => {
    const with3 = (counted: 'half' | 'whole'): Section => cut({ ...flat(5), camber: { height: () => 3, counted } });
    near(with3('whole').own, 50_000 * (80 * 1.5 ** 3 / 12 + (80 * 1.5 * 4 * 9) / 45));
    near(with3('half').own, 50_000 * (80 * 1.5 ** 3 / 12 + (80 * 1.5 * 4 * 2.25) / 45));
    expect(with3('whole').faces[0]!.across).toEqual([-1, 2]);
  });
  test('edges turned up 6 mm: parallel axes by hand, 296.6 mm⁴', () => {
    const plate = 80 * 1.5, edges = 2 * 1.5 * 6, middle = (edges * 3.75) / (plate + edges);
    const second = (80 * 1.5 ** 3) / 12 + plate * middle ** 2 + (2 * 1.5 * 6 ** 3) / 12 + edges * (3.75 - middle) ** 2;
    near(cut({ ...flat(5), edges: 6 }).own, 50_000 * second);
    near(second, 296.6, 1e-3);
  });
  test('a layer bonded on is one piece with the plate at bond 1, lies loose on it at 0, and in between is between', () => {
    const layer = (bond: number): number => asOne(cut({ ...flat(5), attached: [{ name: 'board', side: 'above', thickness: 3, modulus: 120, bond }] }));
    const loose = 50_000 * 22.5 + 120 * 80 * 27 / 12, bonded = loose + (6e6 * 28_800 / (6e6 + 28_800)) * 2.25 ** 2;
    near(layer(0), loose);
    near(layer(1), bonded);
    expect(layer(0.5)).toBeGreaterThan(loose);
    expect(layer(0.5)).toBeLessThan(bonded);
  });
  test('packs that lie on each other are one pack, but for the resin between', () => {
    near(asOne(cut({ ...flat(3), above: plies(2) })), asOne(cut(flat(5))));
  });
  test('patches and cores lie where they are said to', () => {
    const at = cutsOf({ ...flat(2), above: [{ ...plies(1)[0]!, over: { from: 50, to: 90 } }], core: { ...coreOf('cork', 3), over: { from: 60, to: 80 } } });
    expect([40, 55, 70].map((x) => [at(x, 80)!.faces.length, at(x, 80)!.core?.thickness])).toEqual([[1, undefined], [2, undefined], [2, 3]]);
    expect(cutsOf({ below: [{ ...plies(1)[0]!, over: { from: 0, to: 10 } }], above: [], attached: [] })(50, 80)).toBeUndefined();
  });
});

describe('what strains and breaks', () => {
  const section = cut(sandwich(3, 2, coreOf('leather board', 3)));
  test('both faces strained as one: as a plain beam about the common line', () => {
    const bent = { own: 1e-4, tied: 1e-4, slip: 0 };
    for (const face of section.faces) for (const z of [face.middle - 0.3, face.middle + 0.3]) expect(strainIn(section, face, bent, z)).toBeCloseTo(-1e-4 * (z - section.neutral), 12);
  });
  test('toe up the upper side is pressed', () => expect(largestStrain(cut(flat(5)), { own: 1e-3, tied: 0, slip: 0 })).toEqual({ value: expect.closeTo(0.00075, 9), at: -0.75 }));
  test('a single ply along: first ply by its weaker side, pressed', () => {
    const one = cut(flat(1, 1)), found = firstPly([{ x: 7, section: one, bent: { own: 0.008, tied: 0, slip: 0 } }]);
    expect(found).toMatchObject({ at: 7, ply: 0, pack: 'below', name: 'ply 1' });
    expect(found.times).toBeCloseTo(0.008 / 0.004, 1);
    expect(found.times).toBeLessThanOrEqual(2);
  });
  test('of many cuts the hull finds the ply that looking at each would find', () => {
    const draw = chanceFrom(7), skew = cut({ ...sandwich(2, 2, coreOf('cork', 3)), below: [0, 30, -45].map((angle) => ({ ply: ply(0.2, { e1: 110_000, e2: 7_000, g12: 4_000, nu12: 0.3 }), angle: degrees(angle) })), camber: { height: () => 3, counted: 'whole' }, edges: 4 });
    for (let round = 0; round < 30; round++) {
      const cuts = Array.from({ length: 20 }, (_, x) => ({ x, section: skew, bent: { own: (draw.between(-0.5, 0.5)) * 1e-3, tied: (draw.between(-0.5, 0.5)) * 1e-3, slip: 0 } }));
      const each = cuts.map((one) => firstPly([one])).reduce((worst, one) => (one.times < worst.times ? one : worst));
      expect(firstPly(cuts).times).toBeCloseTo(each.times, 9);
      expect(firstPly(cuts).at).toBe(each.at);
    }
  });
  test('maximum strain and Tsai-Wu agree with the strength where one stress stands alone', () => {
    const strengths = strengthsOf(CLOTH, FAILS);
    for (const [at, wanted] of [[[100, 0, 0], 500], [[-100, 0, 0], 400], [[0, 0, 10], 52.5], [[0, -100, 0], 400]] as const) expect(byTsaiWu(at, strengths) * Math.max(...at.map(Math.abs))).toBeCloseTo(wanted, 6);
    expect(byTsaiWu([0, 0, 0], strengths)).toBe(Infinity);
    expect(byStrain([0.001, -0.002, 0.003], FAILS)).toBeCloseTo(4, 9);
    expect(byStrain([0, 0, 0], FAILS)).toBe(Infinity);
  });
  test('wrinkling: ½ ∛(E_f E_c G_c), 0.5 · ∛(50 000 · 5 · 2) = 39.7 MPa', () => {
    expect(wrinklingStress(50_000, 5, 2)).toBeCloseTo(39.685, 2);
    const { core, faces: [, upper] } = section, bent = { own: 0, tied: 1e-4, slip: 0 }, pressed = 1e-4 * (upper!.neutral - section.neutral) * 50_000;
    near(coreReserves(section, bent).wrinkling, wrinklingStress(50_000, core!.modulus, core!.shear) / pressed);
    expect(coreReserves(section, bent).shear).toBe(Infinity);
    near(coreReserves(section, { ...bent, slip: 0.01 }).shear, 2.5 / (44 * 0.01 * section.apart / 3));
  });
  test('a shank of steel yields, and stiffens the waist', () => {
    const steel = { name: 'shank', side: 'above', thickness: 1, width: 12, modulus: SPRING_STEEL.modulus, bond: 1, yieldsAt: SPRING_STEEL.yieldsAt } as const, shanked = cut({ ...flat(3), attached: [steel] }), face = shanked.faces[0]!;
    expect(asOne(shanked)).toBeGreaterThan(asOne(cut(flat(3))));
    near(yieldReserve(shanked, { own: 1e-3, tied: 0, slip: 0 }), 0.0055 / (1e-3 * Math.max(1.45 - face.neutral, face.neutral - 0.45)));
    expect(yieldReserve(cut(flat(3)), { own: 1e-3, tied: 0, slip: 0 })).toBe(Infinity);
  });
});
