import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cautionsFor } from '../../src/checks/cautions.ts';
import { figuresOf } from '../../src/checks/figures.ts';
import { boxOf, grown, overlap, type Drawing, type Words } from '../../src/exports/drawing.ts';
import { jobSheet, jobSheetPdf } from '../../src/exports/jobSheet.ts';
import { inShort } from '../../src/exports/jobSheetWords.ts';
import { printable } from '../../src/exports/pdf.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { RISKS } from '../../src/fitting/words.ts';
import { pointOn } from '../../src/geometry/path.ts';
import { ALL_JOBS, designOf, job, JOBS, remembered, rocker, SAMPLES } from './jobs.ts';
import { readPdf } from './pdfReader.ts';

/** Nothing on the sheet may be smaller; most is at least this. Millimetres of 7 and of 9 points. */
const SEVEN = (7 * 25.4) / 72, NINE = (9 * 25.4) / 72;

const good = readSheet(readFileSync('tests/cases/sheets/good.json', 'utf8'));
if (!good.ok) throw new Error('the good sheet of the cases can be read');

const { wearer: { mass: _, ...unweighed } } = JOBS.rockers, LONG = 'seen on the fifth, healed, dressing stays on and is looked at every evening until it is closed for two weeks';
/** As much to say as one job can have: every risk, both stops taken at length, long names, nobody weighed, guessed outlines. */
const CROWDED: Fitting = {
  ...JOBS.rockers, wearer: { ...unweighed, risks: [...RISKS] },
  job: { ...JOBS.rockers.job, reference: 'a-very-long-reference_2025.03-secondpair', maker: 'M'.repeat(80), prescriber: 'W'.repeat(80), note: 'stands on stone floors all day, '.repeat(14) },
  overrides: (['OPEN_WOUND', 'FUSION_NOT_RELEASED'] as const).map((code) => ({ code, by: `Dr ${'Longname '.repeat(6)}`, reason: LONG.repeat(4) })),
};
const SHEETS: Readonly<Record<string, Fitting>> = {
  ...ALL_JOBS, 'good case': good.fitting, crowded: CROWDED, 'in inches': { ...SAMPLES['baker']!, units: 'in' }, 'crowded in inches': { ...CROWDED, units: 'in' },
  'alone without a flat': job('K-1', { left: rocker('left', { standingFlat: 0 }) }),
};
const FILES = [{ name: 'K-204_design.json', sha256: 'c0ffee11'.repeat(8) }];
const sheetOf = remembered((fitting: Fitting): Drawing => jobSheet(designOf(fitting), FILES));
const wordsOn = (fitting: Fitting): readonly Words[] => sheetOf(fitting).marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
const said = (fitting: Fitting): string => wordsOn(fitting).map(({ text }) => text).join(' ');

describe.each(Object.keys(SHEETS))('the job sheet of %s', (name) => {
  const fitting = SHEETS[name]!;

  test('is one page, lying down', () => {
    const pages = readPdf(jobSheetPdf(designOf(fitting), FILES));
    expect(pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual([[297, 210]]);
    const lengths = pages[0]!.strokes.map(({ from: [ax, ay], to: [bx, by] }) => [Math.abs(bx - ax), Math.abs(by - ay)] as const);
    expect([lengths.some(([x, y]) => Math.abs(x - 100) < 0.001 && y < 0.001), lengths.some(([x, y]) => x < 0.001 && Math.abs(y - 100) < 0.001)]).toEqual([true, true]);
  });

  test('nothing runs off it, no words on words, none smaller than 7 points', () => {
    const { marks, paper } = sheetOf(fitting), texts = wordsOn(fitting).map((one) => [one.text, grown(boxOf(one), -0.35)] as const), off: string[] = [];
    const inside = (x: number, y: number): boolean => x > 3 && x < paper.width - 3 && y > 3 && y < paper.height - 3;
    for (const mark of marks) for (const piece of mark.kind === 'text' ? [] : mark.path) for (const t of [0, 0.5, 1]) { const [x, y] = pointOn(piece, t); if (!inside(x, y)) off.push(`${x} ${y}`); }
    for (const [text, { left, right, top, bottom }] of texts) if (!inside(left, top) || !inside(right, bottom)) off.push(text);
    expect(off).toEqual([]);
    expect(texts.flatMap(([text, box], i) => texts.slice(i + 1).filter(([, other]) => overlap(box, other)).map(([other]) => `${text} / ${other}`))).toEqual([]);
    expect(wordsOn(fitting).filter(({ size }) => size < SEVEN).map(({ text }) => text)).toEqual([]);
  });

  test('every stop is on it, and a warning or note that is not is counted, with where it stands', () => {
    const text = said(fitting), more = `${fitting.job.reference}_all-figures.pdf`, { findings } = designOf(fitting), stops = findings.filter(({ severity }) => severity === 'stop');
    for (const { text: words } of stops) expect(text).toContain(words.split(' ').slice(0, 4).join(' '));
    const told = inShort(designOf(fitting), more).filter(({ heads, text: one }) => !heads && text.includes(one.split(' ').slice(0, 3).join(' '))).length, all = inShort(designOf(fitting), more).filter(({ heads }) => !heads).length;
    expect(told === all || new RegExp(`And \\d+ more: see ${more.slice(0, 12)}`).test(text), text).toBe(true);
  });
});

test('most of what stands on a sheet of a plain pair is 9 points or more', () => {
  const words = wordsOn(JOBS.pair), letters = (of: readonly Words[]): number => of.reduce((sum, { text }) => sum + text.length, 0);
  expect(letters(words.filter(({ size }) => size >= NINE)) / letters(words)).toBeGreaterThan(0.55);
});

test('the numbers a maker sets by are those of the figures, for each shoe', () => {
  const text = said(JOBS.pair), design = designOf(JOBS.pair);
  for (const shoe of design.shoes) for (const { key, value } of figuresOf(shoe, design.fitting)) {
    if (['seatHeight', 'heelHeightBack', 'ballHeight', 'toeSpringOfShoe', 'apex', 'standingPoint', 'swayArcBack', 'swayArcFront', 'pivotDrop'].includes(key)) expect(text).toContain(`${(Math.abs(value) < 0.05 ? 0 : value).toFixed(1)} mm`);
  }
  expect(text).toContain('sheet 1, c0ffee11');
});

test('a stop taken stands with its name and reason; the crowded sheet names both', () => {
  expect(said(JOBS.alone)).toContain('STOP taken by Dr A. Example: wound closed since 2025-02-20, dressing removed');
  expect(said(CROWDED).match(/STOP taken by Dr Longname/g)).toHaveLength(2);
  expect(said(JOBS.pair)).not.toContain('STOP taken');
});

test('the caution stands once: plain where no risk is ticked, in larger letters where one is', () => {
  const sizeOf = (fitting: Fitting, word: string): readonly number[] => wordsOn(fitting).filter(({ text }) => text.startsWith(word)).map(({ size }) => size);
  const plain = sizeOf(JOBS.pair, 'Rolling soles can make'), loud = sizeOf(SAMPLES['baker']!, 'Danger of falling');
  expect([plain.length, loud.length, loud[0]! > plain[0]!]).toEqual([1, 1, true]);
  expect(cautionsFor(JOBS.pair).some((caution) => caution.startsWith('Rolling soles can make'))).toBe(true);
});

test('estimates are marked, and named', () => {
  const text = said(SAMPLES['market-gardener']!);
  expect(text).toMatch(/15\.9 mm est\./);
  expect(text).toContain('Right: ankle pivot height, hip height');
});

test('an inch sheet tells lengths in inches too', () => expect(printable(said(SHEETS['in inches']!))).toMatch(/32\.5 mm \(1\.28 in\) est\./));
