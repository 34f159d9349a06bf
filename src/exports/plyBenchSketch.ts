import { kgWords } from '../checks/benchWords.ts';
import { mm } from '../checks/say.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Hanging } from '../making/plies/bench.ts';
import { arrowHead, circle, drawn, filled, polyline, stroke, words, type Mark } from './drawing.ts';
import type { Block } from './flow.ts';

/** The bench test from the side: clamp, blocks, pack on its back, both gauges, the mass hung low. Not to scale. */
export function benchSketch(bare: Hanging, said: (text: string) => string): Block {
  return { height: 62, marks: (left, top) => [...bench([left, top]), ...pack([left, top]), ...gauges([left, top]), ...load([left, top], bare), ...places([left, top], bare, said)] };
}

/** Places of the sketch from its upper left corner: ends of the pack, the three lines, both faces of the pack, bench and floor. */
const HEEL: Mm = 22, CLAMP: Mm = 66, TREAD: Mm = 84, LOAD: Mm = 136, TIP: Mm = 147, UPPER: Mm = 23, LOWER: Mm = 25, BENCH: Mm = 36, FLOOR: Mm = 60;

const line = (from: Point, to: Point): Mark => stroke(from, to, 'visible', 'ink');
const hair = (from: Point, to: Point): Mark => stroke(from, to, 'thin', 'ink');
const arrow = (from: Point, to: Point): Mark[] => [hair(from, to), arrowHead(to, [Math.sign(to[0] - from[0]), Math.sign(to[1] - from[1])], 'ink')];

function bench([x, y]: Point): Mark[] {
  const block = (upper: Mm, lower: Mm): Mark[] => {
    const path = polyline([[x + HEEL + 4, y + upper], [x + CLAMP, y + upper], [x + CLAMP, y + lower], [x + HEEL + 4, y + lower]], true);
    return [filled(path, 'foam'), drawn(path, 'visible')];
  }, screw = x + 46;
  return [
    ...block(13, UPPER), ...block(LOWER, BENCH), words('hardwood block', [x + 27.5, y + 20]), words('hardwood block', [x + 27.5, y + 31.5]),
    line([x + 2, y + BENCH], [x + CLAMP, y + BENCH]), line([x + CLAMP, y + BENCH], [x + CLAMP, y + BENCH + 4]), line([x + 2, y + BENCH + 4], [x + CLAMP, y + BENCH + 4]), words('bench', [x + 52, y + BENCH + 8.4]),
    drawn(polyline([[screw, y + 7], [x + 13, y + 7], [x + 13, y + BENCH + 11], [screw, y + BENCH + 11]]), 'visible'), ...arrow([screw, y + 7], [screw, y + 13]), ...arrow([screw, y + BENCH + 11], [screw, y + BENCH + 4]), words('clamp', [x + 1, y + 6]),
  ];
}

/** Straight as it lies empty, broken where the mass has bent it. */
function pack([x, y]: Point): Mark[] {
  const empty = polyline([[x + HEEL, y + UPPER], [x + TIP, y + UPPER], [x + TIP, y + LOWER], [x + HEEL, y + LOWER]], true);
  const bent = (down: Mm): Mark => drawn(polyline([[x + CLAMP, y + down], [x + TREAD, y + down + 0.7], [x + 102, y + down + 2.6], [x + 120, y + down + 5.8], [x + LOAD, y + down + 9.2], [x + TIP, y + down + 11.6]]), 'hidden');
  return [
    filled(empty, 'carbon'), drawn(empty, 'visible'), bent(UPPER), bent(LOWER), words("floor's side up", [x + 94, y + UPPER - 2]), words("foot's side down", [x + 86, y + 33.5]), words('heel', [x + 14.5, y + LOWER - 0.4]), words('toe', [x + TIP + 2, y + LOWER - 0.4]),
    ...arrow([x + TIP + 4, y + LOWER + 2], [x + TIP + 4, y + 35]), words('droop: the toe goes to', [x + TIP + 7, y + 28.5], { size: 2.7 }), words("the foot's side,", [x + TIP + 7, y + 32], { size: 2.7 }), words('as in walking', [x + TIP + 7, y + 35.5], { size: 2.7 }),
  ];
}

function gauges([x, y]: Point): Mark[] {
  return ([[TREAD, 'gauge 2'], [LOAD, 'gauge 1']] as const).flatMap(([at, name]): Mark[] => [
    drawn(circle([x + at, y + 7], 4), 'visible'), hair([x + at, y + 7], [x + at + 2.2, y + 4.8]), hair([x + at, y + 11], [x + at, y + UPPER]), arrowHead([x + at, y + UPPER], [0, 1], 'ink'), words(name, [x + at + 5.5, y + 8.2], { bold: true }),
  ]);
}

/** The loop lies round the pack on the load line. */
function load([x, y]: Point, { mass }: Hanging): Mark[] {
  const at = x + LOAD, box = polyline([[at - 7, y + 48], [at + 7, y + 48], [at + 7, y + 57], [at - 7, y + 57]], true);
  return [hair([at, y + LOWER], [at, y + 48]), filled(box, 'carbon'), drawn(box, 'visible'), words(kgWords(mass), [at + 9, y + 54], { bold: true }), hair([x + 104, y + FLOOR], [x + 186, y + FLOOR]), words('floor', [x + 104, y + FLOOR - 1.2])];
}

/** The three lines the pack is set up by, with their places from the heel end of the last, and how far they are apart. */
function places([x, y]: Point, { clampAt, ball, loadAt }: Hanging, said: (text: string) => string): Mark[] {
  const named = (at: Mm, down: Mm, text: string): Mark[] => [hair([x + at, y + LOWER], [x + at, y + down]), words(said(text), [x + at + 1.4, y + down])];
  const apart = (from: Mm, to: Mm, down: Mm, text: string): Mark[] => [hair([x + from, y + down], [x + to, y + down]), arrowHead([x + from, y + down], [-1, 0], 'ink'), arrowHead([x + to, y + down], [1, 0], 'ink'), words(said(text), [x + (from + to) / 2, y + down - 1], { anchor: 'middle' })];
  return [
    ...named(CLAMP, 57, `clamp line, ${mm(clampAt, 0)}`), ...named(TREAD, 51.5, `tread line, ${mm(ball, 0)}`), words(said(`load line, ${mm(loadAt, 0)}`), [x + LOAD + 1.4, y + 46]),
    ...apart(CLAMP, TREAD, 41, mm(ball - clampAt, 0)), ...apart(TREAD, LOAD, 41, `lever ${mm(loadAt - ball, 0)}`), words(said('places from the heel end of the last'), [x + 2, y + FLOOR + 0.5], { size: 2.7 }),
  ];
}
