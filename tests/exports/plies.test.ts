import { describe, expect, test } from 'vitest';
import { numbersBeside } from '../../src/exports/besides.ts';
import { plyFiles } from '../../src/exports/plyFiles.ts';
import { printable } from '../../src/exports/pdf.ts';
import { plyTemplates } from '../../src/exports/templatePlies.ts';
import { planTemplates } from '../../src/exports/templatePlans.ts';
import { solesOf } from '../../src/exports/templates.ts';
import { enclosedArea } from '../../src/geometry/path.ts';
import { windowRound } from '../../src/geometry/clip.ts';
import { mm, rounded } from '../../src/checks/say.ts';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { kindOf } from '../../viewer/keep/fileKinds.ts';
import { isInside } from '../judges/apart.ts';
import { mistakenForCuts } from '../support/dxfColours.ts';
import { readDxf } from '../support/dxfReader.ts';
import { BOARDED, BOWED, pliesWith } from '../support/packs.ts';
import { designOf, JOBS, madeOf } from './jobs.ts';
import { readPdf } from './pdfReader.ts';

const PAIR = designOf(JOBS.pair), PLIES = pliesWith(PAIR, BOARDED), [ONE] = PLIES.shoes, FILES = plyFiles(PAIR, PLIES);
const ALONE = designOf(JOBS.alone), BOW = pliesWith(ALONE, BOWED, undefined, { from: 30 }), BOW_FILES = plyFiles(ALONE, BOW);
const textOf = (files: typeof FILES, name: string): string => new TextDecoder().decode(files.find((file) => file.name === name)!.bytes);
const bytesOf = (files: typeof FILES, name: string): Uint8Array => files.find((file) => file.name === name)!.bytes;
const said = (text: string): string => Buffer.from(printable(text), 'latin1').toString('latin1');

/** What a closed chain of a drawing encloses, by many points of it. */
function areaIn(chain: ReturnType<ReturnType<typeof readDxf>['chains']>[number]): number {
  const points: (readonly [number, number])[] = [];
  let end = chain[0]!.to;
  chain.forEach((piece, i) => {
    const forth = i === 0 || Math.hypot(piece.from[0] - end[0], piece.from[1] - end[1]) < 1e-6;
    for (let k = 0; k < 200; k++) points.push(piece.at(forth ? k / 200 : 1 - k / 200));
    end = forth ? piece.to : piece.from;
  });
  return Math.abs(points.reduce((sum, [x, y], i) => { const [u, v] = points[(i + 1) % points.length]!; return sum + (x * v - u * y) / 2; }, 0));
}

test('files begin with the side and plies, or are of the job, and the page knows them by their names', () => {
  expect(FILES.map(({ name }) => name)).toEqual(['K-204_left_plies.dxf', 'K-204_left_plies.pdf', 'K-204_left_plies-template.pdf', 'K-204_plies-cloth-1.dxf', 'K-204_plies-cloth-2.dxf']);
  for (const { name } of FILES) expect(kindOf(name, 'K-204').of).toBe('plies');
});

describe('drawings read back', () => {
  test('every ply and the core is one closed line on a layer of its own, as large as it is told, and none touches another', () => {
    const read = readDxf(textOf(FILES, 'K-204_left_plies.dxf')), names = ONE!.layers.map(({ kind, number }) => `${kind.toUpperCase()}_${number}`);
    const chains = names.map((name) => read.chains(name));
    expect(chains.map(({ length }) => length)).toEqual(names.map(() => 1));
    chains.forEach(([chain], i) => expect(areaIn(chain!) / ONE!.layers[i]!.area).toBeCloseTo(1, 4));
    const lows = chains.map(([chain]) => Math.min(...chain!.map(({ at }) => Math.min(at(0)[1], at(0.5)[1])))), highs = chains.map(([chain]) => Math.max(...chain!.map(({ at }) => Math.max(at(0)[1], at(0.5)[1]))));
    for (let i = 1; i < lows.length; i++) expect(lows[i - 1]! - highs[i]!).toBeGreaterThan(10);
    expect(mistakenForCuts(textOf(FILES, 'K-204_left_plies.dxf').replaceAll(/^(?:PLY|CORE)_\d+/gm, 'CUT'))).toEqual([]);
  });

  test('each carries its number in the order of laying, cloth and fibres, side, job and version, within its outline', () => {
    const { letters, chains } = readDxf(textOf(FILES, 'K-204_left_plies.dxf')), texts = letters.map(({ text }) => text.replaceAll(/\\U\+([0-9A-F]{4})/g, (_, code: string) => String.fromCharCode(parseInt(code, 16))));
    expect(texts).toEqual(expect.arrayContaining(['LEFT ply 1 of 8', '0/90 deg carbon twill 200', '+-45 deg carbon twill 200', '0 deg carbon unidirectional 200', 'clamp line', 'tread line, gauge 2', 'load line, gauge 1', 'LEFT core 5 of 8', 'leather board, up to 3 mm', 'K-204 2025-03-01 v1']));
    for (const { text, at } of letters.filter((one) => /^LEFT (?:ply|core)/.test(one.text))) {
      const [, kind, number] = /^LEFT (ply|core) (\d+)/.exec(text)!, [chain] = chains(`${kind!.toUpperCase()}_${number}`);
      expect(isInside(at, chain!.map((piece) => piece.at(0)))).toBe(true);
    }
  });

  test('arrows run as the fibres do: along and across, or at 45° both ways', () => {
    const { entities } = readDxf(textOf(FILES, 'K-204_left_plies.dxf')), shafts = entities.filter(({ layer, from, to }) => layer === 'FIBRE' && Math.hypot(to[0] - from[0], to[1] - from[1]) > 10);
    const ways = shafts.map(({ from, to }) => Math.round((Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI));
    // Three plies at 0/90 and two at ±45 of two arrows each, two strips of one: 12.
    expect([ways.filter((way) => way === 0).length, ways.filter((way) => Math.abs(way) === 90).length, ways.filter((way) => way === 45).length, ways.filter((way) => way === -45).length, ways.length]).toEqual([5, 3, 2, 2, 12]);
  });

  test('the cloth is drawn with its edge, and all that is cut lies on it', () => {
    for (const { number, width, length, parts, area } of PLIES.cloths) {
      const text = textOf(FILES, `K-204_plies-cloth-${number}.dxf`), read = readDxf(text), cut = read.chains('CUT'), edge = read.entities.filter(({ layer }) => layer === 'SHEET_EDGE');
      expect([cut.length, cut.reduce((sum, chain) => sum + areaIn(chain), 0) / area]).toEqual([parts.length, expect.closeTo(1, 4)]);
      expect([Math.max(...edge.map(({ to }) => to[0])), Math.max(...edge.map(({ to }) => to[1]))]).toEqual([length, width]);
      expect(mistakenForCuts(text)).toEqual([]);
    }
  });
});

describe('papers', () => {
  const pages = readPdf(bytesOf(FILES, 'K-204_left_plies.pdf')), words = pages.flatMap((page) => page.words), all = words.join(' ');

  test('tell every layer with its grams, what is mixed, and what can hurt', () => {
    const { amounts, layers } = ONE!;
    for (const { number, cloth } of amounts.plies) expect([number, words.includes(`${rounded(cloth!, 1)} g`)]).toEqual([number, true]);
    for (const value of [amounts.mixed, amounts.resin, amounts.hardener]) expect(words).toContain(`${rounded(value, 1)} g`);
    for (const layer of layers) expect(words).toContain(mm(layer.inset));
    for (const text of ['sensitises', 'P2 or P3', 'goggles', 'softens', 'hardener', 'hot cement', 'full cup', 'vacuum']) expect(all).toContain(text);
  });

  test('the bench test stands on a page of its own, whole, with room to write', () => {
    const { bare, finished, rows } = benchTestOf(ONE!.pack)!, page = pages.filter(({ words: own }) => own.some((text) => text.startsWith('Bench test')));
    expect(page).toHaveLength(1);
    expect(page[0]!.words[1] === 'Bench test: left shoe of K-204' || page[0]!.words.some((text) => text === 'Bench test: left shoe of K-204')).toBe(true);
    for (const text of [mm(bare.droop, 2), mm(finished.droop, 2), mm(bare.atBall, 2), 'Gauge 2', '1st', '3rd', 'Date, who', `clamp line, ${mm(bare.clampAt, 0)}`, `tread line, ${mm(bare.ball, 0)}`, `load line, ${mm(bare.loadAt, 0)}`, ...rows.map(({ droop: [, to] }) => mm(Math.floor(to * 100) / 100, 2)).slice(0, 1).map((text) => `up to ${text}`)]) expect(page[0]!.words).toContain(said(text));
    expect(page[0]!.words.join(' ')).toContain('Stand clear, goggles on.');
  });

  test('where a stop was taken the bench test is still one page', () => {
    const own = readPdf(bytesOf(BOW_FILES, 'K-206_right_plies.pdf'));
    expect(own.filter(({ words: texts }) => texts.some((text) => text.startsWith('Bench test') || text === 'Date, who'))).toHaveLength(1);
  });

  test('templates are in true size: 100 mm are 100 mm both ways on every page, and a ply measures what it should', () => {
    const drawn = readPdf(bytesOf(BOW_FILES, 'K-206_right_plies-template.pdf')), [first] = BOW.shoes[0]!.layers;
    for (const { strokes, words: texts } of drawn) {
      const bars = strokes.map(({ from: [ax, ay], to: [bx, by] }) => [Math.abs(bx - ax), Math.abs(by - ay)] as const);
      expect([bars.filter(([x, y]) => Math.abs(x - 100) < 0.001 && y < 0.001).length, bars.filter(([x, y]) => x < 0.001 && Math.abs(y - 100) < 0.001).length, texts.includes('RIGHT')]).toEqual([1, 1, true]);
    }
    // The straight back edge of the first ply is as long as the plate is wide there.
    const back = first!.outline.find((piece) => piece.kind === 'line')!, long = back.kind === 'line' ? Math.hypot(back.to[0] - back.from[0], back.to[1] - back.from[1]) : NaN;
    expect(drawn[0]!.strokes.some(({ from, to, width }) => Math.abs(from[0] - to[0]) < 1e-3 && Math.abs(Math.abs(from[1] - to[1]) - long) < 0.01 && Math.abs(width - 0.5) < 0.01)).toBe(true);
  });
});

test('templates of the stiffener are its plies where they are known, and the plain inset where they are not', () => {
  const [sole] = solesOf(PAIR), plain = planTemplates(sole!).map(({ part }) => part), known = planTemplates(sole!, plyTemplates(sole!, ONE!)).map(({ part }) => part);
  expect(plain).toContain('stiffener plies');
  expect(known.filter((part) => !plain.includes(part))).toEqual([1, 2, 3, 4].map((n) => `ply ${n} of 8`).concat(['core 5 of 8'], [6, 7, 8].map((n) => `ply ${n} of 8`)));
  expect(known).not.toContain('stiffener plies');
});

test('the numbers of a shoe tell its plies as the papers do', () => {
  const { plies } = numbersBeside({ ...madeOf(PAIR), plies: PLIES }, PAIR.shoes[0]!, PAIR.fitting) as { plies: { layers: { areaMm2: number }[]; grams: { mixed: number } } };
  expect(plies.layers.map(({ areaMm2 }) => areaMm2)).toEqual(ONE!.parts.map(({ outline }) => expect.closeTo(enclosedArea(outline), 6)));
  expect(plies.grams.mixed).toBe(ONE!.amounts.mixed);
  expect(windowRound(ONE!.parts.map(({ outline }) => outline)).most[0]).toBeLessThan(282 - 5.9);
});
