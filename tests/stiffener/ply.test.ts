import { describe, expect, test } from 'vitest';
import { CLOTHS, CORES, EPOXY, FIBRES, type ClothName, type Fibre, type Resin } from '../../src/materials/stiffeners.ts';
import { fibreShareOf, mixed, plyOf, plyThickness, wovenOf, type PlyMaterial } from '../../src/stiffener/ply.ts';
import { laminateOf } from '../../src/stiffener/laminate.ts';
import { CLOTH, FAILS, ply } from './support.ts';

const made = (material: PlyMaterial) => {
  const found = plyOf(material);
  if (!found.ok) throw new Error(found.faults.map(({ text }) => text).join(' '));
  return found.value;
};
const wrong = (material: PlyMaterial): string[] => {
  const found = plyOf(material);
  return found.ok ? [] : found.faults.map(({ path }) => path);
};

describe('fibre and resin become a ply', () => {
  /** Mallick 2008, chapter 3, as worked in course notebooks of TU Eindhoven (pycomposites). */
  const fibre: Fibre = { density: 1.8, along: 220_000, across: 22_000, shear: 91_700, poisson: 0.2, basis: '' }, matrix: Resin = { density: 1.2, modulus: 3_600, poisson: 0.35, basis: '' };
  test('rule of mixtures: 133.4, 7.226, 3.254 GPa and 0.26', () => {
    const { e1, e2, g12, nu12 } = mixed(fibre, matrix, 0.6, 'mixtures');
    expect(e1).toBeCloseTo(133_440, 6);
    expect(e2 / 7226.3).toBeCloseTo(1, 4);
    // They round the shear of the resin to 1.33 GPa.
    expect(Math.abs(g12 / 3254.2 - 1)).toBeLessThan(0.0026);
    expect(nu12).toBeCloseTo(0.26, 9);
    expect(mixed({ ...fibre, across: 220_000 }, matrix, 0.6, 'mixtures').e2 / 8784.4).toBeCloseTo(1, 4);
  });
  test('Halpin-Tsai and Chamis lie above the mixture across and agree with it along; all give the fibre or the resin alone at the ends', () => {
    for (const rule of ['Halpin-Tsai', 'Chamis'] as const) {
      const found = mixed(fibre, matrix, 0.6, rule), plain = mixed(fibre, matrix, 0.6, 'mixtures');
      expect(found.e1).toBe(plain.e1);
      expect(found.e2).toBeGreaterThan(plain.e2);
      expect(found.g12).toBeGreaterThan(plain.g12);
      expect(mixed(fibre, matrix, 0, rule).e2).toBeCloseTo(3_600, 6);
      expect(mixed(fibre, matrix, 1, rule).e2).toBeCloseTo(22_000, 6);
    }
  });
  test('Halpin-Tsai by hand: η = (22/3.6 − 1)/(22/3.6 + 2) = 0.63014, E2 = 3.6 (1 + 2 · 0.63014 · 0.6)/(1 − 0.63014 · 0.6) = 10.166 GPa', () => {
    expect(mixed(fibre, matrix, 0.6).e2).toBeCloseTo(10_166, -1);
  });
  test('ply thickness: 225 g/m² prepreg, 0.6778 of it fibre, is 0.143 mm (composites calculation page)', () => {
    const share = fibreShareOf(0.6778, 1.79, 1.25);
    expect(plyThickness(225 * 0.6778, share, 1.79)).toBeCloseTo(0.1432, 4);
  });
  test.each([[200, 0.4, 0.281], [200, 0.45, 0.25], [200, 0.5, 0.225], [245, 0.4, 0.344], [245, 0.45, 0.306], [245, 0.5, 0.275]])('%d g/m² at %f of fibre is %f mm', (areal, share, wanted) => {
    expect(Math.abs(plyThickness(areal, share, 1.78) - wanted)).toBeLessThan(0.0006);
  });
  test('200 g of carbon at equal weights is 0.285 mm (trade practice), 5 plies of 200 cm² about 40 g', () => {
    const { thickness, density, grams } = made({ kind: 'cloth', cloth: 'carbon twill 200', resin: 1 });
    expect(thickness).toBeCloseTo(0.2856, 3);
    expect(5 * 200 * (thickness / 10) * density).toBeCloseTo(40, 0);
    expect(grams).toEqual({ cloth: 200, resin: expect.closeTo(200, 6) });
  });
  test('hand-laid carbon twill is 45 to 60 GPa at 0.40 to 0.50 of fibre (trade)', () => {
    for (const thickness of [0.275, 0.25, 0.225]) {
      const { lamina: { e1, e2, nu12 }, fibreShare } = made({ kind: 'cloth', cloth: 'carbon twill 200', thickness });
      expect(fibreShare).toBeGreaterThan(0.39);
      expect(e1).toBeGreaterThan(44_000);
      expect(e1).toBeLessThan(60_000);
      expect(e2).toBe(e1);
      expect(nu12).toBeLessThan(0.1);
    }
  });
  test('a weave without crimp is a balanced cross-ply', () => {
    const straight = mixed(FIBRES.carbon, EPOXY, 0.45), { compliance } = laminateOf([0, Math.PI / 2].flatMap((angle) => [{ lamina: straight, thickness: 0.1, angle }]));
    const symmetric = laminateOf([0, Math.PI / 2, Math.PI / 2, 0].map((angle) => ({ lamina: straight, thickness: 0.1, angle }))), woven = wovenOf(straight, 1);
    expect(1 / (0.4 * symmetric.compliance[0]![0]!) / woven.e1).toBeCloseTo(1, 9);
    expect(wovenOf(straight, 0.87).e1 / woven.e1).toBeCloseTo(0.87, 12);
    expect(-symmetric.compliance[0]![1]! / symmetric.compliance[0]![0]!).toBeCloseTo(woven.nu12, 9);
    expect(Math.abs(compliance[0]![3]!)).toBeGreaterThan(0);
  });
  test.each(Object.keys(CLOTHS) as ClothName[])('%s makes a ply, stiffer and thinner with less resin', (cloth) => {
    const rich = made({ kind: 'cloth', cloth, resin: 1.3 }), lean = made({ kind: 'cloth', cloth, resin: 0.8 });
    expect(lean.thickness).toBeLessThan(rich.thickness);
    expect(lean.lamina.e1).toBeGreaterThan(rich.lamina.e1);
  });
});

describe('what cannot be laid is told, all at once, and never becomes a number', () => {
  test.each([0, -1, NaN, 0.1, 5, Infinity])('resin ratio %d', (resin) => expect(wrong({ kind: 'cloth', cloth: 'carbon twill 200', resin })).toEqual(['ply.resin']));
  test.each([0, NaN, 0.05, 3])('a laid ply measured %d mm thick', (thickness) => expect(wrong({ kind: 'cloth', cloth: 'carbon twill 200', thickness })).toEqual(['ply.thickness']));
  test('a cloth nobody knows', () => expect(wrong({ kind: 'cloth', cloth: 'wool' as ClothName })).toEqual(['ply.cloth']));
  test('a measured ply with many wrongs', () => {
    expect(wrong({ kind: 'measured', name: 'x', lamina: { e1: 0, e2: NaN, g12: -1, nu12: 0.3 }, thickness: 0, density: 0, failsAt: { ...FAILS, shear: 0 } })).toEqual(['ply.thickness', 'ply.density', 'ply.lamina.e1', 'ply.lamina.e2', 'ply.lamina.g12', 'ply.failsAt.shear']);
    expect(wrong({ kind: 'measured', name: 'x', lamina: { ...CLOTH, nu12: 1.2 }, thickness: 0.3, density: 1.5, failsAt: FAILS })).toEqual(['ply.lamina.nu12']);
  });
  test('own data of both kinds are taken', () => {
    expect(made({ kind: 'measured', name: 'offcut', lamina: CLOTH, thickness: 0.3, density: 1.5, failsAt: FAILS }).lamina).toEqual(ply(0.3).lamina);
    expect(made({ kind: 'own cloth', name: 'flax', fibre: { density: 1.45, along: 55_000, across: 5_000, shear: 2_000, poisson: 0.3, basis: 'data sheet' }, weave: 'plain', areal: 150, failsAt: FAILS }).lamina.e1).toBeLessThan(25_000);
  });
});

describe('the table of materials', () => {
  test.each(Object.entries(CORES))('%s: least, counted and most stand in order, with a basis', (_, { modulus, shear, shearStrength, density, basis }) => {
    for (const { least, counted, most } of [modulus, shear]) { expect(least).toBeGreaterThan(0); expect(counted).toBeGreaterThanOrEqual(least); expect(most).toBeGreaterThanOrEqual(counted); }
    expect(shearStrength).toBeGreaterThan(0);
    expect(density).toBeGreaterThan(0);
    expect(basis.length).toBeGreaterThan(10);
  });
  test('no foam has its modulus from a hardness', () => {
    for (const name of ['light EVA', 'firm EVA', 'hard EVA'] as const) expect(CORES[name].basis).toContain('no modulus follows from a hardness');
  });
});
