import { expect, test } from 'vitest';
import { boxOf, type Mark, type Words } from '../../src/exports/drawing.ts';
import { framed, heading, introduction, pagesOf, paragraph, space, table, type Block } from '../../src/exports/flow.ts';

const BOX = { left: 10, right: 110, top: 10, bottom: 60 };
const words = (marks: readonly Mark[]): Words[] => marks.filter((mark) => mark.kind === 'text');
const texts = (marks: readonly Mark[]): string[] => words(marks).map(({ text }) => text);
const rows = (count: number): Block[] => table([{ title: 'No', width: 20 }, { title: 'Size', width: 30, right: true }], Array.from({ length: count }, (_, i) => ({ cells: [`row ${i}`, `${i}.0`] })));

test('a table runs on over the page and says its head again', () => {
  const pages = pagesOf(rows(20), BOX);
  expect(pages.length).toBeGreaterThan(1);
  for (const page of pages) expect(texts(page).slice(0, 2)).toEqual(['No', 'Size']);
  expect(pages.flatMap(texts).filter((text) => text.startsWith('row'))).toEqual(Array.from({ length: 20 }, (_, i) => `row ${i}`));
});

test('nothing stands outside the page', () => {
  for (const label of pagesOf([heading('Figures'), introduction('What they are.', 100), ...rows(30), paragraph('word '.repeat(60), 100), framed(['STOP', 'because'], 100)], BOX).flatMap(words)) {
    const { left, top, bottom } = boxOf(label);
    expect(left >= 10 && top >= 10 && bottom <= 60).toBe(true);
  }
});

test('a heading goes with what follows, even through an introduction and the head of a table', () => {
  const pages = pagesOf([space(30), heading('Figures'), introduction('What they are.', 100), ...rows(2)], BOX);
  expect(texts(pages[0]!)).toEqual([]);
  expect(texts(pages[1]!).slice(0, 5)).toEqual(['Figures', 'What they are.', 'No', 'Size', 'row 0']);
});

test('cells to the right end at the edge of their column', () => {
  const sizes = words(pagesOf(rows(3), BOX)[0]!).filter(({ text }) => /^\d\.0$/.test(text));
  expect(sizes).toHaveLength(3);
  for (const { anchor, at: [x] } of sizes) expect([anchor, x]).toEqual(['end', 10 + 50 - 1.2]);
});

test('a long cell is broken into lines and its row grows', () => {
  const [, row] = table([{ title: 'What', width: 30 }], [{ cells: ['as long as it takes to need more than one line'] }]);
  expect(row!.height).toBeGreaterThan(10);
  expect(texts(row!.marks(0, 0)).join(' ')).toBe('as long as it takes to need more than one line');
});
