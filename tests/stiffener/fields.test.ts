import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { EPOXY, FIBRES } from '../../src/materials/stiffeners.ts';
import { assumptionsOf } from '../../src/stiffener/decides.ts';
import { inShort, layersDown } from '../../src/stiffener/layers.ts';
import { coreThicknesses } from '../../src/stiffener/sheets.ts';
import type { Pace } from '../../src/checks/seen.ts';
import { design, type Design } from '../../src/design.ts';
import { packNumbers } from '../../src/exports/packNumbers.ts';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { pliesFor } from '../../src/making/plies/plies.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { bentRadius } from '../judges/bentRadius.ts';
import { faultsIn, fittingOf, type Json } from '../fitting/sheets.ts';
import { packFigures } from '../../src/checks/packFigures.ts';
import { findingsOnSheet, packOnSheet, sheetWith, type OnSheet } from './onSheet.ts';

/* What the sheet says of a stiffener, followed to what it does. */

function designed(stiffener: unknown, more: Json = {}): { readonly made: Design; readonly pack: Pack } {
  const designing = design(fittingOf(sheetWith(stiffener, more)));
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join(' '));
  const [shoe] = designing.design.shoes;
  if (shoe?.kind !== 'rocker') throw new Error('no rocker');
  return { made: designing.design, pack: packFor(shoe, designing.design.fitting)! };
}
const paths = (stiffener: unknown, more: Json = {}): string[] => faultsIn(JSON.stringify(sheetWith(stiffener, more))).map(({ path }) => path.replace('left.order.stiffener.', ''));
const codes = ({ findings }: OnSheet): string[] => findings().filter(({ where }) => where === 'stiffener').map(({ code, severity }) => `${code} ${severity}`);
const found = ({ findings }: OnSheet, code: string, pace?: Pace) => findings(pace).find((one) => one.code === code);
const plies = (count: number, pack = 'below', more: object = {}): object[] => Array.from({ length: count }, () => ({ pack, ...more }));

describe('foam body, insole and shank', () => {
  const laid = { wanted: 'slight flex', plies: plies(5) };
  test('bonded they make the sole bend less, the more the further they are bonded; loose they are not counted', () => {
    const bends = [undefined, 0, 0.3, 1].map((bond) => packOnSheet({ ...laid, ...(bond === undefined ? {} : { bond }) }).pack);
    expect(bends[0]!.stiffener.attached).toEqual([]);
    expect(bends[1]!.assessed.bench.bend).toBe(bends[0]!.assessed.bench.bend);
    expect(bends[2]!.assessed.bench.bend).toBeLessThan(bends[1]!.assessed.bench.bend);
    expect(bends[3]!.assessed.bench.bend).toBeLessThan(bends[2]!.assessed.bench.bend);
    expect(bends[3]!.stiffener.attached.map(({ name, side }) => [name, side])).toEqual([['insole of leather board', 'above'], ['the foam body (firm EVA)', 'below']]);
  });
  test('the finished shoe then droops less than the bare pack would under as much, and it is told what hangs on the bond', () => {
    const on = packOnSheet({ ...laid, bond: 1 }), test = benchTestOf(on.pack)!, perMoment = ({ droop, mass }: typeof test.bare): number => droop / mass;
    const loose = benchTestOf(packOnSheet({ ...laid, bond: 0 }).pack)!;
    expect(perMoment(test.finished)).toBeLessThan(perMoment(loose.finished) * 0.95);
    expect(perMoment(test.bare)).toBeCloseTo(perMoment(loose.bare), 6);
    expect(found(on, 'STIFFENER_BONDED', 'careful')!.text).toContain('bonded to 100 %');
  });
  test('an insole of stiffer board counts for more, one of no thickness for nothing', () => {
    const bend = (more: object, insole = 4): number => packOnSheet({ ...laid, bond: 1, ...more }, { 'left.last.insole': insole }).pack.assessed.bench.bend;
    expect(bend({ insole: 'fibre board' })).toBeLessThan(bend({ insole: 'leather' }));
    expect(bend({ insole: 'fibre board' }, 0)).toBeGreaterThan(bend({ insole: 'leather' }));
  });
  const shank = { thickness: 1.2, width: 14, from: 60, to: 250 };
  test('a shank that ends behind the tread line is told to do nothing for the bend, one through under it is not', () => {
    const told = (to: number): string | undefined => found(packOnSheet({ wanted: 'slight flex', core: 'birch plywood', coreThickness: 6, shank: { ...shank, to } }), 'STIFFENER_SHANK_SHORT')?.text;
    expect([told(180), told(250)]).toEqual([expect.stringContaining('behind the tread line at'), undefined]);
  });
  test('a strip of steel that is asked too much yields, which stops; it is weighed: 7.85 g/cm³', () => {
    const on = packOnSheet({ wanted: 'slight flex', bond: 1, shank, plies: plies(2) }), { pack } = on;
    expect(codes(on)).toContain('STIFFENER_YIELDS stop');
    expect(pack.grams.shank!).toBeCloseTo((7.85 * 1.2 * 14 * 190) / 1000, 6);
    expect(found(on, 'STIFFENER_YIELDS')!.measured).toBeLessThan(1);
  });
  test('its figures, and its numbers for other programs, tell all that its weight is made of, glue and steel too', () => {
    const { pack } = packOnSheet({ wanted: 'slight flex', shank, core: 'birch plywood', coreThickness: 6, thicknessAtMost: 9, plies: [...plies(2), ...plies(2, 'above')] }), numbers = new Map(Object.entries(packNumbers(pack)!));
    expect(numbers.get('glueG')).toBeGreaterThan(0);
    expect(['clothG', 'resinG', 'coreG', 'glueG', 'shankG'].reduce((sum, key) => sum + Number(numbers.get(key)), 0)).toBeCloseTo(Number(numbers.get('weightG')), 6);
    expect(packFigures(pack).filter(({ unit }) => unit === 'g').reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(pack.grams.pack, 6);
  });
  test('a strip that slides is strained by its own bend alone, and one on a pack that hardly bends does not yield', () => {
    const soft = { wanted: 'slight flex', shank, plies: plies(3) }, bendsWhenItYields = (stiffener: object): number => { const { walking } = packOnSheet(stiffener).pack.assessed; return walking.bend * walking.yields.times; };
    expect(bendsWhenItYields(soft)).toBeGreaterThan(1.5 * bendsWhenItYields({ ...soft, bond: 1 }));
    const stiff = { core: 'birch plywood', coreThickness: 8, thicknessAtMost: 12, cloth: 'carbon unidirectional 300', shank: { ...shank, thickness: 0.5 }, bond: 1, plies: [...plies(2, 'below'), ...plies(3, 'above')] };
    expect(codes(packOnSheet(stiff)).filter((code) => code.startsWith('STIFFENER_YIELDS'))).toEqual([]);
  });
  test('a pack is found with them, and needs no more than without', () => {
    const wishes = { wanted: 'slight flex', thicknessAtMost: 6 }, bare = packOnSheet(wishes).pack, helped = packOnSheet({ ...wishes, bond: 1, shank: { ...shank, from: 120 } }).pack;
    expect(helped.plies).toBeLessThanOrEqual(bare.plies);
    expect(helped.spare.must).toBeGreaterThan(0);
  });
  test('faults', () => {
    expect(paths({ bond: 1.5, shank: { ...shank, from: 90, to: 80 } }).sort()).toEqual(['bond', 'shank.to']);
    expect(paths({ insole: 'tin' })).toEqual(['insole']);
  });
});

const UD = 'carbon unidirectional 200', GLASS = 'glass twill 163';
describe('plies of several cloths', () => {
  const mixed = { wanted: 'slight flex', cloth: UD, core: 'leather board', coreThickness: 4, thicknessAtMost: 9, plies: [{ pack: 'below', cloth: GLASS }, { pack: 'below' }, { pack: 'above' }, { pack: 'above', resin: 1.3 }, { pack: 'above', cloth: 'carbon twill 200', angle: 45 }] };
  test('each is laid of its own, with its own resin, and told so', () => {
    const { stiffener, plate } = packOnSheet(mixed).pack, { below, above } = stiffener;
    expect([...below, ...above].map(({ ply }) => ply.name)).toEqual([GLASS, UD, UD, UD, 'carbon twill 200']);
    expect(above[1]!.ply.thickness).toBeGreaterThan(above[0]!.ply.thickness);
    expect(above[1]!.ply.grams!.resin).toBeCloseTo(1.3 * 200, 6);
    expect(inShort(stiffener, false, plate)).toBe(`2 plies of ${UD} and 1 of carbon twill 200 above and 1 ply of ${GLASS} and 1 of ${UD} below 4 mm of leather board`);
  });
  test('it weighs and bends between packs of either cloth alone', () => {
    const of = (cloth: string): Pack => packOnSheet({ ...mixed, plies: mixed.plies.map(({ pack }) => ({ pack, cloth })) }).pack, own = packOnSheet({ ...mixed, plies: mixed.plies.map(({ pack }, i) => ({ pack, cloth: i % 2 === 0 ? GLASS : UD })) }).pack;
    const bends = [of(UD), own, of(GLASS)].map(({ assessed }) => assessed.bench.bend);
    expect(bends).toEqual([...bends].sort((a, b) => a - b));
    // The inner plies step in by a millimetre each.
    expect(own.grams.cloth! / ((3 * of(GLASS).grams.cloth! + 2 * of(UD).grams.cloth!) / 5)).toBeCloseTo(1, 2);
  });
  test('they are cut from a roll for each cloth, and each is weighed by its own', () => {
    const { made } = designed(mixed, { 'making.plies': {} }), plies = pliesFor(made)!, own = made.shoes[0]!.side;
    expect(plies.cloths.map(({ name, areal, parts }) => [name, areal, parts.length])).toEqual([['carbon twill 200', 200, 1], [UD, 200, 3], [GLASS, 163, 1]]);
    const shoe = plies.shoes.find(({ side }) => side === own)!, [first, second] = shoe.amounts.plies;
    expect(second!.resin! / second!.area / (first!.resin! / first!.area)).toBeCloseTo(1.3, 6);
  });
  test('how resin was laid is an assumption of all its cloths at once', () => {
    const [worst, best] = assumptionsOf(packOnSheet(mixed).pack).find(({ of }) => of === 'resin')!.bends;
    expect(worst / best).toBeGreaterThan(1.05);
  });
  test('faults: a cloth nobody knows, resin for a ply that holds its own, two names for one cloth', () => {
    const measuredPly = { name: 'test piece', thickness: 0.3, density: 1.45, along: 50_000, across: 50_000, shear: 3_500, poisson: 0.05, pulled: 0.9, pressed: 0.65, sheared: 1.5 };
    expect(paths({ plies: [{ pack: 'below', cloth: 'silk' }] })).toEqual(['plies[0].cloth']);
    expect(paths({ cloth: UD, measuredPly, plies: [{ pack: 'below' }, { pack: 'below', cloth: 'test piece', resin: 1 }] })).toEqual(['plies[1].resin']);
    expect(paths({ cloth: UD, measuredPly })).toEqual(['measuredPly']);
    expect(paths({ measuredPly: { ...measuredPly, name: UD } })).toEqual(['measuredPly.name']);
  });
});

describe('materials of the maker\'s own', () => {
  const laid = (more: object): Pack => packOnSheet({ wanted: 'slight flex', plies: plies(4), ...more }).pack;
  test('a cloth by its weight is the one of the list of that weight', () => {
    const own = laid({ ownCloth: { name: 'twill from the other shop', fibre: 'carbon', weave: 'twill', areal: 200 } }), listed = laid({ cloth: 'carbon twill 200' });
    expect(own.assessed.bench.bend).toBeCloseTo(listed.assessed.bench.bend, 9);
    expect(own.thickness).toBeCloseTo(listed.thickness, 9);
  });
  test('a fibre and a resin by their data: with those of the list they are the list\'s; a stiffer fibre bends less, a softer resin more', () => {
    const { density, along, across, shear, poisson } = FIBRES.carbon, fibre = { density, along, across, shear, poisson, pulled: 0.9, pressed: 0.65 }, cloth = { name: 'own', weave: 'twill', areal: 200 };
    const ownResin = { name: 'ours', density: EPOXY.density, modulus: EPOXY.modulus, poisson: EPOXY.poisson }, bend = (more: object): number => laid(more).assessed.bench.bend;
    const listed = laid({ cloth: 'carbon twill 200' }), own = laid({ ownCloth: { ...cloth, ownFibre: fibre }, ownResin });
    expect(own.assessed.bench.bend).toBeCloseTo(listed.assessed.bench.bend, 9);
    expect(own.assessed.stumble.firstPly.times).toBeCloseTo(listed.assessed.stumble.firstPly.times, 9);
    expect(bend({ ownCloth: { ...cloth, ownFibre: { ...fibre, along: 390_000 } } })).toBeLessThan(listed.assessed.bench.bend);
    expect(bend({ ownResin: { ...ownResin, modulus: 1_500 } })).toBeGreaterThan(listed.assessed.bench.bend);
  });
  test('faults: both fibres or neither', () => {
    const { density, along, across, shear, poisson } = FIBRES.glass, ownFibre = { density, along, across, shear, poisson, pulled: 0.9, pressed: 0.65 };
    expect(paths({ ownCloth: { name: 'own', weave: 'plain', areal: 200 } })).toEqual(['ownCloth.fibre']);
    expect(paths({ ownCloth: { name: 'own', weave: 'plain', areal: 200, fibre: 'glass', ownFibre } })).toEqual(['ownCloth.ownFibre']);
    expect(paths({ ownCloth: { name: 'own', weave: 'plain', areal: 200, ownFibre, thickness: 2 } })).toEqual(['ownCloth.thickness']);
  });
});

describe('straight fibres', () => {
  const UD300 = 'carbon unidirectional 300', cored = { cloth: UD300, core: 'birch plywood', coreThickness: 4, thicknessAtMost: 9 };
  const splits = (stiffener: object): string | undefined => found(packOnSheet(stiffener), 'STIFFENER_SPLITS')?.text;
  test('all one way they are warned of, and say which side of the core', () => {
    expect(splits({ cloth: UD300, wanted: 'slight flex', plies: plies(4) })).toMatch(/^The plies are all of straight fibres/);
    expect(splits({ ...cored, plies: [{ pack: 'below' }, { pack: 'above', cloth: 'glass twill 163' }] })).toMatch(/^The plies below the core are all/);
    expect(splits({ ...cored, plies: [{ pack: 'below', angle: 15 }, { pack: 'below', angle: -15 }, { pack: 'above', angle: 80 }, { pack: 'above', angle: -80 }] })).toMatch(/^The plies below and above/);
  });
  test.each<[string, object[]]>([
    ['a woven ply', [{ pack: 'below' }, { pack: 'below' }, { pack: 'below', cloth: 'aramid twill 170' }]],
    ['one at 45°', [{ pack: 'below' }, { pack: 'below', angle: 45 }, { pack: 'below' }]],
    ['one across', [{ pack: 'below' }, { pack: 'below', angle: 90 }]],
  ])('not with %s', (_, laid) => expect(splits({ cloth: UD300, wanted: 'slight flex', plies: laid })).toBeUndefined());
  test('what is found of such cloth is closed by a woven ply on both sides, unless none is wanted; it counts among the plies and is laid as it stands', () => {
    const on = packOnSheet({ ...cored, wanted: 'slight flex' }), { pack } = on, { below, above } = pack.stiffener, names = [...below, ...above].map(({ ply }) => ply.name);
    expect([names[0], names.at(-1)]).toEqual(['carbon twill 200', 'carbon twill 200']);
    expect(codes(on)).not.toContain('STIFFENER_SPLITS warn');
    expect(pack.plies).toBe(names.length);
    const again = packOnSheet({ ...cored, wanted: 'slight flex', plies: [...below.map((one) => ({ pack: 'below', cloth: one.ply.name, ...one.over })), ...above.map((one) => ({ pack: 'above', cloth: one.ply.name, ...one.over }))] }).pack;
    expect(again.assessed.bench.bend).toBeCloseTo(pack.assessed.bench.bend, 9);
    expect(again.grams.pack).toBeCloseTo(pack.grams.pack, 9);
    expect(splits({ ...cored, wanted: 'slight flex', outerCloth: 'none' })).toBeDefined();
    expect(packOnSheet({ ...cored, wanted: 'slight flex', outerCloth: 'glass twill 163' }).pack.stiffener.above.at(-1)!.ply.name).toBe('glass twill 163');
  });
  test('woven cloth gets none unless it is asked for', () => {
    const cloths = (more: object): Set<string> => { const { below, above } = packOnSheet({ wanted: 'slight flex', core: 'birch plywood', coreThickness: 4, ...more }).pack.stiffener; return new Set([...below, ...above].map(({ ply }) => ply.name)); };
    expect(cloths({})).toEqual(new Set(['carbon twill 200']));
    expect(cloths({ outerCloth: 'aramid twill 170' })).toContain('aramid twill 170');
  });
});

describe('a core that is bent onto the last', () => {
  test.each<[string, Json]>([
    ['a low last', { 'left.last.pitch': 8, 'left.last.toeSpring': 8 }], ['as ordered', {}], ['a curved one', { 'left.last.pitch': 20, 'left.last.toeSpring': 14 }],
  ])('%s: no sheet of what is found is strained more on its faces than it bears', (_, more) => {
    for (const core of ['birch plywood', 'cork'] as const) {
      const { pack } = packOnSheet({ wanted: 'slight flex', core }, more), { sheets, material, thickness } = pack.stiffener.core!;
      expect(sheets!.count * sheets!.thickness).toBeCloseTo(Number(thickness), 6);
      expect(sheets!.thickness).toBeLessThanOrEqual(2 * material.bends.strain! * bentRadius(pack.plate.rise!, pack.plate.from, pack.plate.to) * 1.01);
      expect(material.bends.sold).toContainEqual(expect.closeTo(sheets!.thickness, 6));
    }
  });
  test('it is told in words, and the glue of its joints is weighed: 200 g/m² each', () => {
    const on = packOnSheet({ wanted: 'slight flex', core: 'birch plywood', coreThickness: 6, thicknessAtMost: 9 }), { pack } = on, { sheets } = pack.stiffener.core!;
    expect(sheets!.count).toBeGreaterThan(1);
    expect(found(on, 'STIFFENER_FOUND')!.text).toContain(`6 mm of birch plywood, ${sheets!.count} sheets of ${sheets!.thickness} mm`);
    expect(layersDown(pack).find(({ what }) => what === 'core')!.sheets).toEqual(sheets);
    expect(pack.grams.glue!).toBeCloseTo(((sheets!.count - 1) * 0.2 * pack.grams.core) / (0.68 * 6), 6);
    expect(pack.grams.cloth! + pack.grams.resin! + pack.grams.core + pack.grams.glue!).toBeCloseTo(pack.grams.pack, 6);
  });
  test('board is moulded and cork bent as they are; a bought core of the maker\'s own is put together of its own sheets', () => {
    const sheets = (more: object): unknown => packOnSheet({ wanted: 'slight flex', thicknessAtMost: 9, ...more }).pack.stiffener.core!.sheets;
    expect(sheets({ core: 'leather board', coreThickness: 4 })).toEqual({ count: 1, thickness: 4 });
    expect(sheets({ core: 'cork', coreThickness: 6 })).toEqual({ count: 1, thickness: 6 });
    const ownCore = { name: 'poplar plywood', density: 0.45, modulus: 5000, shear: 60, shearStrength: 1.5 };
    expect(sheets({ ownCore: { ...ownCore, bendsTo: 0.5, sheet: 1 }, coreThickness: 5 })).toEqual({ count: 5, thickness: 1 });
    expect(sheets({ ownCore, coreThickness: 5 })).toEqual({ count: 1, thickness: 5 });
  });
  test('where no sheet sold is thin enough it is not found, and told of where it was named', () => {
    const stiff = { name: 'stiff board', density: 0.7, modulus: 8000, shear: 67, shearStrength: 2.5, bendsTo: 0.1, sheet: 3 };
    expect(found(packOnSheet({ wanted: 'slight flex', ownCore: stiff }), 'STIFFENER_CORE_BENT')).toMatchObject({ severity: 'warn', measured: 3 });
    const cork = packOnSheet({ wanted: 'slight flex' }).pack.sought!.open.cores.flatMap((core) => core ?? []);
    expect(new Set(cork.map(({ name }) => name))).toEqual(new Set(['leather board', 'birch plywood', 'cork']));
    const bent = { ...cork.find(({ name }) => name === 'birch plywood')!.material.bends, strain: 1e-4 };
    expect(coreThicknesses({ bends: bent }, 150, [2, 3, 4])).toEqual([]);
  });
});

describe('what is said of how it is laid', () => {
  const laid = (more: object): object => ({ wanted: 'slight flex', plies: plies(4), ...more }), wet = (more: object) => found(packOnSheet(laid(more)), 'STIFFENER_RESIN');
  test('resin that nobody lays so is warned of, with the share of fibre; by hand: 1 g of 1.79 and 2.5 g of 1.15 are 20 % fibre', () => {
    expect(wet({ resin: 2.5 })).toMatchObject({ severity: 'warn', measured: expect.closeTo(2.5, 9), limit: 1.5, text: expect.stringContaining('20 % fibre by volume') });
    expect(wet({ resin: 0.4 })).toMatchObject({ limit: 0.8, text: expect.stringContaining('dry spots') });
    for (const resin of [0.8, 1, 1.2, 1.5]) expect([resin, wet({ resin })]).toEqual([resin, undefined]);
  });
  test('glass is wetted with less, for it weighs more; a laid thickness tells its resin too', () => {
    expect(wet({ cloth: 'glass twill 280', resin: 0.6 })).toBeUndefined();
    expect(wet({ cloth: 'glass twill 280', resin: 1.4 })).toMatchObject({ limit: 1.2 });
    expect(wet({ ownCloth: { name: 'own', fibre: 'carbon', weave: 'twill', areal: 200, thickness: 0.45 } })).toMatchObject({ limit: 1.5 });
    expect(wet({ plies: [...plies(3), { pack: 'below', resin: 2 }] })).toMatchObject({ measured: expect.closeTo(2, 9) });
  });
  test('a strip is named by where it lies; one that leaves the plate is cut and told of, and left out where it does not lie on it', () => {
    const strip = (from: number, to: number) => packOnSheet(laid({ plies: [...plies(3), { pack: 'below', from, to }] })), words = ({ pack: { stiffener, plate } }: OnSheet): string => inShort(stiffener, false, plate);
    expect(words(strip(170, 240))).toContain('with 1 strip across the ball');
    expect(words(strip(20, 60))).toContain('with a strip 20 to 60 mm from the heel');
    const cut = strip(170, 281), { plate, stiffener } = cut.pack;
    expect(stiffener.below.at(-1)!.over).toEqual({ from: 170, to: plate.to });
    expect(found(cut, 'STIFFENER_OFF_PLATE')).toMatchObject({ severity: 'warn', measured: 281, limit: plate.to });
    const off = strip(0, 2);
    expect(off.pack.plies).toBe(3);
    expect(found(off, 'STIFFENER_OFF_PLATE')!.text).toContain('it is left out');
    expect(found(strip(170, 240), 'STIFFENER_OFF_PLATE')).toBeUndefined();
    expect(paths(laid({ plies: [...plies(3), { pack: 'below', from: 170, to: 380 }], shank: { thickness: 1, width: 12, from: 60, to: 390 } })).sort()).toEqual(['plies[3].to', 'shank.to']);
  });
});

describe('a thickness alone', () => {
  const told = (stiffener: unknown, more: Json = {}) => findingsOnSheet(stiffener, more).filter(({ code }) => code === 'STIFFENER_UNKNOWN');
  const toe: Json = { 'left.foot.stiff': { joint: 'toe joint', state: 'fused' }, 'left.foot.ankleAngle': undefined };
  test('tells nothing of the bend: noted, and warned of where a joint ahead of the ankle must not bend, or there is none at all', () => {
    expect(told(9)).toMatchObject([{ severity: 'note', measured: 9, side: 'left' }]);
    expect(told(1.5, { 'wearer.mass': undefined })).toMatchObject([{ severity: 'note' }]);
    expect(told(1.5, toe)).toMatchObject([{ severity: 'warn', text: expect.stringContaining('"wanted": "rigid"') }]);
    expect(told(0)).toMatchObject([{ severity: 'warn', text: expect.stringContaining('no stiffener') }]);
  });
  test('what flat plies so thick would bend is told where the mass is known, by hand within a tenth: five of 0.285, 78 kg, and warned of where that is too soft', () => {
    const [one] = told(1.43), bend = Number(/would bend (\d+\.\d)°/.exec(one!.text)?.[1]);
    // The ball's width over all the lever: F L² / 3 E I, so a narrowing plate bends further, by half as much again at most.
    const byHand = (((0.125 * 78_000) / 70) * 70 ** 2 * 12 * 180) / (3 * 51_000 * 83 * 1.43 ** 3 * Math.PI);
    expect([one!.severity, bend / byHand > 1, bend / byHand < 1.5]).toEqual(['warn', true, true]);
  });
  test('asks for the mass where that is missing, and is silent where something is wanted', () => {
    expect(told(1.5, { 'wearer.mass': undefined })[0]!.text).toContain('wearer.mass');
    expect(told(1.5)[0]!.text).not.toContain('wearer.mass');
    expect(told({ wanted: 'slight flex', core: 'birch plywood' })).toEqual([]);
  });
});

test('what the README shows of materials of one\'s own is a sheet that reads and is laid so', () => {
  const shown = [...readFileSync('README.md', 'utf8').matchAll(/```json\n([^`]*)```/g)].map(([, text]) => text!).find((text) => text.includes('"ownFibre"'))!, { pack } = packOnSheet({ wanted: 'slight flex', coreThickness: 3, ...(JSON.parse(`{${shown}}`) as object) });
  expect([...pack.stiffener.below, ...pack.stiffener.above].map(({ ply }) => ply.name)).toEqual(['flax twill', 'test piece 7', 'glass twill 163']);
  expect(pack.stiffener.core).toMatchObject({ name: 'poplar plywood', sheets: { count: 3, thickness: 1 } });
});
