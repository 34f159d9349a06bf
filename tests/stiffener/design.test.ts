import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { design, type Design } from '../../src/design.ts';
import { figuresOf } from '../../src/checks/figures.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { featherLine } from '../../src/last/outline.ts';
import { upperFace } from '../../src/last/upperFace.ts';
import { CORES, type CoreName } from '../../src/materials/stiffeners.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import type { Asked } from '../../src/stiffener/assess.ts';
import { choicesIn, layUp, type Bench, type Open } from '../../src/stiffener/choices.ts';
import { inTurn } from '../../src/stiffener/inTurn.ts';
import { plyOrdered } from '../../src/stiffener/laying.ts';
import { inShort, layersDown } from '../../src/stiffener/layers.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { plateUnder } from '../../src/stiffener/plate.ts';
import { assessedOr, hoping, searched, spareOf } from '../../src/stiffener/search.ts';
import { everyPack, type Judged } from '../judges/everyPack.ts';
import { changed, faultsIn, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { plainLast } from '../support/cases.ts';

const plate = plateUnder(plainLast, featherLine(plainLast), upperFace(plainLast));
const benchWith = (cloth: 'carbon twill 200' | 'carbon unidirectional 300', camber = 0): Bench =>
  ({ plate, ply: plyOrdered({ ply: { kind: 'cloth', cloth } }), ...(camber > 0 ? { camber: { height: () => camber, counted: 'whole' } } : {}) });
const core = (name: CoreName, thickness: number) => ({ name, material: CORES[name], thickness, foam: false });
const open = (cores: Open['cores'], most: number, thicknessAtMost = 20, edges: readonly number[] = [0]): Open => ({ plies: { least: 1, most }, cores, edges, thicknessAtMost });

const sheetWith = (stiffener: unknown, more: Json = {}): Json => changed(lockedSheet(), { 'left.order.stiffener': stiffener, ...more });
function made(fitting: Fitting, pace?: 'quick'): { readonly made: Design; readonly shoe: RockerShoe; readonly pack: Pack } {
  const designing = design(fitting, pace);
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join(' '));
  const [shoe] = designing.design.shoes;
  if (shoe?.kind !== 'rocker') throw new Error('no rocker');
  return { made: designing.design, shoe, pack: packFor(shoe, designing.design.fitting)! };
}
const withPack = (stiffener: unknown, more: Json = {}, pace?: 'quick') => made(fittingOf(sheetWith(stiffener, more)), pace);
const codes = ({ findings }: Design): string[] => findings.filter(({ where }) => where === 'stiffener').map(({ code, severity }) => `${code} ${severity}`);

describe('a pack is the least, held against a judge that tries every one', () => {
  const light: Asked = { mass: 55, wanted: 'rigid' }, heavy: Asked = { mass: 95, wanted: 'slight flex' };
  test.each<[string, Open, Bench, Asked, 'all' | 'must' | 'not']>([
    ['straight cloth keeps to all', open([undefined, core('birch plywood', 4), core('birch plywood', 6), core('leather board', 6)], 4), benchWith('carbon unidirectional 300'), light, 'all'],
    ['twill keeps to the bend and a stumble', open([core('birch plywood', 6), core('leather board', 6), core('cork', 6)], 4), benchWith('carbon twill 200'), light, 'must'],
    ['a heavy client, thin: to neither', open([undefined, core('leather board', 3), core('cork', 3)], 4, 4.5, [0, 6]), benchWith('carbon twill 200'), heavy, 'not'],
    ['a bend in degrees on a cambered bottom', open([undefined, core('leather board', 4), core('birch plywood', 8)], 3), benchWith('carbon unidirectional 300', 3), { ...light, bendAtMost: 0.0175 }, 'all'],
  ])('%s', (_, choices, bench, asked, keeps) => {
    const found = searched(choices, bench, asked)!, all = everyPack(choices, bench, asked);
    const keep = all.filter(({ all: spare }) => spare >= 1), must = all.filter((one) => one.must >= 1), alike = (a: number, b: number): number => (Math.abs(a - b) < 1e-6 ? 0 : a - b), least = (a: Judged, b: Judged): number => a.plies - b.plies || alike(a.grams, b.grams) || alike(a.thickness, b.thickness) || b.all - a.all;
    const first = keep.length > 0 ? [...keep].sort(least)[0]! : must.length > 0 ? must.reduce((best, one) => (one.all > best.all ? one : best)) : all.reduce((best, one) => (one.must > best.must ? one : best));
    expect(found.keeps).toBe(keeps);
    expect(all.length).toBe(choicesIn(choices, bench).length);
    expect(found.spare.all).toBeCloseTo(first.all, 6);
    expect(found.spare.must).toBeCloseTo(first.must, 6);
    expect([found.plies, found.thickness]).toEqual([first.plies, expect.closeTo(first.thickness, 9)]);
    expect(Math.abs(found.bulk / first.grams - 1)).toBeLessThan(2e-3);
    // What lets it pass most of them over is never less than what they can do.
    const hope = hoping(bench, asked);
    for (const one of all) { const { must: most, all: mostOfAll } = hope(layUp(one.choice, bench)); expect(most).toBeGreaterThanOrEqual(one.must * (1 - 1e-9)); expect(mostOfAll).toBeGreaterThanOrEqual(one.all * (1 - 1e-9)); }
  });
  test('a ply more, on either side of what is found, never bends more', () => {
    const choices = choicesIn(open([undefined, core('leather board', 4), core('cork', 8), core('birch plywood', 3)], 4), benchWith('carbon twill 200')), bench = benchWith('carbon twill 200');
    fc.assert(fc.property(fc.constantFrom(...choices), fc.boolean(), ({ choice }, top) => {
      const more = top && choice.core ? { ...choice, above: choice.above + 1 } : { ...choice, below: choice.below + 1 }, bend = (one: typeof choice): number => assessedOr(layUp(one, bench), bench, light).bench.bend;
      expect(bend(more)).toBeLessThanOrEqual(bend(choice) * (1 + 1e-9));
    }), { numRuns: 12 });
  });
  test('where all are too thick, the thinnest is looked at', () => expect(searched(open([core('cork', 8)], 2, 3), benchWith('carbon twill 200'), light)!.thickness).toBeCloseTo(8 + 2 * benchWith('carbon twill 200').ply.thickness, 9));
});

describe('what is refused', () => {
  test('a thin core of EVA does not reach the grade, and is told what does', () => {
    const { made: job, pack } = withPack({ core: 'firm EVA', coreThickness: 3 });
    expect(pack.keeps).toBe('not');
    expect(codes(job)).toEqual(expect.arrayContaining(['STIFFENER_BENDS stop', 'STIFFENER_STUMBLE stop']));
    expect(job.findings.find(({ code }) => code === 'STIFFENER_BENDS')!.text).toContain('No pack of up to 5 plies within 8.0 mm keeps to it');
  });
  test('a flat pack of 5 × 0.30 is refused as rigid at every mass the sheet takes', () => {
    const measuredPly = { name: 'test piece', thickness: 0.3, density: 1.45, along: 50_000, across: 50_000, shear: 3_500, poisson: 0.05, pulled: 0.9, pressed: 0.65, sheared: 1.5 };
    for (const mass of [40, 60, 80, 110, 150]) {
      const { made: job, pack } = withPack({ wanted: 'rigid', measuredPly, plies: Array.from({ length: 5 }, () => ({ pack: 'below' })) }, { 'wearer.mass': mass });
      expect([mass, pack.assessed.grade === 'rigid', pack.thickness, codes(job).includes('STIFFENER_BENDS stop')]).toEqual([mass, false, expect.closeTo(1.5, 9), true]);
    }
  });
});

describe('the stack and its pack', () => {
  test('the shoe counts the pack that is found, on its sheet, in its stack and in its weight', () => {
    const { made: job, shoe, pack } = withPack({ cloth: 'carbon unidirectional 300' }), figures = new Map(figuresOf(shoe, job.fitting).map((figure) => [figure.key, figure]));
    expect(pack.keeps).not.toBe('not');
    expect([shoe.order.stiffener, shoe.shape.stiffener, shoe.fitting.order.kind === 'rocker' && shoe.fitting.order.stiffener]).toEqual([pack.thickness, pack.thickness, pack.thickness]);
    expect(job.fitting.shoes.left).toBe(shoe.fitting);
    expect(figures.get('stiffenerWeight')!.value).toBeCloseTo(pack.grams.pack, 9);
    expect(figures.get('packThickness')!.value).toBe(pack.thickness);
    expect(pack.grams.cloth! + pack.grams.resin! + pack.grams.core + (pack.grams.glue ?? 0)).toBeCloseTo(pack.grams.pack, 6);
    expect(layersDown(pack).reduce((sum, { thickness }) => sum + thickness, 0)).toBeCloseTo(pack.thickness, 9);
    expect(codes(job)).toContain('STIFFENER_FOUND note');
  });
  test('a pack under the foam body goes by the foam that is left, and stands when its own thickness is counted', () => {
    const { shoe, pack } = withPack({ core: 'none', underFoam: true, wanted: 'slight flex' });
    expect(pack.underFoam).toBe(true);
    expect(shoe.order.stiffener).toBeCloseTo(pack.thickness, 9);
    expect(inShort(pack.stiffener, true, pack.plate)).toContain('below the foam body (firm EVA)');
  });
  test('while a hand drags the plies found last for the same wishes stay; when it rests they are sought', () => {
    const wishes = { cloth: 'carbon unidirectional 300', thicknessAtMost: 10 }, rests = withPack(wishes).pack, held = withPack(wishes, { 'left.last.ballWidth': 112 }, 'quick').pack, sought = withPack(wishes, { 'left.last.ballWidth': 112 }).pack;
    expect(held.sought!.choice).toEqual(rests.sought!.choice);
    expect(held.assessed.bench.bend).not.toBe(rests.assessed.bench.bend);
    expect([sought.keeps, sought.plies, held.plies, sought.grams.pack < held.grams.pack]).toEqual(['all', 4, 5, true]);
  });

  interface Toy { readonly thick: number }
  const turn = (asks: (thick: number) => number, stiff = (thick: number): number => thick) => inTurn<Toy, Toy, string>({ thick: 1 }, {
    packOn: ({ thick }) => ({ thick: asks(thick) }), isCounted: (shoe, pack) => shoe.thick === pack.thick, isAlike: (one, other) => one.thick === other.thick,
    stifferOf: (one, other) => (stiff(other.thick) > stiff(one.thick) ? other : one), over: (_, { thick }) => (thick > 90 ? { ok: false, trouble: 'too thick' } : { ok: true, shoe: { thick } }),
  });
  test('shoe and pack are worked out until the pack repeats', () => expect(turn((thick) => Math.min(thick + 1, 4))).toEqual({ ok: true, shoe: { thick: 4 } }));
  test('of two packs that take turns the stiffer stays', () => {
    expect(turn((thick) => (thick === 2 ? 3 : 2))).toEqual({ ok: true, shoe: { thick: 3 }, kept: { thick: 3 } });
    expect(turn((thick) => (thick === 2 ? 3 : 2), (thick) => -thick)).toEqual({ ok: true, shoe: { thick: 2 }, kept: { thick: 2 } });
  });
  test('packs without end come to one, and a shoe that has no shape is told', () => {
    expect(turn((thick) => thick + 1)).toMatchObject({ ok: true, kept: { thick: 10 } });
    expect(turn(() => 99)).toEqual({ ok: false, trouble: 'too thick' });
  });
});

describe('the bench test', () => {
  const laid = { wanted: 'rigid', core: 'birch plywood', coreThickness: 6, plies: [{ pack: 'below' }, { pack: 'below' }, { pack: 'above' }, { pack: 'above' }], thicknessAtMost: 9 };
  const tested = (droop: number) => withPack({ ...laid, bench: { mass: 5, droop } });
  test('a reading as reckoned, by the very set-up of its card, changes nothing', () => {
    const plain = withPack(laid).pack, { reckoned } = tested(1).pack.test!, as = tested(Number(reckoned.toFixed(9))).pack;
    const { bare } = benchTestOf(plain)!;
    expect([reckoned, as.test!.lever]).toEqual([expect.closeTo((bare.droop * 5) / bare.mass, 9), bare.loadAt - bare.ball]);
    expect(as.test!.times).toBeCloseTo(1, 6);
    expect(as.assessed.bench.bend).toBeCloseTo(plain.assessed.bench.bend, 6);
  });
  test('what a clamp gives, told by the gauge at the tread line, is taken off as far as it works out at the load: 10 mm ahead of the clamp and a lever more', () => {
    const { bare } = benchTestOf(withPack(laid).pack)!, times = 5 / bare.mass, ahead = (bare.loadAt - bare.clampAt) / (bare.ball - bare.clampAt);
    const read = (droop: number, atTread: number) => withPack({ ...laid, bench: { mass: 5, droop: Number(droop.toFixed(9)), atTread: Number(atTread.toFixed(9)) } }).pack.test!;
    const given = read(times * bare.droop + 0.02 * ahead, times * bare.atBall + 0.02), none = read(times * bare.droop, times * bare.atBall);
    expect([given.times, given.gave, none.times, none.gave]).toEqual([expect.closeTo(1, 6), expect.closeTo(0.02 * ahead, 6), expect.closeTo(1, 6), expect.closeTo(0, 6)]);
  });
  test('a softer one is counted so, and the plies to add bring it back', () => {
    const { reckoned } = tested(1).pack.test!, { made: job, pack } = tested(Number((reckoned * 1.5).toFixed(6))), plain = withPack(laid).pack;
    expect(pack.test!.times).toBeCloseTo(1.5, 4);
    expect(pack.assessed.bench.bend / plain.assessed.bench.bend).toBeCloseTo(1.5, 4);
    expect(plain.assessed.stumble.firstPly.times / pack.assessed.stumble.firstPly.times).toBeCloseTo(1.5, 4);
    const { reading } = pack.test!, { onTop, underneath } = reading.means === 'add' ? reading.add : { onTop: 0, underneath: 0 };
    expect(onTop + underneath).toBeGreaterThan(0);
    // What is told is enough when it is put on the sheet and droops as far again.
    const more = [...Array.from({ length: underneath }, () => ({ pack: 'below' })), ...laid.plies, ...Array.from({ length: onTop }, () => ({ pack: 'above' }))], thicker = { ...laid, plies: more, thicknessAtMost: 12 };
    const again = withPack({ ...thicker, bench: { mass: 5, droop: 1 } }).pack.test!.reckoned * 1.5;
    expect(withPack({ ...thicker, bench: { mass: 5, droop: Number(again.toFixed(6)) } }).pack.keeps).not.toBe('not');
    expect(job.findings.find(({ code }) => code === 'STIFFENER_TEST')).toMatchObject({ severity: 'warn', unit: 'mm', text: expect.stringContaining('droops 1.5 times as far as reckoned') });
  });
  test('a reading so stiff that no such pack gives it is not counted: test again; one a little stiffer tells of less bend and of no more strength', () => {
    const plain = withPack(laid).pack, { reckoned } = tested(1).pack.test!, stuck = tested(Number((reckoned * 0.3).toFixed(6))), stiff = tested(Number((reckoned * 0.9).toFixed(6))).pack;
    expect([stuck.pack.test!.reading.means, stuck.pack.assessed.bench.bend, stuck.pack.assessed.stumble.firstPly.times]).toEqual(['test again', plain.assessed.bench.bend, plain.assessed.stumble.firstPly.times]);
    expect(stuck.made.findings.find(({ code }) => code === 'STIFFENER_TEST')).toMatchObject({ severity: 'warn', text: expect.stringMatching(/0\.3 times as far as reckoned.*not counted.*Test again: a wrong mass, a stuck gauge, or the clamp/) });
    expect([stiff.assessed.bench.bend / plain.assessed.bench.bend, stiff.assessed.stumble.firstPly.times / plain.assessed.stumble.firstPly.times, stiff.assessed.walking.strain / plain.assessed.walking.strain]).toEqual([0.9, 1, 1].map((share) => expect.closeTo(share, 4)));
  });
});

describe('faults, all at once', () => {
  const paths = (stiffener: unknown, more: Json = {}): string[] => faultsIn(JSON.stringify(sheetWith(stiffener, more))).map(({ path }) => path.replace('left.order.stiffener.', ''));
  test('numbers beyond their limits, and what is told twice', () => {
    expect(paths({ coreThickness: 0, resin: 9, wanted: 'rigid', bendAtMost: 2, ownCore: { name: 'mine', density: 0.2, modulus: 5, shear: 0.1, shearStrength: 0.4 }, cloth: 'carbon twill 200', ownCloth: { name: 'x', fibre: 'carbon', weave: 'plain', areal: 0 } }).sort())
      .toEqual(['bendAtMost', 'coreThickness', 'ownCloth', 'ownCore.shear', 'resin']);
  });
  test.each<[unknown, string]>([
    [{ cloth: 'silk' }, 'cloth'], [{ plies: [] }, 'plies'], [{ plies: [{ pack: 'below', from: 10, to: 90 }] }, 'plies'], [{ core: 'cork', plies: [{ pack: 'below' }, { pack: 'above' }] }, 'coreThickness'],
    [{ core: 'cork', coreThickness: 3, plies: [{ pack: 'below' }] }, 'plies'], [{ plies: [{ pack: 'below' }, { pack: 'below', from: 90, to: 80 }] }, 'plies[1].to'], [{ bench: { mass: 5, droop: 3 } }, 'plies'],
    [{ core: 'none', coreThickness: 3 }, 'coreThickness'], [{ core: 'cork', coreThickness: 9 }, 'coreThickness'], [{ ownCloth: { name: 'thick', fibre: 'carbon', weave: 'twill', areal: 200, thickness: 2 } }, 'ownCloth.thickness'],
    [{ wanted: 'bouncy' }, 'wanted'],
  ])('%j', (stiffener, path) => expect(paths(stiffener)).toEqual([path]));
  test('a pack is reckoned for a mass', () => expect(paths({}, { 'wearer.mass': undefined })).toEqual(['wearer.mass']));
  test('in inches: the same pack, to the thickness of a hair', () => {
    const inches = structuredClone(sheetWith({ core: 'leather board', coreThickness: 6, thicknessAtMost: 8 }));
    const turned = (value: unknown, name = ''): unknown => typeof value === 'number' ? (['mass', 'ankleAngle', 'version'].includes(name) ? value : value / 25.4)
      : value !== null && typeof value === 'object' && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, turned(one, key)])) : value;
    const own = withPack({ core: 'leather board', coreThickness: 6, thicknessAtMost: 8 }), other = made(fittingOf({ ...(turned(inches) as Json), units: 'in' }));
    expect(other.pack.thickness).toBeCloseTo(own.pack.thickness, 6);
    expect(other.pack.assessed.bench.bend).toBeCloseTo(own.pack.assessed.bench.bend, 6);
    expect(other.made.findings.find(({ code }) => code === 'STIFFENER_FOUND')!.text).toMatch(/6 mm \(0\.236 in\) of leather board/);
    expect(faultsIn(JSON.stringify({ ...(turned(inches) as Json), units: 'in', left: { ...(turned(inches) as { left: Json }).left, order: { kind: 'rocker', stiffener: { coreThickness: 1 } } } })).map(({ rule }) => rule)).toEqual(['must be 0.01969 to 0.4724 in']);
  });
  test('spare is a number whatever is laid', () => expect(Number.isFinite(spareOf(withPack({ plies: [{ pack: 'below' }] }).pack.assessed, { mass: 78, wanted: 'rigid' }).must)).toBe(true));
});
