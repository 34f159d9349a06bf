import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import type { PackOrder } from '../../src/fitting/fitting.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { at, type PlacedPly, type Stiffener } from '../../src/stiffener/stiffener.ts';
import { changed, type Json } from '../fitting/sheets.ts';
import { rockersOf } from '../support/packs.ts';

/* The card and the checks say one thing: what a row of the card calls good is not stopped when that droop is typed into the sheet. */

const sheetOf = (name: string): Json => JSON.parse(readFileSync(`samples/${name}/sheet.json`, 'utf8')) as Json;

/** The first rocker of a sheet with its pack, and the same pack told as laid, with a bench test or none. */
function proving(sheet: Json): { readonly found: Pack; readonly typed: (bench: NonNullable<PackOrder['bench']>) => Pack } {
  const reading = readSheet(JSON.stringify(sheet));
  if (!reading.ok) throw new Error(reading.faults.map(({ text }) => text).join('; '));
  const designing = design(reading.fitting, 'quick');
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join('; '));
  const { fitting } = designing.design, shoe = rockersOf(designing.design)[0]!, found = packFor(shoe, fitting)!, { order } = shoe.fitting;
  if (order.kind !== 'rocker') throw new Error('no rocker');
  return { found, typed: (bench) => packFor({ ...shoe, fitting: { ...shoe.fitting, order: { ...order, pack: { ...found.order, ...laidLike(found.stiffener), bench } } } }, fitting)! };
}

function laidLike({ below, above, core, edges = 0 }: Stiffener): Partial<PackOrder> {
  const told = (pack: 'below' | 'above') => ({ ply: { name }, angle, over }: PlacedPly) => ({ pack, angle, ply: { kind: 'cloth', cloth: name as 'carbon twill 200' } as const, ...over });
  return { plies: [...below.map(told('below')), ...above.map(told('above'))], edges, ...(core ? { core: core.name as 'cork', coreThickness: at(core.thickness, 0) } : { core: 'none' }) };
}

const isStopped = ({ assessed: { judgements } }: Pack): boolean => judgements.some(({ severity }) => severity === 'stop');

describe.each([
  ['ferry-pilot', 'right', { 'wearer.mass': 92 }, { wanted: 'rigid' }], ['market-gardener', 'right', {}, { wanted: 'slight flex', cloth: 'carbon unidirectional 300', thicknessAtMost: 9 }],
  ['choir-conductor', 'left', {}, { wanted: 'rigid', cloth: 'carbon unidirectional 200', thicknessAtMost: 10 }], ['ferry-pilot', 'right', { 'wearer.mass': 60, 'right.last.camber': 4 }, { wanted: 'slight flex', core: 'none', edges: 6 }],
] as const)('%s, %s shoe: %o, %o', (name, side, more, wanted) => {
  const { found, typed: withBench } = proving(changed(sheetOf(name), { ...more, [`${side}.order.stiffener`]: wanted })), { bare, rows } = benchTestOf(found)!;
  const typed = (droop: number): Pack => withBench({ mass: bare.mass, lever: bare.loadAt - bare.ball, droop });

  test('each row is what the sheet makes of a droop near both its ends', () => {
    expect(rows[0]!.span.reading.means).toBe('test again');
    for (const { droop: [from, to], span: { reading } } of rows) for (const share of [0.01, 0.99]) {
      const pack = typed(from + (Math.min(to, 2 * from) - from) * share);
      expect(pack.test!.reading).toEqual(reading);
      if (reading.means !== 'test again') expect([reading.means, isStopped(pack)]).toEqual([reading.means, reading.means === 'add' || reading.means === 'lay anew']);
    }
  });

  test('the band holds only what is not stopped, and one as reckoned that is stopped has none', () => {
    expect(bare.band === undefined).toBe(isStopped(typed(bare.droop)));
    for (const droop of bare.band ? [bare.band[0] * 1.0001, bare.droop, bare.band[1] * 0.9999] : []) expect(isStopped(typed(droop))).toBe(false);
  });

  test('a reading far too stiff is not believed: nothing is counted better than without it', () => {
    const stuck = typed(0.15 * bare.droop), { assessed: { stumble, bench } } = stuck;
    expect([stuck.test!.reading.means, bench.bend >= found.assessed.bench.bend * 0.999, stumble.firstPly.times <= found.assessed.stumble.firstPly.times * 1.001]).toEqual(['test again', true, true]);
  });
});
