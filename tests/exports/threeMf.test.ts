import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { filesFor, type NamedFile } from '../../src/exports/fileSet.ts';
import { printFiles } from '../../src/exports/printFiles.ts';
import { stlBytes } from '../../src/exports/stl.ts';
import { weldedStl } from '../../src/geometry/stlMesh.ts';
import { threeMfBytes } from '../../src/exports/threeMf.ts';
import type { PrintOrder } from '../../src/fitting/making.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { boundsOf, faultsOf, mirrored, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { madeFor } from '../../src/making/made.ts';
import { heading } from '../../src/making/print/turns.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { designOf, JOBS } from './jobs.ts';

// A small reader of its own, after the 3MF Core Specification (from memory): vertices, triangles and the row-times-matrix transform of each item.

interface Read { readonly name: string; readonly mesh: Mesh; readonly placed: Mesh }

const attribute = (tag: string, name: string): string => new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
const tags = (xml: string, name: string): string[] => [...xml.matchAll(new RegExp(`<${name}\\b[^>]*>`, 'g'))].map(([tag]) => tag);

/** Every tag is closed by its own name, in order. */
function requireWellFormed(xml: string): void {
  const open: string[] = [];
  for (const [tag, slash, name] of xml.replace(/<\?xml[^>]*\?>/, '').matchAll(/<(\/?)([\w:]+)[^<>]*>/g)) {
    if (tag.endsWith('/>')) continue;
    if (slash) expect(open.pop()).toBe(name); else open.push(name!);
  }
  expect(open).toEqual([]);
  expect(xml.replace(/<[^<>]*>/g, '')).not.toMatch(/[<>]/);
}

function read(bytes: Uint8Array): { readonly unit: string; readonly parts: Read[] } {
  const files = unzipSync(bytes);
  expect(Object.keys(files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
  const [types, relations, xml] = Object.values(files).map((file) => new TextDecoder().decode(file)) as [string, string, string];
  for (const text of [types, relations, xml]) requireWellFormed(text);
  expect(attribute(tags(relations, 'Relationship')[0]!, 'Target')).toBe('/3D/3dmodel.model');
  expect(types).toContain('application/vnd.ms-package.3dmanufacturing-3dmodel+xml');
  const objects = new Map([...xml.matchAll(/<object\b[^>]*>[\s\S]*?<\/object>/g)].map(([text]) => [attribute(text, 'id'), text]));
  const parts = tags(xml, 'item').map((item): Read => {
    const text = objects.get(attribute(item, 'objectid'))!, m = attribute(item, 'transform').split(' ').map(Number);
    const three = (form: RegExp): number[] => [...text.matchAll(form)].flatMap(([, a, b, c]) => [Number(a), Number(b), Number(c)]);
    const mesh = { positions: Float64Array.from(three(/<vertex x="([-\d.]+)" y="([-\d.]+)" z="([-\d.]+)"\/>/g)), triangles: Uint32Array.from(three(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"\/>/g)) };
    const positions = mesh.positions.map((_, i) => { const at = i - (i % 3), k = i % 3; return mesh.positions[at]! * m[k]! + mesh.positions[at + 1]! * m[3 + k]! + mesh.positions[at + 2]! * m[6 + k]! + m[9 + k]!; });
    return { name: attribute(/<object\b[^>]*>/.exec(text)![0], 'name'), mesh, placed: { positions, triangles: mesh.triangles } };
  });
  return { unit: attribute(tags(xml, 'model')[0]!, 'unit'), parts };
}

const ORDER: PrintOrder = { part: 'foam body', split: false, pin: 6, clearance: 0.25 };
const withPrint = (fitting: Fitting, change: Partial<PrintOrder> = {}, size?: number): Fitting =>
  ({ ...fitting, making: { ...fitting.making, chordGap: 0.4, print: { ...ORDER, ...change }, ...(size && { printBed: { x: size, y: size, z: 200 } }) } });
const file = (files: readonly NamedFile[], ending: string): Uint8Array => files.find(({ name }) => name.endsWith(ending))!.bytes;

let kernel: Booleans;
beforeAll(async () => { kernel = await loadBooleans(); });

describe('the 3MF of a job', () => {
  test('holds both shoes by name, in mm, each the same as its STL, standing apart on the bed', () => {
    const design = designOf(withPrint(JOBS.pair)), { making } = design.fitting, files = printFiles(madeFor(design, kernel).prints, 'K-204', making), { unit, parts } = read(file(files, '_print.3mf'));
    expect(files.map(({ name }) => name)).toEqual(['K-204_print.3mf']);
    expect(unit).toBe('millimeter');
    expect(parts.map(({ name }) => name)).toEqual(['K-204 left foam body', 'K-204 right foam body']);
    parts.forEach(({ mesh, placed }, i) => {
      const foam = partsOf(design.shoes[i]!)!.solids.foam, stl = weldedStl(stlBytes(i === 0 ? foam : mirrored(foam), 'foam'));
      expect(faultsOf(mesh)).toEqual([]);
      expect(mesh.triangles).toEqual(stl.triangles);
      expect(Math.max(...mesh.positions.map((value, k) => Math.abs(value - stl.positions[k]!)))).toBeLessThan(1e-6);
      expect(volumeOf(placed) / volumeOf(stl)).toBeCloseTo(1, 6);
      expect(boundsOf(placed).least[2]).toBeCloseTo(0, 5);
      for (const k of [0, 1] as const) expect(boundsOf(placed).least[k]).toBeGreaterThanOrEqual(5 - 1e-6);
    });
    const [left, right] = parts.map(({ placed }) => boundsOf(placed));
    expect(right!.least[1]).toBeGreaterThan(left!.most[1] + 4.9);
  });

  test('in two parts there is an STL of each, and a 3MF for every bed they need', () => {
    const files = filesFor(designOf(withPrint(JOBS.pair, { split: true }, 210)), kernel), beds = files.filter(({ name }) => name.endsWith('.3mf'));
    expect(files.filter(({ name }) => /print.*stl$/.test(name)).map(({ name }) => name)).toEqual(['left', 'right'].flatMap((side) => ['heel-part', 'forepart'].map((part) => `K-204_${side}_print-${part}.stl`)));
    const parts = beds.flatMap(({ bytes }) => read(bytes).parts);
    expect(parts.map(({ name }) => name)).toEqual(['left', 'right'].flatMap((side) => ['heel part', 'forepart'].map((part) => `K-204 ${side} ${part}`)));
    for (const { placed } of parts) for (const k of [0, 1, 2] as const) {
      expect(boundsOf(placed).least[k]).toBeGreaterThanOrEqual(k === 2 ? -1e-5 : 5 - 1e-5);
      expect(boundsOf(placed).most[k]).toBeLessThanOrEqual(k === 2 ? 195 : 205 + 1e-5);
    }
    const json = JSON.parse(new TextDecoder().decode(file(files, '_design.json'))) as { shoes: { print: { side: string; joint: { pinMm: number }; pieces: { volumeMm3: number }[] } }[] };
    const prints = json.shoes.map(({ print }) => print);
    expect(prints.map(({ side, joint }) => [side, joint.pinMm])).toEqual([['left', 6], ['right', 6]]);
    prints.flatMap(({ pieces }) => pieces).forEach(({ volumeMm3 }, i) => expect(volumeMm3 / volumeOf(parts[i]!.mesh)).toBeCloseTo(1, 4));
  });

  test('same parts, same bytes; names may hold any letter; an open mesh is refused', () => {
    const corner: Mesh = { positions: Float64Array.from([0, 0, 0, 9, 0, 0, 0, 9, 0, 0, 0, 9]), triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]) };
    const part = { name: 'A<&">', mesh: corner, turn: heading(Math.PI / 2), by: [10, 20, 0] as const }, bytes = threeMfBytes([part], 'B & <C>');
    expect(threeMfBytes([part], 'B & <C>')).toEqual(bytes);
    const [read0] = read(bytes).parts;
    expect(read0!.name).toBe('A&lt;&amp;&quot;&gt;');
    // By hand: a quarter turn to the left brings x to y and y to -x, then it is moved.
    const { least, most } = boundsOf(read0!.placed), whole = (value: number): number => Math.round(value * 1e6) / 1e6;
    expect([least.map(whole), most.map(whole)]).toEqual([[1, 20, 0], [10, 29, 9]]);
    expect(() => threeMfBytes([{ ...part, mesh: { ...corner, triangles: corner.triangles.slice(0, 9) } }], 'D')).toThrow(/would not be closed/);
  });
});
