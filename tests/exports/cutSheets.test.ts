import { expect, test } from 'vitest';
import { cutSheets } from '../../src/exports/cutSheets.ts';
import type { BoardOrder } from '../../src/fitting/making.ts';
import type { Placed } from '../../src/making/cut/placed.ts';
import { plate, slot, SLOT } from '../support/plate.ts';
import { readDxf } from '../support/dxfReader.ts';

const BOARD: BoardOrder = { thickness: 6, measured: true, length: 300, width: 200, kerf: 0.2, clearance: 0.1, apart: 5 };
const at = (sheet: number, x: number, y: number, turn = 0): Placed => ({ part: plate, sheet, turn, at: [x, y] });
const PARTS = [at(0, 10, 10), at(0, 200, 20, Math.PI / 2), at(1, 10, 10)];

test('one drawing a board: its edge, what is cut inside before what is cut out, marks, and the lettering', () => {
  const sheets = cutSheets('K-204 left jig', PARTS, BOARD).map(readDxf);
  expect(sheets.map(({ chains }) => Object.fromEntries(['BOARD', 'CUT_IN', 'CUT_OUT'].map((layer) => [layer, chains(layer).length])))).toEqual([{ BOARD: 1, CUT_IN: 4, CUT_OUT: 2 }, { BOARD: 1, CUT_IN: 2, CUT_OUT: 1 }]);
  const layers = sheets[0]!.entities.map(({ layer }) => layer);
  expect(layers.lastIndexOf('CUT_IN')).toBeLessThan(layers.indexOf('CUT_OUT'));
  expect(layers.filter((layer) => layer === 'MARK')).toHaveLength(2);
  expect(sheets[1]!.letters.map(({ text }) => text)).toEqual([
    'K-204 left jig, board 2 of 2', 'board 6 mm thick, as measured; slots 6.1 mm', 'kerf 0.2 mm taken into the lines: cut ON the line, no allowance in the machine', 'plate A',
  ]);
  expect(sheets[0]!.letters.map(({ turn }) => turn)).toEqual([0, 0, 0, 0, 90]);
});

test('a board that nobody measured says so', () => {
  const [first] = cutSheets('K-204', PARTS, { ...BOARD, measured: false });
  expect(readDxf(first!).letters[1]!.text).toBe('board 6 mm thick, NOT MEASURED: measure it before cutting; slots 6.1 mm');
});

for (const kerf of [0, 0.2, 3]) test(`with the cut of ${kerf} mm taken back, the slot in the file is as wide as the board and its clearance`, () => {
  const [first] = cutSheets('K-204', [at(0, 0, 0)], { ...BOARD, kerf }), { entities } = readDxf(first!);
  const walls = entities.filter(({ layer, type, from, to }) => layer === 'CUT_OUT' && type === 'LINE' && Math.abs(from[0] - to[0]) < 1e-9 && Math.abs(from[0] - slot.middle) < SLOT).map(({ from }) => from[0]);
  expect(Math.max(...walls) - Math.min(...walls) + kerf).toBeCloseTo(SLOT, 9);
});
