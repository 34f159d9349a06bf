import { describe, expect, test } from 'vitest';
import { decidesIt } from '../../src/checks/packDecides.ts';
import { reserveWords, WAY_HEADS, waysTo } from '../../src/checks/packWays.ts';
import { designWith } from '../../src/designWith.ts';
import { alternativesTo } from '../../src/stiffener/alternatives.ts';
import { assumptionsOf, leastToSpare, supposing, withoutEach } from '../../src/stiffener/decides.ts';
import { inShort, laidIn } from '../../src/stiffener/layers.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { wouldKeep, type OrderChange } from '../../src/stiffener/wouldKeep.ts';
import { everyPack, type Held, type Judged } from '../judges/everyPack.ts';
import { fittingOf, type Json } from '../fitting/sheets.ts';
import { packOnSheet, sheetWith, type OnSheet } from './onSheet.ts';

/** The pack that a sheet gets when all of its shoe is worked out anew. */
function designedPack(order: Json): Pack {
  const designing = designWith(() => [], fittingOf(sheetWith(order)));
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join(' '));
  const { shoes: [shoe], fitting } = designing.design, pack = shoe && packFor(shoe, fitting);
  if (!pack) throw new Error('no pack');
  return pack;
}
const textOf = ({ findings }: OnSheet, code: string): string => findings('careful').find((one) => one.code === code)?.text ?? '';
const laid = ({ stiffener, underFoam, plate }: Pack): string => inShort(stiffener, underFoam, plate);

/** An order with what a way says typed over it, as a maker types it. */
const typed = (order: Json, { plies, ...change }: OrderChange): Json => ({ ...order, ...change, ...(plies ? { plies: plies.map((one) => ({ ...one })) } : {}) });

describe('where no pack reaches it, what would: each is put on the sheet and keeps to what was said', () => {
  test.each<[Json]>([[{ core: 'none' }], [{ core: 'none', cloth: 'glass twill 280' }], [{ core: 'firm EVA', coreThickness: 3 }], [{ core: 'cork' }], [{ core: 'none', underFoam: true }]])('%j', (order) => {
    const { pack, findings } = packOnSheet(order), ways = wouldKeep(pack, 'some'), first = findings('careful').find(({ severity }) => severity === 'stop');
    expect(pack.keeps).toBe('not');
    expect(ways.length).toBeGreaterThan(0);
    expect(first!.text).toMatch(/keeps to it; this one falls least short\. (Kept to in all|With nothing left that stops) by /);
    for (const { change, keeps, tried } of ways) {
      const put = packOnSheet(typed(order, change)).pack;
      expect([change, put.keeps, laid(put)]).toEqual([change, keeps, laidIn(tried, pack.plate)]);
    }
  }, 30_000);

  test.each<[Json]>([[{}], [{ wanted: 'slight flex' }], [{ cloth: 'carbon unidirectional 300', thicknessAtMost: 7 }]])('short of all only, nothing is said to help only where nothing beside it does: %j', (order) => {
    const { pack, findings } = packOnSheet(order, { 'wearer.mass': 84 }), said = findings('careful').map(({ text }) => text).join(' '), helps = wouldKeep(pack).some(({ keeps }) => keeps === 'all');
    expect([pack.keeps === 'all', pack.keeps === 'all' || said.includes('Kept to in all by'), said.includes('Nothing that was tried')]).toEqual([pack.keeps === 'all', pack.keeps === 'all' || helps, pack.keeps !== 'all' && !helps]);
  }, 30_000);

  test('the same where the shoe is worked out anew for what is put on the sheet: the foam body between packs hangs on it', () => {
    const order = { core: 'none', underFoam: true, wanted: 'slight flex' }, pack = designedPack(order), { change, keeps, tried } = wouldKeep(pack, 'some')[0]!, put = designedPack(typed(order, change));
    expect([change, put.keeps, laid(put)]).toEqual([change, keeps, laidIn(tried, pack.plate)]);
  }, 30_000);

  test('more plies than are sought: so many flat ones of twill do, and the sheet that lists them gets them', () => {
    const { pack } = packOnSheet({ core: 'none' }), more = wouldKeep(pack).find(({ change }) => change.plies)!, put = packOnSheet(typed({ core: 'none' }, more.change)).pack;
    expect(more.tried.plies).toBeGreaterThanOrEqual(12);
    expect([put.by, put.plies, put.keeps]).toEqual(['sheet', more.tried.plies, more.keeps]);
    expect(packOnSheet({ core: 'none', plies: more.change.plies!.slice(1).map(({ pack: side }) => ({ pack: side })) }).pack.keeps).toBe('not');
  }, 30_000);

  test('where one change is not enough, two', () => {
    const order = { core: 'none', cloth: 'basalt twill 210', thicknessAtMost: 4 }, on = packOnSheet(order, { 'wearer.mass': 110 }), ways = wouldKeep(on.pack);
    expect(ways.length).toBeGreaterThan(0);
    for (const { change, keeps } of ways) {
      expect(Object.keys(change).filter((key) => key !== 'coreThickness').length).toBe(2);
      expect(packOnSheet(typed(order, change), { 'wearer.mass': 110 }).pack.keeps).toBe(keeps);
    }
    expect(textOf(on, 'STIFFENER_BENDS')).toMatch(/\(order\.stiffener\.\w+(, coreThickness)?\) and /);
  }, 30_000);

  test('where nothing does, that is said', () => {
    const on = packOnSheet({ core: 'none', cloth: 'glass twill 163', thicknessAtMost: 0.6, bendAtMost: 0.2 }, { 'wearer.mass': 150 });
    expect(wouldKeep(on.pack)).toEqual([]);
    expect(textOf(on, 'STIFFENER_BENDS')).toContain('Nothing that was tried keeps to it');
  }, 30_000);

  test('more room is as much as the pack needs that is found in it, so it is found with just as much', () => {
    const order = { core: 'birch plywood', camber: 0 }, { pack } = packOnSheet(order), roomier = wouldKeep(pack).find(({ change }) => change.thicknessAtMost)!, put = packOnSheet({ ...order, thicknessAtMost: roomier.change.thicknessAtMost }).pack;
    expect([put.keeps, laid(put), put.thickness <= roomier.change.thicknessAtMost!]).toEqual([roomier.keeps, laidIn(roomier.tried, pack.plate), true]);
  }, 30_000);
});

describe('other ways beside it', () => {
  const { pack } = packOnSheet({ cloth: 'carbon unidirectional 300', camber: 0 });
  test('each core, edges turned up and plies under the foam body are told though all is kept, and none twice', () => {
    expect(pack.keeps).toBe('all');
    const ways = alternativesTo(pack).map(({ way }) => way), rows = waysTo(pack, 'mm').map(({ way }) => way.replace(/^[^:]*: /, ''));
    expect(ways).toEqual(expect.arrayContaining(['plies alone', 'around leather board', 'around cork', 'with edges turned up', 'some plies under the foam body']));
    expect(rows.filter((row) => row === laid(pack))).toEqual([]);
    expect(new Set(rows).size).toBe(rows.length);
  }, 30_000);
  test('the fewest plies with nothing that stops are told where they are not the pack itself: against every pack', () => {
    const { pack: heavy } = packOnSheet({ core: 'birch plywood', camber: 0 }), { sought, asked } = heavy, least = alternativesTo(heavy).find(({ way }) => way.startsWith('fewest'))!;
    const every = everyPack(sought!.open, sought!.bench, asked).filter(({ must }) => must >= 1), fewest = Math.min(...every.map(({ plies }) => plies));
    expect(least.tried.plies).toBe(fewest);
    expect(least.tried.grams.pack).toBeLessThan(Math.min(...every.filter(({ plies }) => plies === fewest).map(({ grams }) => grams)) * 1.002);
  }, 30_000);
  test('a row has a number under each head; the least to spare is told with what it is', () => {
    for (const { numbers } of waysTo(pack, 'mm')) expect(numbers.length).toBe(WAY_HEADS.length);
    const least = leastToSpare(pack.assessed, pack.asked);
    expect(least.times).toBeCloseTo(pack.spare.all, 9);
    expect(waysTo(pack, 'mm')[0]!.numbers.at(-2)).toBe(`${least.times.toFixed(2)} ${reserveWords(least)}`);
    expect(waysTo(packOnSheet({ core: 'none' }).pack, 'mm')[0]!.numbers[5]).toBe('more than 30°');
  }, 30_000);
});

describe('what decides it: not held to that it would be another pack, and the same without what decides nothing; against every pack', () => {
  const first = (all: readonly Judged[]): Judged | undefined => {
    const keep = all.filter(({ all: spare }) => spare >= 1), near = (a: number, b: number): number => (Math.abs(a / b - 1) < 2e-3 ? 0 : a - b);
    return [...keep].sort((a, b) => a.plies - b.plies || near(a.grams, b.grams) || near(a.thickness, b.thickness) || b.all - a.all)[0];
  };
  const said = ({ choice: { below, above, core, edges, patch } }: Pick<Judged, 'choice'>): string => JSON.stringify([below, above, core?.name, core?.thickness, edges, patch]);
  test.each<[string, Json, Json]>([['straight cloth', { cloth: 'carbon unidirectional 300', core: 'birch plywood', camber: 0 }, {}], ['twill with room, a light client', { thicknessAtMost: 12, core: 'birch plywood', camber: 0 }, { 'wearer.mass': 60 }]])('%s', (_, order, more) => {
    const { pack } = packOnSheet(order, more), { open, bench, choice } = pack.sought!, each = withoutEach(pack);
    expect(pack.keeps).toBe('all');
    expect(each[0]!.changes).toBe(true);
    for (const { without, changes, tried } of [each[0]!, each.find((one) => !one.changes)!]) {
      const judged = first(everyPack(open, bench, pack.asked, without as Held))!;
      expect([without, said(judged)]).toEqual([without, said(tried)]);
      expect([without, said(judged) !== said({ choice })]).toEqual([without, changes]);
    }
    expect(decidesIt(pack, 'mm')[0]).toMatch(/^What decides it: .*; not held to that, it would be .* It has least to spare of /);
  }, 60_000);
  test('loads and cores otherwise than is usual: each is sought anew, the one that changes it most first; harder walking never takes less', () => {
    const { pack } = packOnSheet({ cloth: 'carbon unidirectional 300', core: 'leather board' }), all = supposing(pack), of = (value: number) => all.find((one) => one.what === 'walking' && one.value === value)!;
    expect(all.map(({ what }) => what).sort()).toEqual(['camber usual', 'soft cores', 'stumble', 'walking', 'walking', 'walking'].filter((what) => what !== 'camber usual' || pack.sought!.bench.camber?.counted === 'none'));
    expect(of(0.25).tried.plies).toBeLessThanOrEqual(of(0.42).tried.plies);
    expect(of(0.42).tried.plies).toBeLessThanOrEqual(of(0.8).tried.plies);
    expect(all[0]!.changes).toBe(true);
    expect(all.findIndex(({ changes }) => !changes)).toBe(all.filter(({ changes }) => changes).length % all.length || -1);
  }, 30_000);
  test('how sure the bend is: the own bend lies between, at the softest plies are strained no less', () => {
    const plies = ['below', 'below', 'above', 'above'].map((pack) => ({ pack })), cork = { core: 'cork', coreThickness: 5, plies };
    for (const order of [{ ...cork, resin: 2 }, { ...cork, camber: 2, resin: 0.5 }]) {
      const { pack } = packOnSheet(order), own = (pack.assessed.bench.bend * 180) / Math.PI, all = assumptionsOf(pack), moved = all.map(({ bends: [worst, best] }) => worst - best);
      for (const { bends: [worst, best] } of all) expect([best <= own, own <= worst]).toEqual([true, true]);
      expect(moved).toEqual([...moved].sort((a, b) => b - a));
      expect(all.map(({ of }) => of).sort()).toEqual('camber' in order ? ['camber', 'core', 'resin'] : ['core', 'resin']);
    }
  }, 30_000);
});

describe('stiffer than was wanted', () => {
  test('slight flex that a stumble makes rigid is asked about; a number that is met by far is told; rigid is what it is', () => {
    const fixed = { core: 'birch plywood', coreThickness: 6, camber: 0 }, stiffer = (more: Json) => packOnSheet({ ...fixed, ...more }).findings('careful').find(({ code }) => code === 'STIFFENER_STIFFER')!;
    const slight = stiffer({ wanted: 'slight flex' }), number = stiffer({ bendAtMost: 4 });
    expect([slight.severity, slight.text.includes('1.5 to 5°'), slight.text.includes('The softest pack with nothing that stops bends '), slight.text.includes('decide. Ask the prescriber')]).toEqual(['warn', true, true, true]);
    expect(number.severity).toBe('note');
    expect(textOf(packOnSheet(fixed), 'STIFFENER_STIFFER')).toBe('');
  }, 30_000);
});
