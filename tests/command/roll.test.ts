import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from '../../src/command/run.ts';
import { stlBytes } from '../../src/exports/stl.ts';
import { mirrored, stretched, type Mesh } from '../../src/geometry/mesh.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { workedOut } from '../exports/jobs.ts';
import { changed, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { contents, emptyFolder, watched } from './fakeWorld.ts';

const left = changed(lockedSheet(), { 'left.order.apex': 65, 'making.chordGap': 0.1 });
const soleOf = (sheet: Json): Mesh => (workedOut(fittingOf(sheet)).shoes[0] as RockerShoe).solids.whole;
const planned = soleOf(left);

/** Every vertex below a height between two places lifted to it, as a grinding wheel held across would leave it. */
function hollowed({ positions, triangles }: Mesh, from: number, to: number, up: number): Mesh {
  const cut = positions.map((value, i) => (i % 3 === 2 && positions[i - 2]! > from && positions[i - 2]! < to ? Math.max(value, up) : value));
  return { positions: cut, triangles };
}

async function rolling(bytes: Uint8Array, words: readonly string[] = [], sheet: Json = left) {
  const here = emptyFolder();
  writeFileSync(join(here, 'sheet.json'), JSON.stringify(sheet));
  writeFileSync(join(here, 'made.stl'), bytes);
  const { world, said } = watched({ here }), exit = await run(['roll', 'sheet.json', 'made.stl', ...words], world);
  expect(Object.keys(contents(here)).sort()).toEqual(['made.stl', 'sheet.json']);
  return { exit, ...said };
}

describe('roll', () => {
  test('the exported sole rolls as it was planned', async () => {
    const { exit, out, err } = await rolling(stlBytes(planned, 'made'));
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out).toMatch(/^Standing point from the heel +([\d.]+) mm( \(est\.\))? +\1 mm +0\.0 mm$/m);
    expect(out.match(/ comes 0\.\d\d mm (above|below) its planned height at most/g)).toHaveLength(2);
    expect(out).toContain('It touches the floor all along, heel to toe.');
  });

  test('one that was hollowed under the standing point says where it does not touch, and what the hip does', async () => {
    const { out } = await rolling(stlBytes(hollowed(planned, 90, 140, 3), 'made'), ['--json']), { figures, gaps, strays } = JSON.parse(out) as {
      readonly figures: readonly { readonly key: string; readonly planned: number; readonly found: number }[];
      readonly gaps: readonly { readonly from: number; readonly to: number; readonly deep: number; readonly hipDips: number }[]; readonly strays: readonly { readonly most: number }[];
    };
    const [gap, ...more] = gaps;
    expect(more).toEqual([]);
    expect([Math.abs(gap!.from - 90) < 8, Math.abs(gap!.to - 140) < 8, gap!.deep > 1.5, gap!.hipDips > 0.1]).toEqual([true, true, true, true]);
    // A chord of an arc lies its sagitta above it, and so do hip and pivot fall at the most.
    expect(Math.max(...strays.map(({ most }) => Math.abs(most)))).toBeLessThan(1.2);
    expect(figures.map(({ key }) => key)).toContain('pivotDrop');
  });

  test('a heel edge ground away shows in what the ankle drops', async () => {
    const worn = { ...planned, positions: planned.positions.map((value, i) => (i % 3 === 2 && planned.positions[i - 2]! < 60 ? value + (60 - planned.positions[i - 2]!) * 0.2 : value)) };
    const { out } = await rolling(stlBytes(worn, 'made'), ['--json']), { figures } = JSON.parse(out) as { readonly figures: readonly { readonly key: string; readonly planned: number; readonly found: number }[] };
    const drop = figures.find(({ key }) => key === 'pivotDrop')!;
    expect(drop.found - drop.planned).toBeLessThan(0.01);
    const hip = figures.find(({ key }) => key === 'hipDropStrike')!;
    expect(hip.found - hip.planned).toBeGreaterThan(0.3);
  });

  test('one that lies as the other shoe would is asked about', async () => {
    const other = { ...planned, positions: planned.positions.map((value, i) => (i % 3 === 2 ? Math.max(value, 12) : value)) };
    expect((await rolling(stlBytes(other, 'made'))).out.replaceAll('\n', ' ')).toContain('That is more than 5 mm: is it this shoe, and does it lie as the exported sole lies?');
    expect((await rolling(stlBytes(planned, 'made'))).out).not.toContain('is it this shoe');
  });

  test('a right sole is read as it was exported', async () => {
    const sheet = changed(left, { left: undefined, right: (left as { readonly left: Json }).left });
    const { exit, out } = await rolling(stlBytes(mirrored(planned), 'made'), ['--side', 'right'], sheet);
    expect(exit).toBe(0);
    expect(out).toContain('It touches the floor all along');
  });

  test('one in inches, the other shoe, another file or a missing one is refused in words', async () => {
    const inches = await rolling(stlBytes(stretched(planned, [1 / 25.4, 1 / 25.4, 1 / 25.4]), 'made'));
    expect(inches).toMatchObject({ exit: 3, out: '', err: expect.stringContaining('Its numbers look like inches; write it in mm.') as string });
    const away = await rolling(stlBytes({ ...planned, positions: planned.positions.map((value, i) => (i % 3 === 0 ? value + 40 : value)) }, 'made'));
    expect(away).toMatchObject({ exit: 3, err: expect.stringContaining('back 40.0 mm, front 40.0 mm') as string });
    expect(await rolling(new Uint8Array(300))).toMatchObject({ exit: 5, err: expect.stringContaining('made.stl cannot be read: it holds no triangle') as string });
    expect(await rolling(stlBytes(planned, 'made'), ['--side', 'right'])).toMatchObject({ exit: 2, err: expect.stringContaining('is no rocker; rockers: left') as string });
    expect(await rolling(stlBytes(planned, 'made'), ['--side', 'middle'])).toMatchObject({ exit: 2, err: expect.stringContaining('--side takes left or right') as string });
  });
});
