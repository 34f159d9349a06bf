import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { figuresOf, type Figure, type FigureKey } from '../src/checks/figures.ts';
import { filesFor } from '../src/exports/fileSet.ts';
import type { Fitting } from '../src/fitting/fitting.ts';
import { readSheet } from '../src/fitting/readSheet.ts';
import { volumeOf } from '../src/geometry/mesh.ts';
import { loadBooleans, type Booleans } from '../src/making/booleans.ts';
import { partsOf } from '../src/pair/shoe.ts';
import { designOf, filesOf, SAMPLES, workedOut } from './exports/jobs.ts';
import { mistakenForCuts } from './support/dxfColours.ts';

/**
 * What a sample is held to. `byHand` was worked out from the sheet beside it, taking
 * at most the build from the program (so it proves little about the build): see the sample's README.
 */
interface Expected {
  readonly byHand: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly byProgram: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly findings: ReadonlyArray<readonly [code: string, severity: string, side: string]>;
  readonly files: number;
}

const NAMES = readdirSync('samples', { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name);
const textOf = (name: string): string => readFileSync(`samples/${name}/sheet.json`, 'utf8');

function fittingOf(text: string): Fitting {
  const reading = readSheet(text);
  if (!reading.ok) throw new Error(reading.faults.map((fault) => fault.text).join('\n'));
  return reading.fitting;
}

let booleans: Booleans;
beforeAll(async () => { booleans = await loadBooleans(); });

test('there are at least five', () => expect(NAMES.length).toBeGreaterThanOrEqual(5));

describe.each(NAMES)('%s', (name) => {
  const expected = JSON.parse(readFileSync(`samples/${name}/expected.json`, 'utf8')) as Expected;
  const made = designOf(SAMPLES[name]!);
  const figure = (side: string, key: string): Figure => {
    const shoe = made.shoes.find((one) => one.side === side)!, found = figuresOf(shoe, made.fitting).find((one) => one.key === (key as FigureKey));
    if (!found) throw new Error(`${name} ${side} has no figure ${key}`);
    return found;
  };

  const told = readFileSync(`samples/${name}/README.md`, 'utf8');

  test('tells its hand sum, each number of it', () => {
    const shown = [...told.matchAll(/−?\d+(\.\d+)?/g)].map(([text]) => Number(text.replace('−', '-')));
    for (const [side, numbers] of Object.entries(expected.byHand)) for (const [key, value] of Object.entries(numbers)) {
      expect([side, key, shown.some((one) => Math.abs(one - value) < 0.0056)]).toEqual([side, key, true]);
    }
  });

  test('says that its measures are nobody\'s to keep', () => {
    expect(told).toContain('The measures are an invented person\'s. Keep none of them in a copied sheet');
  });

  test('comes out as worked by hand, within 0.01 mm or degrees', () => {
    for (const [side, numbers] of Object.entries(expected.byHand)) for (const [key, value] of Object.entries(numbers)) {
      expect([side, key, Math.abs(figure(side, key).value - value) < 0.01]).toEqual([side, key, true]);
    }
    expect(Object.keys(expected.byHand)).toHaveLength(made.shoes.length);
  });

  test('has not changed in weight, foam and roll, to half the last digit shown', () => {
    for (const [side, numbers] of Object.entries(expected.byProgram)) for (const [key, value] of Object.entries(numbers)) {
      const { value: now, digits } = figure(side, key);
      expect([side, key, Math.abs(now - value) < 0.5 * 10 ** -digits]).toEqual([side, key, true]);
    }
  });

  test('gets the findings a careful maker would expect', () => {
    expect(made.findings.map(({ code, severity, side }) => [code, severity, side ?? 'both'])).toEqual(expected.findings);
  });

  // Two of the others are held against another engine's, in the tests of the bench view; what the third asks besides is the same each time in targets/answers.
  test.skipIf(['ferry-pilot', 'bookbinder', 'choir-conductor'].includes(name))('gives the same files, byte for byte, each time it is read', () => {
    const first = filesOf(SAMPLES[name]!), second = filesFor(workedOut(fittingOf(textOf(name))), booleans);
    expect(first).toHaveLength(expected.files);
    first.forEach((file, i) => expect([file.name, Buffer.compare(file.bytes, second[i]!.bytes)]).toEqual([second[i]!.name, 0]));
  }, 60_000);

  test('no line that is not cut has the colour of one that is, in any drawing', () => {
    const drawings = filesOf(SAMPLES[name]!).filter((file) => file.name.endsWith('.dxf'));
    for (const file of drawings) expect([file.name, mistakenForCuts(new TextDecoder().decode(file.bytes))]).toEqual([file.name, []]);
    expect(drawings.length).toBeGreaterThan(3);
  }, 60_000);

  test('made for the other foot, holds and stands the same', () => {
    const sheet = JSON.parse(textOf(name)) as { left?: object; right?: object; wearer: { legDifference: { shorter?: string } } };
    const { left, right, wearer: { legDifference: { shorter } } } = sheet;
    const swapped = { ...sheet, left: right, right: left, wearer: { ...sheet.wearer, legDifference: { ...sheet.wearer.legDifference, ...(shorter ? { shorter: shorter === 'left' ? 'right' : 'left' } : {}) } } };
    const other = workedOut(fittingOf(JSON.stringify(swapped)));
    for (const shoe of made.shoes) {
      const twin = other.shoes.find(({ side }) => side !== shoe.side)!, parts = partsOf(shoe), twins = partsOf(twin);
      expect(twin.stands.seat).toBeCloseTo(shoe.stands.seat, 9);
      expect(twin.stands.ball).toBeCloseTo(shoe.stands.ball, 9);
      if (parts && twins) expect(volumeOf(twins.solids.whole)).toBeCloseTo(volumeOf(parts.solids.whole), 4);
      else expect(Boolean(parts)).toBe(Boolean(twins));
    }
  });
});

test('the picture in the README is what the program draws; to renew it, make the ferry pilot and copy K-207_drawing.svg', () => {
  const drawing = filesOf(SAMPLES['ferry-pilot']!).find((file) => file.name.endsWith('_drawing.svg'))!;
  expect(new TextDecoder().decode(drawing.bytes)).toBe(readFileSync('samples/ferry-pilot/drawing.svg', 'utf8'));
});
