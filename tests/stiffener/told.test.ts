import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { stiffenerTable } from '../../src/command/stiffenerTable.ts';
import { packNumbers } from '../../src/exports/packNumbers.ts';
import { packsCounted } from '../../src/designWith.ts';
import { inShort, layersDown } from '../../src/stiffener/layers.ts';
import { packFor } from '../../src/stiffener/pack.ts';
import { designOf, SAMPLES } from '../exports/jobs.ts';

const fitting = SAMPLES['market-gardener']!, job = designOf(fitting), shoe = job.shoes.find(({ kind }) => kind === 'rocker')!;
const pack = shoe.kind === 'rocker' ? packFor(shoe, job.fitting)! : undefined!;

/** Every number anywhere in a value. */
const numbersIn = (value: unknown): number[] => (typeof value === 'number' ? [value] : value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : []);

test('the sample asks for a rigid sole and gets one that keeps to all', () => {
  expect(readFileSync('samples/market-gardener/sheet.json', 'utf8')).toContain('"wanted": "rigid"');
  expect([pack.keeps, pack.assessed.grade, pack.thickness <= 8]).toEqual(['all', 'rigid', true]);
});

test('design.json tells it from the last down, with other ways, the assumptions and numbers along the sole, each finite', () => {
  const told = packNumbers(pack) as { fromTheLastDown: { what: string }[]; alternatives: { way: string; keepsTo: string }[]; assumptions: object[]; along: object[] };
  expect(told.fromTheLastDown.map(({ what }) => what)).toEqual(layersDown(pack).map(({ what }) => what));
  expect(told.alternatives.map(({ way, keepsTo }) => [way, keepsTo])).toEqual(expect.arrayContaining([['plies alone', 'not'], ['around leather board', 'must'], ['around cork', 'not'], ['some plies under the foam body', 'not']]));
  expect(told.assumptions.length).toBe(2);
  expect(told.along.length).toBeGreaterThan(100);
  expect(numbersIn(told).every(Number.isFinite)).toBe(true);
});

test('check --stiffener prints the plies and the ways beside each other, no wider than the screen', () => {
  for (const columns of [80, 120]) {
    const text = stiffenerTable(job, columns);
    expect(text.replaceAll(/\s+/g, ' ')).toContain(`right stiffener, as found ${inShort(pack.stiffener, false, pack.plate)}`);
    expect(text).toMatch(/from the last down +thick +angle +where\ncarbon \w+ \d+ +0\.\d\d mm +0(°|\/90°) +(all along|\d+ mm to)/);
    expect(text.replaceAll(/\s+/g, ' ')).toMatch(/plies alone: 5 |plies alone: [^.]* 5 \d\.\d mm \d+ g/);
    expect(text).toMatch(/core shear: how many times walking and a stumble may grow/);
    if (columns === 80) expect(text).toMatch(/\n1 +as found +\d/);
    expect(text.replaceAll(/\s+/g, ' ')).toMatch(/What decides it: .* It has least to spare of .*What is taken as usual and changes it most: .*How sure the bend is: The birch plywood is as soft or as stiff as any sold under that name/);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(columns);
  }
  expect(stiffenerTable({ ...job, shoes: [] }, 80)).toContain('No stiffener is wanted or laid');
});

test('who works on from the fitting alone takes the pack as counted', () => {
  const { order } = packsCounted(fitting).shoes.right!;
  expect(order.kind === 'rocker' && [order.stiffener, order.packGrams]).toEqual([pack.thickness, pack.grams.pack]);
  expect(packsCounted(SAMPLES['baker']!)).toBe(SAMPLES['baker']);
});
