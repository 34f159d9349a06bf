import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxOf, overlap, words, type Box } from '../../src/exports/drawing.ts';
import { crosses, placed, type Wish } from '../../src/exports/labels.ts';
import type { Point } from '../../src/geometry/point.ts';

const within: Box = { left: 0, right: 100, top: 0, bottom: 100 };
const wish = (text: string, ...at: Point[]): Wish => ({ label: words(text, [0, 0]), places: at.map((place) => ({ at: place })) });

test('the first place is taken where it is free, the next where it is not', () => {
  const set = placed([wish('one', [20, 20]), wish('two', [20, 20], [20, 40])], { boxes: [], lines: [], within });
  expect(set.map(({ label: { at } }) => at)).toEqual([[20, 20], [20, 40]]);
});

test('a place across a line is left for one further down the list', () => {
  const [set] = placed([wish('one', [20, 20], [20, 60])], { boxes: [], lines: [[[0, 19], [100, 19]]], within });
  expect(set!.label.at).toEqual([20, 60]);
});

test('a label keeps off a body, though its leader runs through it', () => {
  const body: Box = { left: 0, right: 100, top: 40, bottom: 60 }, label = words('one', [0, 0]);
  const [set] = placed([{ label, places: [{ at: [20, 50] }, { at: [20, 30], leader: [[20, 30], [20, 58]] }, { at: [20, 20] }] }], { boxes: [], bodies: [body], lines: [], within });
  expect(set!.label.at).toEqual([20, 30]);
});

test('where no place is free a label goes anywhere on the sheet, on a leader; where there is no room at all it is said', () => {
  const full: Box = { left: 0, right: 100, top: 0, bottom: 80 };
  const [set] = placed([wish('one', [20, 20])], { boxes: [full], lines: [], within });
  expect(set!.label.at[1]).toBeGreaterThan(80);
  expect(set!.leader![1]).toEqual([20, 20]);
  expect(() => placed([wish('one', [20, 20])], { boxes: [within], lines: [], within })).toThrow(/no room left for the label "one"/);
});

test('a label stays where it stood as long as that is free, wherever else there would be room; then it looks again', () => {
  const wishes = [wish('one', [20, 20], [20, 40], [20, 60])], open = { boxes: [], lines: [], within }, moved = [wish('one', [22, 20], [22, 40], [22, 60])];
  const before = placed(wishes, { ...open, boxes: [{ left: 0, right: 100, top: 0, bottom: 30 }] }).map(({ choice }) => choice);
  expect(placed(moved, open, before)[0]!.label.at).toEqual([22, 40]);
  expect(placed(moved, open)[0]!.label.at).toEqual([22, 20]);
  expect(placed(moved, { ...open, boxes: [{ left: 0, right: 100, top: 30, bottom: 50 }] }, before)[0]!.label.at).toEqual([22, 20]);
  expect(placed([...moved, wish('two', [22, 80])], open, before)[0]!.label.at).toEqual([22, 20]);
});

test('a label that found room only elsewhere stays as far from its first place as it was', () => {
  const full: Box = { left: 0, right: 100, top: 0, bottom: 80 }, [set] = placed([wish('one', [20, 20])], { boxes: [full], lines: [], within });
  const [next] = placed([wish('one', [22, 21])], { boxes: [full], lines: [], within }, [set!.choice]);
  expect(next!.label.at).toEqual([set!.label.at[0] + 2, set!.label.at[1] + 1]);
  expect(next!.leader![1]).toEqual([22, 21]);
});

test('however crowded the wishes, no label covers another', () => {
  const point = fc.tuple(fc.double({ min: 5, max: 60, noNaN: true }), fc.double({ min: 5, max: 95, noNaN: true }));
  fc.assert(fc.property(fc.array(fc.array(point, { minLength: 1, maxLength: 4 }), { minLength: 2, maxLength: 12 }), (wishes) => {
    const boxes = placed(wishes.map((places, i) => wish(`label ${i}`, ...places)), { boxes: [], lines: [], within }).map(({ label }) => boxOf(label));
    boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => expect(overlap(a, b)).toBe(false)));
  }), { seed: 20250301, numRuns: 60 });
});

test('a line through a box is found as a slow judge finds it, walking along the line', () => {
  const coordinate = fc.integer({ min: -20, max: 40 }), end = fc.tuple(coordinate, coordinate), box: Box = { left: 0, right: 20, top: 0, bottom: 10 };
  fc.assert(fc.property(end, end, ([ax, ay], [bx, by]) => {
    const inside = Array.from({ length: 2001 }, (_, i) => i / 2000).some((t) => { const x = ax + (bx - ax) * t, y = ay + (by - ay) * t; return x >= 0 && x <= 20 && y >= 0 && y <= 10; });
    if (inside) expect(crosses(box, [[ax, ay], [bx, by]])).toBe(true);
    else if (crosses(box, [[ax, ay], [bx, by]])) {
      // Only a corner that is merely touched may slip between two steps of the walk.
      const near = [[0, 0], [20, 0], [0, 10], [20, 10]].some(([x, y]) => Math.abs((bx - ax) * (y! - ay) - (by - ay) * (x! - ax)) <= 0.02 * Math.hypot(bx - ax, by - ay) + 1e-9);
      expect(near).toBe(true);
    }
  }), { seed: 20250301, numRuns: 400 });
});
