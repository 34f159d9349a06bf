import { beforeAll, describe, expect, test } from 'vitest';
import { blockText } from '../../src/exports/blockText.ts';
import { filesFor, type NamedFile } from '../../src/exports/fileSet.ts';
import type { Making } from '../../src/fitting/making.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { blockOf, plannedBlock } from '../../src/making/block/block.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { designOf, job, match, rocker } from './jobs.ts';
import { readPdf } from './pdfReader.ts';

/** A pair of twins, so that the right block must be the mirror image of the left one. */
const twins = (making: Making) => designOf(job('K-300', { left: rocker('left', { crestAngle: Math.PI * 0.53 }), right: rocker('right', { crestAngle: Math.PI * 0.53 }) }, { making }));

let kernel: Booleans, files: readonly NamedFile[], once: readonly NamedFile[];
beforeAll(async () => {
  kernel = await loadBooleans();
  files = filesFor(twins(readMaking({ chordGap: 1, block: {}, tool: { diameter: 12, reach: 60 } })), kernel);
  once = filesFor(twins(readMaking({ chordGap: 1, block: { faces: 'upper face' } })), kernel);
});
const bytesOf = (ending: string, from = files): Uint8Array => from.find(({ name }) => name.endsWith(ending))!.bytes;
const textOf = (ending: string): string => Buffer.from(bytesOf(ending)).toString('latin1');

/** Corners of a binary STL, each once. */
function corners(bytes: Uint8Array): [number, number, number][] {
  const view = new DataView(bytes.buffer, bytes.byteOffset), found = new Map<string, [number, number, number]>();
  for (let i = 0; i < view.getUint32(80, true); i++) for (let k = 0; k < 3; k++) {
    const at = 84 + 50 * i + 12 + 12 * k, point = [0, 4, 8].map((off) => view.getFloat32(at + off, true)) as [number, number, number];
    found.set(point.join(), point);
  }
  return [...found.values()];
}
const sorted = (points: readonly (readonly number[])[]): string[] => points.map((point) => point.map((value) => (Math.round(value * 100) / 100 + 0).toFixed(2)).join()).sort();

describe('the files of a block', () => {
  test('a solid and a drawing a set-up, and one set-up sheet', () => {
    expect(files.map(({ name }) => name).filter((name) => name.includes('block'))).toEqual([
      'K-300_left_block-1.stl', 'K-300_left_block-1.dxf', 'K-300_left_block-2.stl', 'K-300_left_block-2.dxf',
      'K-300_right_block-1.stl', 'K-300_right_block-1.dxf', 'K-300_right_block-2.stl', 'K-300_right_block-2.dxf', 'K-300_block.pdf',
    ]);
    expect(once.map(({ name }) => name).filter((name) => name.includes('left_block'))).toEqual(['K-300_left_block-1.stl', 'K-300_left_block-1.dxf']);
  });

  test('the right block is the left one in a mirror, in both set-ups', () => {
    for (const n of [1, 2]) {
      const left = corners(bytesOf(`left_block-${n}.stl`)), right = corners(bytesOf(`right_block-${n}.stl`));
      expect(sorted(right)).toEqual(sorted(left.map(([x, y, z]) => [x, -y, z])));
    }
  });

  test('zero is the middle of the heel end: the heel lies near it, the toe far from it', () => {
    const points = corners(bytesOf('left_block-1.stl')), xs = points.map(([x]) => x), ys = points.map(([, y]) => y);
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([0, 380, -85, 85]);
    const { shoes: [left] } = JSON.parse(Buffer.from(bytesOf('_design.json')).toString('utf8')) as { shoes: { block: { heelMm: number[]; partFromMm: number; partToMm: number; heightMm: number; dowels: { xMm: number; yMm: number }[]; tabs: unknown[]; setUps: { pocketDepthMm: number; stickOutMm: number; stepOverMm: number }[] } }[] };
    expect(left!.block.heelMm[0]).toBeGreaterThan(20);
    expect(left!.block.heelMm[0]).toBeLessThan(80);
    expect(left!.block.partToMm).toBeLessThanOrEqual(left!.block.heightMm - 1 + 1e-6);
    expect(left!.block.dowels).toHaveLength(4);
    expect(left!.block.tabs).toHaveLength(4);
    for (const { pocketDepthMm, stickOutMm, stepOverMm } of left!.block.setUps) {
      expect(stickOutMm - pocketDepthMm).toBeCloseTo(5, 6);
      expect(stepOverMm).toBeGreaterThan(1.9);
      expect(stepOverMm).toBeLessThan(2.19);
    }
  });

  test('the drawing of set-up 2 is that of set-up 1 turned over, and both are drawn full size on layers of their own', () => {
    /** Every arc as layer, centre and radius; `flip` turns the centre over. */
    const arcs = (text: string, flip: 1 | -1): string[] => {
      const lines = text.split('\r\n'), found: string[] = [];
      for (let i = 0; i + 1 < lines.length; i += 2) if (Number(lines[i]) === 0 && lines[i + 1] === 'ARC') {
        const value = (code: number): string => { let k = i + 2; while (Number(lines[k]) !== code) k += 2; return lines[k + 1]!; };
        found.push([value(8), Number(value(10)).toFixed(3), (Number(value(20)) * flip + 0).toFixed(3), Number(value(40)).toFixed(3)].join(' ').replace(' -0.000', ' 0.000'));
      }
      return found.sort();
    };
    const [one, two] = [1, 2].map((n) => textOf(`left_block-${n}.dxf`));
    for (const layer of ['BLOCK', 'POCKET', 'EDGE_LINE', 'DOWELS', 'TABS', 'TURN_AXIS']) expect(one).toContain(`\r\n${layer}\r\n`);
    expect(arcs(one!, 1).length).toBeGreaterThan(30);
    expect(arcs(two!, -1)).toEqual(arcs(one!, 1));
  });

  test('the sheet says in words whose shoe it is, what is up, and where zero lies; its lines are 100 mm long', () => {
    const pages = readPdf(bytesOf('_block.pdf')), all = pages.flatMap(({ words }) => words).join(' ');
    for (const words of ['LEFT SHOE', 'RIGHT SHOE', 'LEFT shoe', 'RIGHT shoe', 'SET-UP 1: upper face up', 'SET-UP 2: ground face up', 'X0 is the heel end', 'Two dowels', 'Tab, waist, inner side', 'Extraction at the cutter', 'Eye and ear protection']) expect(all).toContain(words);
    expect(all).toContain('Ball end of 12.0 mm that reaches 60.0 mm');
    // In the order of the hands: cautions before any work; hollow filled while it can be reached; held down and roughed before it is finished.
    const order = ['Cautions', 'Order of work', 'Drill the dowel holes', 'Fill the hollow', 'Turn the block over', 'screw it down anew', 'Set-up 2: rough', 'finish the ground face'].map((words) => all.indexOf(words));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
    for (const page of pages.filter(({ words }) => words.some((line) => line.includes('SET-UP 1')))) {
      const long = page.strokes.filter(({ from, to }) => Math.abs(Math.hypot(from[0] - to[0], from[1] - to[1]) - 100) < 0.01);
      expect(long.some(({ from, to }) => Math.abs(from[1] - to[1]) < 0.01) && long.some(({ from, to }) => Math.abs(from[0] - to[0]) < 0.01)).toBe(true);
    }
    for (const page of pages) for (const { from, to } of page.strokes) for (const [x, y] of [from, to]) expect(x > 4 && x < 206 && y > 4 && y < 293).toBe(true);
    expect(readPdf(bytesOf('_block.pdf', once)).flatMap(({ words }) => words).join(' ')).toContain('the usual one');
  });

  test('where too few tabs stand the order of work holds the part from below and leaves a skin, and nowhere else', () => {
    const measured = (value: number) => ({ value, origin: 'measured' }) as const, making = readMaking({ chordGap: 1, block: {}, tool: { diameter: 12, reach: 60 } });
    const thin = (seat: number, ball: number): string => {
      const design = designOf(job('K-301', { left: rocker('left'), right: match('right', { seatHeightNow: measured(seat), ballHeightNow: measured(ball) }) }, { making }));
      const parts = partsOf(design.shoes[1]!)!, shoe = { side: 'right', parts, block: blockOf(parts, plannedBlock(parts, making)!, making, kernel) } as const;
      return blockText(design, shoe, 186).flatMap(({ marks }) => marks(0, 0)).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ').replace(/\s+/g, ' ');
    };
    const held = thin(29, 15), film = thin(30, 16);
    expect(held).toContain('leave the tabs standing');
    expect(held).not.toContain('as a skin');
    expect(film).toMatch(/\d+\. Too few tabs stand, so the part is held from below.* double-sided film .*\d+\. Set-up 2: .* left uncut as a skin .*\d+\. Last of all cut the skin/);
  });
});
