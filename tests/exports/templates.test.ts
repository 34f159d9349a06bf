import { describe, expect, test } from 'vitest';
import { pdfBytes, printable } from '../../src/exports/pdf.ts';
import { isLine, type Template } from '../../src/exports/template.ts';
import { templatePages } from '../../src/exports/templatePage.ts';
import { crossesOf, extentOf, lettered, tileMarks, tileName, tilesOf, tilingFor, windowOf } from '../../src/exports/templateTiles.ts';
import { templatesFor } from '../../src/exports/templates.ts';
import { filesFor } from '../../src/exports/fileSet.ts';
import { circle, type Words } from '../../src/exports/drawing.ts';
import type { FlatPart } from '../../src/making/flatPart.ts';
import { clipped, windowRound } from '../../src/geometry/clip.ts';
import { mirroredPath, pathLength, pointOn } from '../../src/geometry/path.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { designOf, job, JOBS, rocker, SAMPLES } from './jobs.ts';
import { readPdf, type PdfPage } from './pdfReader.ts';

const PAIR = designOf(JOBS.pair), TURNED = designOf(JOBS.turned), A4 = { width: 270, height: 170 };
const pagesOf = (templates: readonly Template[], paper: 'A4' | 'A3' | 'Letter' = 'A4', overlap = 10): PdfPage[] => readPdf(pdfBytes(templatePages(PAIR, templates, paper, overlap), 'Test', '2025-03-01'));
const said = (text: string): string => Buffer.from(printable(text), 'latin1').toString('latin1');
const one = (templates: readonly Template[], stem: string): Template => templates.find((template) => template.stem === stem)!;
const LEFT = templatesFor(PAIR, 'left');

describe('pages of templates', () => {
  // ISO 216 gives A4 and A3; Letter is 8.5 by 11 inches.
  test.each([['A4', 297, 210], ['A3', 420, 297], ['Letter', 11 * 25.4, 8.5 * 25.4]] as const)('%s lies, and on each page 100 mm are 100 mm both ways', (paper, width, height) => {
    const pages = pagesOf(paper === 'A4' ? LEFT : [one(LEFT, 'insole'), one(LEFT, 'side-profile')], paper);
    pages.forEach((page, i) => {
      expect([page.width, page.height]).toEqual([expect.closeTo(width, 1), expect.closeTo(height, 1)]);
      const bars = page.strokes.map(({ from: [ax, ay], to: [bx, by] }) => [Math.abs(bx - ax), Math.abs(by - ay)] as const);
      expect(bars.filter(([x, y]) => Math.abs(x - 100) < 0.001 && y < 0.001)).toHaveLength(1);
      expect(bars.filter(([x, y]) => x < 0.001 && Math.abs(y - 100) < 0.001)).toHaveLength(1);
      for (const words of [said('must measure 100 mm, ± 0.3'), 'LEFT', 'true size, 1 : 1', 'sheet version 1', 'K-204   2025-03-01']) expect(page.words).toContain(words);
      expect(page.words.some((words) => words.startsWith(`page ${i + 1} of ${pages.length}`))).toBe(true);
      // Nothing lies where no printer reaches.
      for (const { from, to } of page.strokes) for (const [x, y] of [from, to]) expect([x > 5, x < width - 5, y > 5, y < height - 5]).toEqual([true, true, true, true]);
    });
  });

  test('on A3 the insole of a 282 mm last is one page, on A4 two; the axis runs 4 mm past both ends of the last, the seat ends 56 mm from its heel', () => {
    const [insole] = pagesOf([one(LEFT, 'insole')], 'A3');
    expect([pagesOf([one(LEFT, 'insole')], 'A3').length, pagesOf([one(LEFT, 'insole')]).length]).toEqual([1, 2]);
    const axis = insole!.strokes.find(({ from, to }) => Math.abs(Math.abs(to[0] - from[0]) - 290) < 0.02 && from[1] === to[1])!;
    const heel = Math.min(axis.from[0], axis.to[0]) + 4;
    const seat = insole!.strokes.filter(({ from, to }) => Math.abs(from[0] - to[0]) < 0.001 && Math.abs(from[0] - heel - 56) < 0.001);
    expect(seat).toHaveLength(1);
    // Seat width there: the outline's own, counted from the shape's points.
    const { feather } = partsOf(PAIR.shoes[0]!)!.shape, near = feather.flatMap((piece) => Array.from({ length: 400 }, (_, i) => pointOn(piece, i / 400))).filter(([x]) => Math.abs(x - 56) < 0.4).map(([, y]) => y);
    expect(Math.abs(seat[0]!.to[1] - seat[0]!.from[1])).toBeCloseTo(Math.max(...near) - Math.min(...near), 1);
  });

  test('a drawing begins at the printable corner, so only what is left over lies on the last page', () => {
    for (const template of LEFT) {
      const extent = extentOf(template), tiling = tilingFor(extent, A4, 10), least = windowOf(tiling, { column: 0, row: 0 }).least, size = [extent.most[0] - extent.least[0] + 3, extent.most[1] - extent.least[1] + 3] as const;
      expect(extent.least[0] - least[0]).toBeCloseTo(1.5, 9);
      if (tiling.rows > 1) expect(extent.least[1] - least[1]).toBeCloseTo(1.5, 9);
      // By hand: the first page takes its width, each further one its width less the overlap.
      expect([tiling.columns, tiling.rows]).toEqual([size[0] <= 270 ? 1 : 1 + Math.ceil((size[0] - 270) / 260), size[1] <= 170 ? 1 : 1 + Math.ceil((size[1] - 170) / 160)]);
    }
  });

  test('a right shoe has the mirrored outline and words that can be read', () => {
    const right = templatesFor(designOf({ ...JOBS.pair, shoes: { right: { ...JOBS.pair.shoes.left!, side: 'right' } } }), 'right'), outline = (templates: readonly Template[]) => one(templates, 'insole').picture.shapes.filter(isLine)[0]!.path;
    const [a, b] = [outline(LEFT), mirroredPath(outline(right))].map((path) => windowRound([path]));
    expect(a).toEqual({ least: b!.least.map((x) => expect.closeTo(x, 9)), most: b!.most.map((x) => expect.closeTo(x, 9)) });
    expect(readPdf(pdfBytes(templatePages(PAIR, [one(right, 'insole')], 'A3', 10), 'Test', '2025-03-01'))[0]!.words).toContain('RIGHT insole');
  });

  test('stops taken on a name stand on every page', () => {
    const alone = designOf(JOBS.alone), pages = readPdf(pdfBytes(templatePages(alone, templatesFor(alone, 'right').slice(0, 2), 'A4', 10), 'Test', '2025-03-01'));
    for (const { words } of pages) expect(words.join(' ')).toContain('STOP taken by Dr A. Example: wound closed since 2025-02-20, dressing removed');
  });
});

const TEMPLATES = [one(LEFT, 'insole'), ...templatesFor(TURNED, 'right').slice(1)];
const linesOf = (template: Template) => template.picture.shapes.filter(isLine);

describe('tiles put together again', () => {
  const cases = TEMPLATES.flatMap((template) => ([[A4, 10], [{ width: 120, height: 60 }, 14]] as const).map(([room, overlap]) => ({ template, tiling: tilingFor(extentOf(template), room, overlap) })));

  test('without overlap they hold every line once and whole', () => {
    for (const { template, tiling: { room } } of cases) {
      const tiling = tilingFor(extentOf(template), room, 0), whole = linesOf(template).reduce((sum, { path }) => sum + pathLength(path), 0);
      const shared = tilesOf(tiling).flatMap((tile) => tileMarks(linesOf(template), tiling, tile, [0, 0])).filter(isLine).reduce((sum, { path }) => sum + pathLength(path), 0);
      expect(shared).toBeCloseTo(whole, 4);
    }
  });

  test('two neighbours show the same in the strip they share', () => {
    let shared = 0;
    for (const { template, tiling } of cases) for (const tile of tilesOf(tiling)) for (const next of [{ ...tile, column: tile.column + 1 }, { ...tile, row: tile.row + 1 }]) {
      if (next.column >= tiling.columns || next.row >= tiling.rows) continue;
      const [a, b] = [windowOf(tiling, tile), windowOf(tiling, next)], strip = { least: b.least, most: a.most };
      const shownIn = (where: typeof tile): number => tileMarks(linesOf(template), tiling, where, windowOf(tiling, where).least).filter(isLine).reduce((sum, { path }) => sum + pathLength(clipped(path, strip)), 0);
      const here = shownIn(tile);
      expect(here).toBeCloseTo(shownIn(next), 5);
      if (here > 5) shared++;
    }
    expect(shared).toBeGreaterThan(10);
  });

  test('every label stands whole on one page, and none is lost', () => {
    for (const { template, tiling } of cases) {
      const marks = lettered(template, tiling), lettering = (of: readonly (typeof marks)[number][]): Words[] => of.filter((mark) => mark.kind === 'text');
      const shown = tilesOf(tiling).flatMap((tile) => lettering(tileMarks(marks, tiling, tile, [0, 0])).map(({ text }) => text));
      for (const { text } of lettering(marks)) expect(shown).toContain(text);
    }
  });

  test('crosses lie at one place of the template on both pages they join', () => {
    const insole = one(LEFT, 'insole'), [first, second] = pagesOf([insole]);
    const across = (page: PdfPage): (readonly [number, number])[] => page.strokes.filter(({ from, to }) => Math.abs(Math.abs(to[1] - from[1]) - 8) < 0.01 && Math.abs(from[0] - to[0]) < 1e-6 && from[1] < 180).map(({ from, to }) => [from[0], (from[1] + to[1]) / 2]);
    // Window of A4: 297 less 16 left and 6 right; the next one begins an overlap earlier.
    const moved = 297 - 16 - 6 - 10;
    expect(across(first!)).toHaveLength(2);
    expect(across(first!).map(([x, y]) => [x - moved, y])).toEqual(across(second!).map(([x, y]) => [expect.closeTo(x, 3), expect.closeTo(y, 3)]));
    expect(first!.words).toContain('glue under A2');
    expect(second!.words).toContain('cut here, lay on A1');
  });

  test('rows are lettered, columns numbered, and each seam has its crosses', () => {
    const tiling = tilingFor({ least: [0, 0], most: [250, 90] }, { width: 100, height: 60 }, 10);
    expect(tilesOf(tiling).map(tileName)).toEqual(['A1', 'A2', 'A3', 'B1', 'B2', 'B3']);
    expect(crossesOf(tiling)).toHaveLength(2 * (2 * 2 + 3));
    expect(() => tilingFor({ least: [0, 0], most: [250, 90] }, { width: 70, height: 60 }, 40)).toThrow(/less than half a page, got 40 mm/);
  });
});

const DRAWN = [TURNED, designOf(SAMPLES['bookbinder']!)];
test('layers are templates of their own, and their joints are drawn on the side and on the walls', () => {
  const part: FlatPart = { name: 'K-204 left 1 of 2', outline: circle([140, 0], 40), holes: [], letters: [], marks: [{ of: 'CENTRE_LINE', path: [{ kind: 'line', from: [100, 0], to: [180, 0] }] }, { of: 'NEXT_EDGE', path: [{ kind: 'line', from: [130, -30], to: [130, 30] }] }] };
  const templates = templatesFor(PAIR, 'left', { parts: [{ name: 'layer 1 of 2', sheet: 'EVA 10', part }], joints: [{ name: 'joint 1', depth: 8, from: 0, to: 200 }] });
  expect(templates.map(({ stem }) => stem)).toEqual(['insole', 'foam-body', 'stiffener', 'outsole', 'layer-1', 'side-profile', 'side-walls']);
  const phantoms = (all: readonly Template[], stem: string): number => linesOf(one(all, stem)).filter(({ line }) => line === 'phantom').length;
  expect([phantoms(templates, 'side-profile') - phantoms(LEFT, 'side-profile'), phantoms(templates, 'side-walls') - phantoms(LEFT, 'side-walls')]).toEqual([1, 2]);
  const [page] = pagesOf([one(templates, 'layer-1')]);
  for (const words of ['LEFT layer 1 of 2', 'next layer', 'centre line']) expect(page!.words).toContain(words);
});

test.each([['A4', 0], ['Letter', 40]] as const)('%s with an overlap of %d mm: any job finds room for its labels', (paper, overlap) => {
  for (const design of DRAWN) {
    for (const { side } of design.shoes) expect(templatePages(design, templatesFor(design, side), paper, overlap).length).toBeGreaterThan(3);
  }
});

test('one PDF for each shoe and one drawing for each template, in true size, when they are ordered', () => {
  const ordered = designOf({ ...JOBS.pair, making: { ...JOBS.pair.making, chordGap: 0.5, templates: { paper: 'A3', overlap: 10 } } }), files = filesFor(ordered).filter(({ name }) => name.includes('template')), names = files.map(({ name }) => name);
  expect(names).toEqual([
    'K-204_left_templates.pdf', ...['insole', 'foam-body', 'stiffener', 'outsole', 'side-profile', 'side-walls'].map((stem) => `K-204_left_template-${stem}.svg`),
    'K-204_right_templates.pdf', ...['foam-body', 'outsole', 'side-profile', 'side-walls'].map((stem) => `K-204_right_template-${stem}.svg`),
  ]);
  for (const { name, bytes } of files.filter((file) => file.name.endsWith('.svg'))) {
    const text = new TextDecoder().decode(bytes), [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d. ]+)"/.exec(text)!;
    expect(box, name).toBe(`${width} ${height}`);
    // The check lines, both ways.
    expect([...text.matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"/g)].map(([, ...at]) => at.map(Number)).filter(([ax, ay, bx, by]) => bx! - ax! === 100 && by === ay || bx === ax && by! - ay! === 100)).toHaveLength(2);
  }
});

test('toe and heel are lettered within the outline, wherever a page ends', () => {
  for (const length of [262, 264.2, 267]) {
    const measured = (value: number) => ({ value, origin: 'measured' as const }), design = designOf(job('K-291', { left: rocker('left', {}, { length: measured(length), tread: measured(189), innerBall: measured(185), outerBall: measured(158) }) }));
    for (const { marks } of templatePages(design, templatesFor(design, 'left').filter(({ stem }) => stem === 'foam-body'), 'Letter', 10)) {
      const outline = marks.flatMap((mark) => (mark.kind === 'line' && mark.line === 'visible' ? mark.path : [])).flatMap((piece) => [0, 0.5, 1].map((t) => pointOn(piece, t)[0]));
      for (const mark of marks) if (mark.kind === 'text' && (mark.text === 'toe' || mark.text === 'heel')) expect([length, mark.text, mark.at[0] < Math.max(...outline) - 2, mark.at[0] > Math.min(...outline) + 2]).toEqual([length, mark.text, true, true]);
    }
  }
});
