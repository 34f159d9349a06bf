import { arcThrough, type Path } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import { unit } from '../../src/geometry/point.ts';
import type { FlatPart } from '../../src/making/flatPart.ts';

/** A plate with all that a cut part may have: a flat arc on top, a slot open at the top, a slot inside and a round hole. */

/** Width of its slots: a board of 6 mm and 0.1 mm of clearance. */
export const SLOT = 6.1;
export const slot = { middle: 40, bottom: 25 };

const through = (points: readonly Point[]): Path => points.map((to, i) => ({ kind: 'line', from: points.at(i - 1)!, to }));
const RADIUS = 900, CENTRE: Point = [60, 60 - RADIUS + 2];
const topAt = (x: number): Point => [x, CENTRE[1] + Math.sqrt(RADIUS ** 2 - (x - CENTRE[0]) ** 2)];
const top = (from: number, to: number): Path => { const [x, y] = topAt(from); return [arcThrough([x, y], unit([-(y - CENTRE[1]), x - CENTRE[0]]), topAt(to))]; };

const outline: Path = [
  { kind: 'line', from: [0, 0], to: [120, 0] }, { kind: 'line', from: [120, 0], to: topAt(120) },
  ...top(120, slot.middle + SLOT / 2), { kind: 'line', from: topAt(slot.middle + SLOT / 2), to: [slot.middle + SLOT / 2, slot.bottom] },
  { kind: 'line', from: [slot.middle + SLOT / 2, slot.bottom], to: [slot.middle - SLOT / 2, slot.bottom] },
  { kind: 'line', from: [slot.middle - SLOT / 2, slot.bottom], to: [slot.middle - SLOT / 2, 60] },
  { kind: 'line', from: [slot.middle - SLOT / 2, 60], to: [0, 60] }, { kind: 'line', from: [0, 60], to: [0, 0] },
];

export const plate: FlatPart = {
  name: 'plate', outline,
  holes: [
    through([[80, 10], [80, 10 + SLOT], [110, 10 + SLOT], [110, 10]]),
    [0, -Math.PI].map((start) => ({ kind: 'arc', centre: [95, 40], radius: 6, start, sweep: -Math.PI })),
  ],
  marks: [{ of: 'BALL_LINE', path: [{ kind: 'line', from: [60, 5], to: [60, 50] }] }],
  letters: [{ text: 'plate A', at: [10, 10], size: 4 }],
};
