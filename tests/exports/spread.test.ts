import { expect, test } from 'vitest';
import { designWith, type Design } from '../../src/designWith.ts';
import type { Mark } from '../../src/exports/drawing.ts';
import { bandBlock } from '../../src/exports/bandDrawing.ts';
import { sideDrawing } from '../../src/exports/sideDrawing.ts';
import { sampleNumbers, spreadNumbers } from '../../src/exports/spreadNumbers.ts';
import { spreadSection } from '../../src/exports/spreadSection.ts';
import { spreadTable } from '../../src/command/spreadTable.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { linearSpread } from '../../src/spread/linear.ts';
import { sampledSpread } from '../../src/spread/sampled.ts';
import { fittingOf, pairSheet } from '../fitting/sheets.ts';

const designing = designWith(() => [], fittingOf(pairSheet()), 'quick');
if (!designing.ok) throw new Error('the sheet of a pair has a shape');
const design: Design = designing.design, [rocker] = linearSpread(design);
const said = (marks: readonly Mark[]): string => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');

test('the all-figures paper names the measure to take again for each shoe, and its five that decide most', () => {
  const text = said(spreadSection(design).flatMap(({ marks }) => marks(12, 12)));
  expect(text).toMatch(/Left shoe Find the fixed ankle angle on heel plates with a plumb line: 1° more there moves the standing point forward by 14\.\d mm\./);
  expect(text).toMatch(/Right shoe Find the fixed ankle angle \(left\)|Right shoe Find the fixed ankle angle on heel plates/);
  expect(text.match(/more moves the/g)!.length).toBeGreaterThan(8);
});

test('the band lies about the ground face, in the drawing of the sole as in the block of the all-figures paper, and only where it is asked for', () => {
  const shape = partsOf(design.shoes[0]!)!.shape, band = rocker!.band!, marks = bandBlock(shape, band, 186).marks(12, 12);
  expect(band.every(({ low, ground, high }) => low < ground && ground < high)).toBe(true);
  const dashed = marks.filter((mark) => mark.kind === 'line' && mark.line === 'hidden');
  expect(dashed).toHaveLength(2);
  const plain = sideDrawing(design, { width: 420, height: 297 }), banded = sideDrawing(design, { width: 420, height: 297 }, undefined, { left: band });
  const added = banded.marks.filter((mark) => !plain.marks.some((one) => JSON.stringify(one) === JSON.stringify(mark)));
  expect([banded.marks.length - plain.marks.length, added.length, said(added)]).toEqual([3, 3, 'Dashed: where the ground face may lie under the last, nine times in ten']);
  // No number of the drawing lies below the dashes.
  const lastEdge = banded.marks.findLastIndex((mark) => added.includes(mark) && mark.kind === 'line'), firstNumber = banded.marks.findIndex((mark) => mark.kind === 'text' && / thick, /.test(mark.text));
  expect(lastEdge).toBeLessThan(firstNumber);
});

test('every number that is written is finite', () => {
  const numbers = JSON.stringify([...linearSpread(design).map(spreadNumbers), ...sampledSpread(design, { samples: 40, seed: 1, every: 10 }).map(sampleNumbers)]);
  expect(numbers).not.toMatch(/null/);
  expect(numbers).toMatch(/"field":"foot\.ankleAngle"/);
});

test('the command prints both shoes within the width of the screen', () => {
  const lines = spreadTable(design, 100, { samples: 40, seed: 1, every: 10 }).split('\n');
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  expect(lines.filter((line) => /^(left|right) shoe \((rocker|match)\)$/.test(line))).toHaveLength(2);
  expect(lines.some((line) => /^standing point +\d+\.\d mm +\d+\.\d +\d+\.\d +\d+\.\d$/.test(line))).toBe(true);
});
