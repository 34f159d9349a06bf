import { beforeAll, describe, expect, test } from 'vitest';
import { besidesFor, cementFor } from '../../src/making/stack/cuttingList.ts';
import { cuttingListPdf, unlikeWords } from '../../src/exports/cuttingList.ts';
import { designJson } from '../../src/exports/designJson.ts';
import { filesFor, type NamedFile } from '../../src/exports/fileSet.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { pathLength } from '../../src/geometry/path.ts';
import { madeFor, type Made } from '../../src/making/made.ts';
import { wasteOf } from '../../src/making/nest/nest.ts';
import { stacksFor } from '../../src/making/stack/buildUp.ts';
import type { Design } from '../../src/design.ts';
import { changed, pairSheet } from '../fitting/sheets.ts';
import { packFor } from '../../src/stiffener/pack.ts';
import { designOf, JOBS, SAMPLES } from './jobs.ts';
import { mistakenForCuts } from '../support/dxfColours.ts';
import { readPdf, type PdfPage } from './pdfReader.ts';

let design: Design, made: Made, files: readonly NamedFile[];
beforeAll(() => {
  design = designOf({ ...JOBS.pair, making: { ...readMaking({ stack: {} }), rack: readMaking({}).rack.slice(1, 4), chordGap: 0.5 } });
  made = madeFor(design, undefined);
  files = filesFor(design);
}, 60000);
const text = (ending: string): string => Buffer.from(files.find(({ name }) => name.endsWith(ending))!.bytes).toString('utf8');

/** Entities of a DXF as their group codes; of one that comes twice the last. */
function entities(dxf: string): Map<number, string>[] {
  const lines = dxf.split(/\r?\n/), pairs = Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!] as const);
  const from = pairs.findIndex(([code, value]) => code === 2 && value === 'ENTITIES'), found: Map<number, string>[] = [];
  for (const [code, value] of pairs.slice(from + 1)) {
    if (code === 0 && value === 'ENDSEC') break;
    if (code === 0) found.push(new Map());
    found.at(-1)?.set(code, value);
  }
  return found;
}

/** Length of a line or an arc by its own numbers. */
function lengthOf(entity: Map<number, string>): number {
  const at = (code: number): number => Number(entity.get(code));
  if (entity.get(0) === 'LINE') return Math.hypot(at(11) - at(10), at(21) - at(20));
  return (at(40) * Math.PI * ((at(51) - at(50) + 360) % 360)) / 180;
}

describe('files of soles built up from sheets', () => {
  test('a drawing for each sheet of the rack, and the cutting list', () => {
    const names = files.map(({ name }) => name).filter((name) => /stack|cutting/.test(name));
    expect(names).toEqual([...made.stack!.sheets.map(({ number }) => `K-204_stack-sheet-${number}.dxf`), 'K-204_cutting-list.pdf']);
    expect(made.stack!.sheets.length).toBeGreaterThan(1);
  });

  test('every blank is cut in true size, lettered once, on its sheet', () => {
    for (const { number, parts, sheet } of made.stack!.sheets) {
      const drawn = entities(text(`_stack-sheet-${number}.dxf`)), cut = drawn.filter((entity) => entity.get(8) === 'CUT');
      expect(cut.reduce((sum, entity) => sum + lengthOf(entity), 0)).toBeCloseTo(parts.reduce((sum, { outline }) => sum + pathLength(outline), 0), 5);
      const letters = drawn.filter((entity) => entity.get(0) === 'TEXT').map((entity) => entity.get(1)!);
      expect(letters.slice(1).filter((one) => one !== 'ball' && one !== 'apex').sort()).toEqual(parts.map(({ name }) => name).sort());
      expect(letters[0]).toContain(sheet.name);
      for (const entity of cut.filter((one) => one.get(0) === 'LINE')) for (const [x, y] of [[10, 20], [11, 21]] as const) {
        expect(Number(entity.get(x))).toBeGreaterThanOrEqual(3 - 1e-6);
        expect(Number(entity.get(x))).toBeLessThanOrEqual(sheet.length - 3 + 1e-6);
        expect(Number(entity.get(y))).toBeLessThanOrEqual(sheet.width - 3 + 1e-6);
      }
    }
  });

  test('lines to lay by are on the layer of marks, ball and apex told by a word, and none has the colour of a cut', () => {
    const drawings = files.filter(({ name }) => name.endsWith('.dxf')).map(({ bytes }) => Buffer.from(bytes).toString('utf8'));
    expect(drawings.map(mistakenForCuts)).toEqual(drawings.map(() => []));
    const drawn = made.stack!.sheets.flatMap(({ number }) => entities(text(`_stack-sheet-${number}.dxf`))), layers = new Set(drawn.map((entity) => entity.get(8)));
    expect([...layers].sort()).toEqual(['CUT', 'LETTERS', 'MARK', 'NEXT_EDGE', 'SHEET_EDGE']);
    const words = drawn.flatMap((entity) => entity.get(1) ?? []);
    expect([words.includes('ball'), words.includes('apex')]).toEqual([true, true]);
  });

  test('the cutting list names every sheet and says what the numbers file says, with a line of 100 mm both ways', () => {
    const json = JSON.parse(designJson(design, made)) as { shoes: { stack: { layers: { of: number; pieces: { areaMm2: number; weightG: number; cementG: number }[] }[]; outsole: { weightG: number } } }[]; sheets: { file: string; blanks: number }[] };
    const pages: readonly PdfPage[] = readPdf(files.find(({ name }) => name.endsWith('cutting-list.pdf'))!.bytes), words = JSON.stringify(pages);
    for (const { file } of json.sheets) expect(words).toContain(file);
    expect(json.sheets.reduce((sum, { blanks }) => sum + blanks, 0)).toBe(json.shoes.flatMap(({ stack }) => stack.layers.flatMap(({ pieces }) => pieces)).length);
    for (const { stack } of json.shoes) for (const { pieces } of stack.layers) for (const { areaMm2, cementG } of pieces) expect(cementG).toBeCloseTo((areaMm2 / 1e6) * 2 * 150, 5);
    for (const [way, other] of [[0, 1], [1, 0]] as const) expect(pages.flatMap(({ strokes }) => strokes).some(({ from, to }) => Math.abs(Math.abs(to[way] - from[way]) - 100) < 0.01 && Math.abs(to[other] - from[other]) < 0.01)).toBe(true);
    expect(words).toContain('label');
    expect(words).toContain('not therapy');
  });
});

describe('words and costs of the cutting list', () => {
  const usual = readMaking({}).rack.slice(1, 4), listOf = (prices: readonly (number | undefined)[]) => {
    const rack = usual.map((sheet, i) => ({ ...sheet, ...(prices[i] !== undefined && { price: prices[i] }) }));
    const made = designOf({ ...JOBS.alone, making: { ...readMaking({ stack: { heel: 'EVA 10' } }), rack, chordGap: 0.5 } }), stacks = stacksFor(made)!;
    return { stacks, words: readPdf(cuttingListPdf(made, stacks)).flatMap((page) => page.words) };
  };

  test('a layer is told in one cell, with the place it lies in before its number', () => {
    const { stacks: { shoes }, words } = listOf([]);
    for (const { pieces, number, of } of shoes.flatMap(({ layers }) => layers)) for (const { place } of pieces) expect(words).toContain(`${place || 'runs on'} ${number} of ${of}`);
    expect(words.some((word) => word.startsWith('heel '))).toBe(true);
  });

  test('blanks, and sheets with their waste, cost what a square metre costs; a sheet without a price is named; without any price nothing is said', () => {
    const { stacks, words } = listOf([30, 40]), said = words.join(' '), priced = stacks.sheets.filter(({ sheet }) => sheet.price !== undefined);
    expect(priced.length).toBeGreaterThan(0);
    for (const { pieces, sheet } of stacks.shoes.flatMap(({ layers }) => layers)) for (const { area } of pieces) expect(words).toContain(sheet.price === undefined ? '\u2013' : ((area * sheet.price) / 1e6).toFixed(2));
    // Totals are those of the rows as they are shown.
    const sum = (of: (one: (typeof priced)[number]) => number): string => priced.reduce((all, one) => all + Number(((of(one) * one.sheet.price!) / 1e6).toFixed(2)), 0).toFixed(2);
    expect(said).toContain(`Cost of the blanks ${sum(({ use }) => use.parts)}, with their waste ${sum(({ use, sheet }) => use.parts + wasteOf(use, sheet))},`);
    expect(said.includes('for want of a price')).toBe(stacks.sheets.some(({ sheet }) => sheet.price === undefined));
    expect(listOf([]).words.join(' ')).not.toMatch(/[Cc]ost/);
    const [own] = stacks.shoes, besides = besidesFor(designOf(JOBS.alone).shoes[0]!, JOBS.alone)!, glued = [...own!.layers.flatMap(({ pieces }) => pieces.map(({ area }) => cementFor(area))), besides.outsole.cement, besides.stiffener!.cement];
    expect(said).toContain(`Cement in all ${glued.reduce((all, one) => all + Math.round(one), 0)} g`);
  });
});

test('a stiffener that is known takes what its plies and core take; one of which only the thickness is known is an estimate', () => {
  const known = designOf(SAMPLES['market-gardener']!), shoe = known.shoes.find(({ kind }) => kind === 'rocker')!, { pack, cloth, resin, core } = packFor(shoe, known.fitting)!.grams;
  expect(besidesFor(shoe, known.fitting)!.stiffener).toMatchObject({ estimated: false, cloth, resin, core, weight: pack });
  const { estimated, cloth: half, resin: other, weight } = besidesFor(designOf(JOBS.alone).shoes[0]!, JOBS.alone)!.stiffener!;
  expect([estimated, half! + other!]).toEqual([true, expect.closeTo(weight, 9)]);
});

test('a pair of which each sole has sheets the other has not is told of both, and no other', () => {
  const stack = (side: 'left' | 'right', ...names: readonly string[]) => ({ side, layers: names.map((name) => ({ sheet: { name } })) }) as unknown as Parameters<typeof unlikeWords>[0][number];
  expect(unlikeWords([stack('left', 'grey', 'black'), stack('right', 'grey', 'tan', 'tan')])).toEqual([expect.stringMatching(/: black only on the left, tan only on the right\./)]);
  expect([unlikeWords([stack('left', 'grey', 'black'), stack('right', 'grey')]), unlikeWords([stack('left', 'grey')]), unlikeWords([])]).toEqual([[], [], []]);
});

test('two sheets of one name in the rack are a fault: zones and papers tell them by it alone', () => {
  const rack = (...names: readonly string[]) => readSheet(JSON.stringify(changed(pairSheet(), { 'making.rack': names.map((name, i) => ({ name, thickness: 6 + i, density: 0.2, length: 1000, width: 900 })) })));
  const twice = rack('grey', 'black', 'grey');
  expect(rack('grey', 'black').ok).toBe(true);
  expect(twice.ok ? [] : twice.faults.map(({ path, text: said }) => [path, said])).toEqual([['making.rack[2].name', expect.stringContaining('must be the name of this sheet alone')]]);
});

describe('foam named for a zone', () => {
  const reading = (stack: object) => readSheet(JSON.stringify(changed(pairSheet(), { 'making.stack': stack, 'making.rack': [{ name: 'grey', thickness: 6, density: 0.2, length: 1000, width: 900 }] })));
  test('must be in the rack', () => {
    expect(reading({ heel: 'grey' }).ok).toBe(true);
    const wrong = reading({ heel: 'grey', forepart: 'black' });
    expect(wrong.ok ? [] : wrong.faults.map(({ path, text: said }) => [path, said])).toEqual([['making.stack.forepart', expect.stringContaining('must be the name of a sheet in the rack: grey')]]);
  });
});
