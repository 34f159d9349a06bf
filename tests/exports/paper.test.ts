import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circle, drawn, stroke, words, type Drawing } from '../../src/exports/drawing.ts';
import { pdfBytes, printable } from '../../src/exports/pdf.ts';
import { sideDrawing } from '../../src/exports/sideDrawing.ts';
import { svgText } from '../../src/exports/svg.ts';
import { designOf, JOBS } from './jobs.ts';
import { readPdf } from './pdfReader.ts';

const page = (...marks: Drawing['marks']): Drawing => ({ paper: { width: 210, height: 297 }, title: 'Test <&>', marks });
const DATE = '2025-03-01';

describe('PDF', () => {
  test('true size: a page of A4, a line of 100 mm where it was put', () => {
    const [sheet] = readPdf(pdfBytes([page(stroke([20, 30], [120, 30]), stroke([20, 30], [20, 130]))], 'Test', DATE));
    expect([sheet!.width, sheet!.height]).toEqual([expect.closeTo(210, 2), expect.closeTo(297, 2)]);
    for (const [i, to] of [[0, [120, 30]], [1, [20, 130]]] as const) {
      expect(sheet!.strokes[i]!.from.map((x) => Number(x.toFixed(3)))).toEqual([20, 30]);
      expect(sheet!.strokes[i]!.to.map((x) => Number(x.toFixed(3)))).toEqual(to);
    }
  });

  test('a circle keeps its radius to a thousandth of a millimetre', () => {
    const [sheet] = readPdf(pdfBytes([page(drawn(circle([100, 100], 50), 'visible'))], 'Test', DATE));
    expect(sheet!.bends).toHaveLength(12);
    for (const [x, y] of sheet!.bends) expect(Math.abs(Math.hypot(x - 100, y - 100) - 50)).toBeLessThan(0.001);
  });

  test('no line is thinner than 0.18 mm', () => {
    const [sheet] = readPdf(pdfBytes([sideDrawing(designOf(JOBS.pair), { width: 297, height: 210 })], 'Test', DATE));
    expect(Math.min(...sheet!.strokes.map(({ width }) => width))).toBeGreaterThan(0.1799);
  });

  test('nothing comes from the clock, from chance or from the time zone', () => {
    const make = (): Uint8Array => pdfBytes([page(words('a', [10, 10]))], 'Test', DATE), first = make(), zone = process.env['TZ'];
    process.env['TZ'] = 'Pacific/Auckland';
    const other = make();
    if (zone === undefined) delete process.env['TZ']; else process.env['TZ'] = zone;
    expect(other).toEqual(first);
    expect(Buffer.from(first).toString('latin1')).toContain("/CreationDate (D:20250301000000+00'00')");
  });

  test('another page gives another file number, another date another date', () => {
    const number = (bytes: Uint8Array): string => /\/ID \[ <([0-9A-F]{32})>/.exec(Buffer.from(bytes).toString('latin1'))![1]!;
    expect(number(pdfBytes([page(words('a', [10, 10]))], 'Test', DATE))).not.toBe(number(pdfBytes([page(words('b', [10, 10]))], 'Test', DATE)));
    expect(() => pdfBytes([page()], 'Test', '2099-01-01')).not.toThrow();
    expect(() => pdfBytes([], 'Test', DATE)).toThrow(/at least one page/);
  });

  test('letters the face lacks become the nearest it has', () => {
    expect(printable('Größe 42 ½ ≥ 8 mm − 3 °')).toBe('Größe 42 ½ >= 8 mm – 3 °');
    expect(printable('Łukasz Dvořák')).toBe('Lukasz Dvorák');
    expect(printable('Ελένη')).toBe('?????');
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => { expect(printable(text)).toMatch(/^[\u0020-\u00ff–—‘’“”…€ŠšŽžŒœŸ•?]*$/); }), { seed: 20250301, numRuns: 200 });
  });

  test('lettering comes out as it went in, brackets and all', () => {
    const [sheet] = readPdf(pdfBytes([page(words('a (b) \\ c', [10, 10]), words('10 mm', [30, 30], { turned: true, anchor: 'end' }))], 'Test', DATE));
    expect(sheet!.words).toEqual(['a (b) \\ c', '10 mm']);
  });
});

describe('SVG', () => {
  test('true size: width and height in mm, the picture in the same numbers', () => {
    const text = svgText(page(stroke([20, 30], [120, 30])));
    expect(text).toMatch(/^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/);
    expect(text).toContain('d="M20 30L120 30"');
    expect(text.endsWith('</svg>\n')).toBe(true);
  });

  test('signs that mean something in XML are written by their number', () => {
    const text = svgText(page(words(`a < b & "c" > 'd'`, [10, 10])));
    expect(text).toContain('<title>Test &#60;&#38;&#62;</title>');
    expect(text).toContain('a &#60; b &#38; &#34;c&#34; &#62; &#39;d&#39;</text>');
  });

  test('arcs stay arcs and pieces that meet are one line', () => {
    expect(svgText(page(drawn(circle([50, 50], 10), 'thin')))).toContain('d="M60 50A10 10 0 0 1 40 50A10 10 0 0 1 60 50"');
    expect(svgText(page(drawn([{ kind: 'arc', centre: [0, 0], radius: 10, start: 0, sweep: -4 }], 'thin')))).toContain('A10 10 0 1 0 -6.536 7.568');
  });

  test('only colours of the sheet, system lettering, nothing from outside', () => {
    const text = svgText(sideDrawing(designOf(JOBS.pair), { width: 420, height: 215 }));
    expect(new Set(text.match(/#[0-9A-F]{6}/g))).toEqual(new Set(['#FBF7EC', '#22303C', '#6B7276', '#2B4C6F', '#8C2F2B', '#D9C7A3', '#4A4640', '#2A2A2A']));
    expect(text).not.toMatch(/href|url\(|@import|<script/);
    expect(text.match(/https?:[^"]*/g)).toEqual(['http://www.w3.org/2000/svg']);
    expect(text).not.toMatch(/NaN|Infinity|undefined|e-\d/);
  });
});
