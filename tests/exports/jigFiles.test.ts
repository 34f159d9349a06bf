import { expect, test } from 'vitest';
import { jigFiles } from '../../src/exports/jigFiles.ts';
import { jigNumbers } from '../../src/exports/jigNumbers.ts';
import { jigPaper } from '../../src/exports/jigPaper.ts';
import { weldedStl } from '../../src/geometry/stlMesh.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { boundsOf, faultsOf } from '../../src/geometry/mesh.ts';
import { jigsFor } from '../../src/making/jig/ordered.ts';
import { readDxf } from '../support/dxfReader.ts';
import { designOf, job, JOBS, rocker } from './jobs.ts';

const design = designOf({ ...JOBS.alone, making: readMaking({ chordGap: 0.4, jig: { bush: { diameter: 17, cutter: 12 }, face: 'foam body' }, board: { thickness: 6, kerf: 3 } }) });
const jigs = jigsFor(design), made = { jigs }, files = jigFiles(design, made);

test('a jig leaves as boards, a solid and a paper, named by job and side; the same design gives the same bytes', () => {
  const boards = 1 + Math.max(...jigs[0]!.boards.placed.map(({ sheet }) => sheet));
  expect(files.map(({ name }) => name)).toEqual([...Array.from({ length: boards }, (_, i) => `K-206_right_jig-board-${i + 1}.dxf`), 'K-206_right_jig.stl', 'K-206_right_jig.pdf']);
  jigFiles(design, { jigs: jigsFor(design) }).forEach(({ bytes }, i) => expect(Buffer.from(bytes).equals(Buffer.from(files[i]!.bytes))).toBe(true));
  const solid = weldedStl(files.at(-2)!.bytes);
  expect(faultsOf(solid)).toEqual([]);
  expect(boundsOf(solid).most[2]).toBeLessThan(jigs[0]!.jig.frame.zero);
});

test('a board without clearance leaves a closed solid too, though its parts touch', () => {
  const tight = designOf({ ...JOBS.alone, making: readMaking({ chordGap: 0.4, jig: { ribsApart: 120 }, board: { clearance: 0 } }) });
  expect(faultsOf(weldedStl(jigFiles(tight, { jigs: jigsFor(tight) }).at(-2)!.bytes))).toEqual([]);
});

test('every part is cut once, on its board, and is lettered', () => {
  const sheets = files.filter(({ name }) => name.endsWith('.dxf')).map(({ bytes }) => readDxf(new TextDecoder().decode(bytes))), { parts } = jigs[0]!.jig;
  expect(sheets.reduce((sum, { chains }) => sum + chains('CUT_OUT').length, 0)).toBe(parts.length);
  for (const { entities } of sheets) for (const { at, layer } of entities) if (layer === 'CUT_OUT') for (const share of [0, 0.5, 1]) {
    const [x, y] = at(share);
    expect(x > 0 && x < 600 && y > 0 && y < 400).toBe(true);
  }
  const letters = sheets.flatMap((sheet) => sheet.letters.map(({ text }) => text));
  for (const wanted of ['A', 'J', 'rail, inner side: K-206 right 2025-03-01', 'edge 2.5 mm inside the foam body, outsole not on: bush 17, cutter 12', 'stringer, outer side: K-206 right 2025-03-01', 'apex', 'heel']) expect(letters).toContain(wanted);
});

test('the paper and the numbers say what the rails are', () => {
  const text = jigPaper(design, jigs[0]!).flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))).join(' ');
  for (const wanted of ['spindle level and square across the shoe', 'from the base', 'router on its side', '(bush - cutter) / 2 = 2.5 mm', 'slots of 6.1 mm', '100 mm on paper', 'Clamp the jig to the bench', 'Thick without the outsole']) expect(text.replace(/\s+/g, ' ')).toContain(wanted);
  const { jig } = jigNumbers(made, 'right') as { jig: { bushOffsetMm: number; edgeInsideGroundFaceMm: number; leftUnderLast: { mm: number }[]; rail: { radiusMm: number }[] } };
  expect(jig).toMatchObject({ bushOffsetMm: 2.5, edgeInsideGroundFaceMm: 4.5, slotMm: 6.1 });
  // By the profile itself: the toe arc is given as 260 mm.
  expect(jig.rail.at(-1)!.radiusMm).toBeCloseTo(260 - 4.5, 9);
  expect(jigNumbers(made, 'left')).toEqual({});
});

test('what rests on an estimate is marked on the paper as on every other', () => {
  const words = (change: Parameters<typeof rocker>[3]): string => {
    const made = designOf(job('K-212', { left: rocker('left', {}, { camber: { value: 0, origin: 'measured' } }, { strikeAngle: { value: 0.4363, origin: 'measured' }, ...change }) }, { making: readMaking({ jig: {} }) }));
    return jigPaper(made, jigsFor(made)[0]!).flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))).join(' ').replace(/\s+/g, ' ');
  };
  const estimate = { value: 890, origin: 'estimated', rule: 'half the stature' } as const;
  expect(words({ hipHeight: estimate })).toMatch(/mid arc, rear [\d.]+ mm \(est\.\).* seat \d+ mm from the heel [\d.]+ mm \(est\.\) [\d.]+ mm \(est\.\)/);
  expect(words({})).not.toContain('(est.)');
});
