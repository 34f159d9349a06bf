import { subtract, unit, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { about, arrowHead, boxOf, clearWords, drawn, filled, grown, polyline, stroke, type Box, type Mark, type Words } from './drawing.ts';
import { placed, type Choice, type Placed, type Segment } from './labels.ts';
import type { Part } from './picture.ts';

/** What was laid down, and which place each label took. */
export interface Labelled { readonly marks: readonly Mark[]; readonly choices: readonly Choice[] }

/**
 * Lays pictures down: shapes first, then dimensions, then labels where they find room between those and what is fixed.
 * @param before places to keep, from a drawing much like this one
 */
export function labelled({ shapes, dimensions, wishes, lines, boxes, bodies }: Part, { left, top, right, bottom }: Box, fixed: readonly Mark[], before?: readonly Choice[]): Labelled {
  const lettering = [...fixed.filter((mark) => mark.kind === 'text'), ...dimensions.map(({ label }) => label)];
  const labels = placed(wishes, {
    boxes: [...boxes, ...lettering.map(boxOf)], bodies, lines: [...lines, ...fixed.flatMap(straightIn)],
    within: { left: left + 2, top: top + 2, right: right - 2, bottom },
  }, before);
  const marks = [
    ...shapes, ...dimensions.flatMap(({ marks }) => marks), ...labels.flatMap(leaderMarks),
    ...dimensions.flatMap(({ label }) => clearWords(label)),
    ...labels.flatMap(({ label, frame }) => [...(frame === undefined ? [] : frameMarks(label, frame)), ...clearWords(label)]),
  ];
  return { marks, choices: labels.map(({ choice }) => choice) };
}

const straightIn = (mark: Mark): Segment[] =>
  mark.kind === 'line' ? mark.path.flatMap((piece): Segment[] => piece.kind === 'line' ? [[piece.from, piece.to]] : []) : [];

function frameMarks(label: Words, frame: Mm): Mark[] {
  const { left, right, top, bottom } = grown(boxOf(label), frame), corners: Point[] = [[left, top], [right, top], [right, bottom], [left, bottom]];
  return [filled(polyline(corners, true), 'sheet'), drawn(polyline(corners, true), 'thin', label.ink)];
}

function leaderMarks({ label, leader, arrow }: Placed): Mark[] {
  if (!leader) return [];
  const tagged = (mark: Mark): Mark => (label.of === undefined ? mark : about(label.of, mark));
  const [from, to] = leader, ink = label.ink === 'ink' ? 'pencil' : label.ink, line = stroke(from, to, 'thin', ink);
  return (arrow ? [line, arrowHead(to, unit(subtract(to, from)), ink)] : [line]).map(tagged);
}
