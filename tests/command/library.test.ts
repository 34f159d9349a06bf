import { readdirSync, readFileSync } from 'node:fs';
import jscad from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import * as library from '../../src/index.ts';
import { boundsOf, design, dxfText, faultsOf, filesFor, loadBooleans, mirrored, partsOf, readSheet, sheetJsonSchema, stlBytes, stopsLeft, toGeom3, volumeOf, type Booleans, type Design, type NamedFile } from '../../src/index.ts';
import { changed, lockedSheet } from '../fitting/sheets.ts';

/** What a script of one's own would do: every sheet in a folder, one line a job. */
interface Line { readonly reference: string; readonly files: number; readonly stops: number; readonly litres: number }

function batch(sheets: readonly string[], booleans: Booleans): Line[] {
  return sheets.map((text) => {
    const made = designed(text), meshes = made.shoes.flatMap((shoe) => partsOf(shoe)?.solids.whole ?? []);
    return {
      reference: made.fitting.job.reference, files: filesFor(made, booleans).length,
      stops: stopsLeft(made.findings).length,
      litres: meshes.reduce((sum, mesh) => sum + volumeOf(mesh), 0) / 1e6,
    };
  });
}

function designed(text: string): Design {
  const reading = readSheet(text);
  if (!reading.ok) throw new Error(reading.faults.map((fault) => fault.text).join('\n'));
  const designing = design(reading.fitting);
  if (!designing.ok) throw new Error(designing.troubles.map((trouble) => trouble.text).join('\n'));
  return designing.design;
}

const samples = readdirSync('samples').map((name) => readFileSync(`samples/${name}/sheet.json`, 'utf8'));

test('a batch over some samples', async () => {
  const lines = batch(samples.filter((text) => /"K-2(04|19)"/.test(text)), await loadBooleans());
  expect(lines.map(({ reference }) => reference)).toEqual(expect.arrayContaining(['K-204', 'K-219']));
  for (const { files, stops, litres } of lines) {
    expect(files).toBeGreaterThan(5);
    expect(stops).toBe(0);
    // A pair of soles for grown feet; a foot 26 cm long stands on about 0.3 to 1 litre a side.
    expect(litres).toBeGreaterThan(0.2);
    expect(litres).toBeLessThan(3);
  }
});

test('a solid goes on in the modelling language, with the same volume', () => {
  const { shoes } = designed(samples[0]!), mesh = partsOf(shoes[0]!)!.solids.whole;
  const { measurements, geometries } = jscad;
  geometries.geom3.validate(toGeom3(mesh));
  expect(measurements.measureVolume(toGeom3(mesh)) / volumeOf(mesh)).toBeCloseTo(1, 9);
  const right = mirrored(mesh);
  expect(faultsOf(right)).toEqual([]);
  expect(boundsOf(right).most[1]).toBe(-boundsOf(mesh).least[1]);
  expect(stlBytes(right, 'right sole').length).toBe(84 + 50 * (right.triangles.length / 3));
});

test('a drawing of one\'s own', () => {
  const text = dxfText({
    layers: [{ name: 'CARD', colour: 7, lineType: 'CONTINUOUS' }],
    entities: [{ kind: 'piece', layer: 'CARD', piece: { kind: 'line', from: [0, 0], to: [100, 0] } }],
  });
  expect(text).toContain('AcDbLine');
});

test('the schema names itself', () => expect(sheetJsonSchema()).toMatchObject({ $id: 'urn:rockerbench:fitting-sheet:1' }));

describe('the README', () => {
  const readme = readFileSync('README.md', 'utf8');

  test('shows a script that runs, and that makes nothing while a stop is left', async () => {
    const lines = /```ts\nimport \{ (.*) \} from 'rockerbench';\n([^]*?)```/.exec(readme)!, names = lines[1]!.split(', ');
    const AsyncFunction = (async () => {}).constructor as new (...words: string[]) => (...values: unknown[]) => Promise<readonly NamedFile[]>;
    const script = new AsyncFunction('console', 'text', ...names, `${lines[2]} return files;`), values = names.map((name) => library[name as keyof typeof library]);
    const run = (text: string) => script({ log: () => {} }, text, ...values);
    expect((await run(samples[0]!)).length).toBeGreaterThan(5);
    await expect(run(JSON.stringify(changed(lockedSheet(), { 'left.foot.ankleAngle': -8, 'left.order.apex': 65 })))).rejects.toThrow();
    await expect(run('{}')).rejects.toThrow(/units must be given/);
  });

  test('shows an order of what is made besides that can be put into a sheet as it stands', () => {
    const making: unknown = JSON.parse(`{${/```json\n("making": [^]*?)```/.exec(readme)![1]!}}`);
    const { besides, fitting } = designed(JSON.stringify({ ...lockedSheet(), ...(making as object) }));
    expect(Object.keys(fitting.making)).toEqual(expect.arrayContaining(['stack', 'jig', 'templates', 'card']));
    expect(besides).toEqual([]);
  });

  test('names every package the program runs with', () => {
    const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly dependencies: Record<string, string> };
    for (const name of Object.keys(dependencies)) {
      const { license } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8')) as { readonly license: string };
      expect(readme.replace(/\s+/g, ' '), name).toMatch(new RegExp(`${name}( and [^,]*)? \\(${license}\\)`));
    }
  });
});
