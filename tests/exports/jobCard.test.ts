import { describe, expect, test } from 'vitest';
import { filesFor } from '../../src/exports/fileSet.ts';
import { jobCardPdf } from '../../src/exports/jobCard.ts';
import { printable } from '../../src/exports/pdf.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { jobCardFor } from '../../src/making/card/card.ts';
import { HAZARDS } from '../../src/making/card/hazards.ts';
import { madeFor } from '../../src/making/made.ts';
import { designOf, JOBS, SAMPLES } from './jobs.ts';
import { readPdf, type PdfPage } from './pdfReader.ts';

const said = (text: string): string => Buffer.from(printable(text), 'latin1').toString('latin1');
const withCard = (fitting: Fitting): Fitting => ({ ...fitting, making: { ...fitting.making, chordGap: 0.5, card: {} } });
const bytesOf = (fitting: Fitting): Uint8Array => { const design = designOf(withCard(fitting)); return jobCardPdf(design, madeFor(design, undefined)); };
const pagesOf = (fitting: Fitting): PdfPage[] => readPdf(bytesOf(fitting));
const all = (pages: readonly PdfPage[]): string => pages.flatMap(({ words }) => words).join(' ');

describe('the job card', () => {
  const bytes = bytesOf(JOBS.pair), pages = readPdf(bytes), text = all(pages), card = jobCardFor(designOf(withCard(JOBS.pair)), { moulds: [], blocks: [] });

  test('is A4, with 100 mm both ways on its first page', () => {
    for (const { width, height } of pages) expect([width, height]).toEqual([expect.closeTo(210, 1), expect.closeTo(297, 1)]);
    const bars = pages[0]!.strokes.map(({ from: [ax, ay], to: [bx, by] }) => [Math.abs(bx - ax), Math.abs(by - ay)] as const);
    expect([bars.some(([x, y]) => Math.abs(x - 100) < 0.001 && y < 0.001), bars.some(([x, y]) => x < 0.001 && Math.abs(y - 100) < 0.001)]).toEqual([true, true]);
  });

  test('every step, time, basis, number and caution is there; a caution says so beside each', () => {
    const first = (sentence: string): string => said(sentence).split(' ').slice(0, 4).join(' ');
    for (const { step } of card.phases.flatMap(({ steps }) => steps)) {
      for (const sentence of [step.name, step.how, ...(step.wait ? [step.wait.time, step.wait.basis] : []), ...step.hazards.map((hazard) => HAZARDS[hazard])]) expect(text).toContain(first(sentence));
      for (const { values } of step.targets) for (const { text: value } of values) for (const word of said(value).split(' ')) expect(text).toContain(word);
    }
    for (const { name } of [...card.before, ...card.after]) expect(text).toContain(first(name));
    const cautions = card.phases.flatMap(({ steps }) => steps.flatMap(({ step }) => step.hazards)).length;
    expect(pages.flatMap(({ words }) => words).filter((words) => words === 'CAUTION')).toHaveLength(cautions);
  });

  test('a clock for every time: start and end', () => {
    const times = card.phases.flatMap(({ steps }) => steps.filter(({ step }) => step.wait)).length, words = pages.flatMap((page) => page.words);
    expect([words.filter((one) => one === 'start').length, words.filter((one) => one === 'end').length]).toEqual([times, times]);
  });

  test('every page names job, date and number, and keeps off the paper\'s edge', () => pages.forEach(({ words, strokes }, i) => {
    for (const one of ['K-204   2025-03-01', `sheet ${i + 1} of ${pages.length}`]) expect(words).toContain(one);
    for (const { from, to } of strokes) for (const [x, y] of [from, to]) expect([x > 5, x < 205, y > 5, y < 292]).toEqual([true, true, true, true]);
  }));

  test('a stop somebody took stands on every page', () => {
    for (const { words } of pagesOf(JOBS.alone)) expect(words.join(' ')).toContain('STOP taken by Dr A. Example: wound closed since 2025-02-20, dressing removed');
  });

  test.each([['turned', JOBS.turned], ['market-gardener', SAMPLES['market-gardener']!]])('a job like %s has its card', (_, fitting) => {
    expect(pagesOf(fitting).length).toBeGreaterThan(5);
  });

  test('the same job gives the same bytes', () => {
    expect(bytesOf(JOBS.pair)).toEqual(bytes);
  });

  test('comes as a file when it is ordered', () => {
    expect(filesFor(designOf(withCard(JOBS.alone))).map(({ name }) => name)).toContain('K-206_job-card.pdf');
  });
});
