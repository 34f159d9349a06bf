import { describe, expect, test } from 'vitest';
import { faultsOf, volumeOf } from '../../src/geometry/mesh.ts';
import { enclosedArea, lengthOf, pointOn, type Path, type PathPiece } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { flatSolid } from '../../src/making/cut/flatSolid.ts';
import { cutLine } from '../../src/making/cut/kerf.ts';
import { laid } from '../../src/making/cut/placed.ts';
import { relieved } from '../../src/making/cut/relief.ts';
import { takesBoard } from '../../src/making/cut/takesBoard.ts';
import { plate, slot, SLOT } from '../support/plate.ts';

/** Judge that knows no arcs: distance to an edge by straight lines within 0.0005 mm of it. */
const nearestOf = (edge: Path): ((at: Point) => number) => {
  const lines = edge.flatMap((piece) => { const n = piece.kind === 'line' ? 1 : Math.ceil(lengthOf(piece) / Math.sqrt(0.004 * piece.radius)); return Array.from({ length: n }, (_, i) => [pointOn(piece, i / n), pointOn(piece, (i + 1) / n)] as const); });
  return (at) => Math.min(...lines.map(([from, to]) => fromLine(from, to, at)));
};
function fromLine([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  const t = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)));
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
}
const sampled = (edge: Path, apart: number): Point[] => edge.flatMap((piece) => { const n = Math.ceil(lengthOf(piece) / apart); return Array.from({ length: n }, (_, i) => pointOn(piece, i / n)); });
const gapsOf = (path: Path): number[] => path.map((piece, i) => distance(pointOn(path.at(i - 1)!, 1), pointOn(piece, 0)));
const arcs = (path: Path): number[] => path.flatMap((piece) => piece.kind === 'arc' && piece.radius > 5 ? [piece.radius] : []);

describe('the line to cut', () => {
  for (const kerf of [0.15, 1, 3]) test(`keeps half of ${kerf} mm from the edge all along, on the side of the waste, and is closed`, () => {
    for (const edge of [plate.outline, ...plate.holes]) {
      const line = cutLine(edge, kerf / 2), from = nearestOf(edge);
      expect(Math.max(...gapsOf(line))).toBeLessThan(1e-7);
      for (const at of sampled(line, 1.7)) expect(Math.abs(from(at) - kerf / 2)).toBeLessThan(0.001);
      expect(Math.sign(enclosedArea(line) - enclosedArea(edge))).toBe(1);
    }
  });

  test('keeps arcs as arcs with their centres: the swept edge a half kerf larger, the round hole a half kerf smaller', () => {
    expect(arcs(cutLine(plate.outline, 0.4))).toEqual([expect.closeTo(900.4, 9)]);
    expect(cutLine(plate.holes[1]!, 0.4).map((piece: PathPiece) => piece.kind === 'arc' && piece.radius)).toEqual([expect.closeTo(5.6, 9), expect.closeTo(5.6, 9)]);
  });

  test('leaves a slot out that is narrower than the cut, and a hole that is smaller; what is left still keeps its distance', () => {
    const line = cutLine(plate.outline, 4), from = nearestOf(plate.outline);
    for (const at of sampled(line, 1.7)) expect(from(at)).toBeGreaterThan(4 - 0.001);
    expect(Math.min(...sampled(line, 0.5).filter(([x]) => Math.abs(x - slot.middle) < 2).map(([, y]) => y).filter((y) => y > 10))).toBeGreaterThan(slot.bottom + 20);
    expect(cutLine(plate.holes[1]!, 6.5)).toEqual([]);
    expect(cutLine(plate.holes[0]!, 3.2)).toEqual([]);
  });
});

describe('inner corners', () => {
  const corners: Point[] = [[slot.middle - SLOT / 2, slot.bottom], [slot.middle + SLOT / 2, slot.bottom]];
  const reachOf = (line: Path): number[] => { const from = nearestOf(line); return corners.map(from); };

  for (const kerf of [3, 6]) test(`a cutter of ${kerf} mm clears them, and the end of the slot stays where it is`, () => {
    const line = cutLine(relieved(plate.outline, kerf), kerf / 2);
    expect(Math.max(...gapsOf(line))).toBeLessThan(1e-7);
    for (const reach of reachOf(line)) expect(reach).toBeLessThan(kerf / 2 + 0.01);
    for (const reach of reachOf(cutLine(plate.outline, kerf / 2))) expect(reach).toBeGreaterThan(kerf / 2 * 1.4);
    const end = sampled([{ kind: 'line', from: corners[0]!, to: corners[1]! }], 0.5), from = nearestOf(line);
    for (const at of end) expect(from(at)).toBeGreaterThan(kerf / 2 - 0.001);
  });

  test('are left round where two bites would break the wood between two slots', () => {
    const comb = (wood: number): Path => { const at: Point[] = [[0, 0], [150, 0], [150, 60], [60 + wood + 40, 60], [60 + wood + 40, 10], [60 + wood, 10], [60 + wood, 60], [60, 60], [60, 10], [20, 10], [20, 60], [0, 60]]; return at.map((from, i) => ({ kind: 'line', from, to: at[(i + 1) % at.length]! })); };
    const bites = (wood: number): number => relieved(comb(wood), 12).filter(({ kind }) => kind === 'arc').length;
    expect([bites(20), bites(10)]).toEqual([4, 2]);
    expect(cutLine(relieved(comb(10), 12), 6).length).toBeGreaterThan(12);
  });

  test('a beam needs none', () => expect(relieved(plate.outline, 0.2)).toBe(plate.outline));
});

test('a part as a solid is closed, its outside out, and holds its area times the thickness', () => {
  const area = [plate.outline, ...plate.holes].reduce((sum, edge) => sum + enclosedArea(edge), 0), solid = flatSolid(plate, 5.8, 0.002);
  expect(faultsOf(solid)).toEqual([]);
  expect(volumeOf(solid) / (area * 5.8)).toBeCloseTo(1, 4);
});

test('a point in the middle of a straight edge leaves no facet without area', () => {
  const square: Path = ([[0, 0], [4, 0], [10, 0], [10, 10], [0, 10]] as const).map((from, i, all) => ({ kind: 'line', from, to: all[(i + 1) % 5]! }));
  expect(flatSolid({ ...plate, outline: square, holes: [] }, 6, 0.1).triangles).toHaveLength(12 * 3);
});

test('only a part that takes the board it is cut from has slots', () => {
  const board = { thickness: SLOT - 0.15, clearance: 0.15 }, square: Path = ([[0, 0], [SLOT, 0], [SLOT, SLOT], [0, SLOT]] as const).map((from, i, all) => ({ kind: 'line', from, to: all[(i + 1) % 4]! }));
  expect([0, 1, 3].map((quarters) => takesBoard(laid({ part: plate, sheet: 0, turn: quarters * Math.PI / 2, at: [200, 10] }), board))).toEqual([true, true, true]);
  expect(takesBoard(plate, { ...board, clearance: 0.2 })).toBe(false);
  expect(takesBoard({ ...plate, outline: square, holes: [] }, board)).toBe(false);
});

test('a part laid on a board turned by a quarter keeps its edges along the board, to the last digit', () => {
  const { outline, letters } = laid({ part: plate, sheet: 0, turn: Math.PI / 2, at: [200, 10] }), [bottom] = outline;
  expect(bottom).toEqual({ kind: 'line', from: [200, 10], to: [200, 130] });
  expect(letters[0]).toMatchObject({ at: [190, 20], turn: Math.PI / 2 });
});
