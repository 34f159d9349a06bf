import { pathLength, pointOn } from '../geometry/path.ts';
import { add, scale, subtract, unit, type Point } from '../geometry/point.ts';
import { atan2 } from '../geometry/trig.ts';
import type { PartLetters, PartMark } from '../making/flatPart.ts';
import type { CutSheet } from '../making/stack/stack.ts';
import type { Mm } from '../geometry/units.ts';
import { polyline } from './drawing.ts';
import type { DxfEntity } from './dxf.ts';
import { path, sheet } from './dxfSheets.ts';

const LETTER: Mm = 8;

/**
 * One sheet of the rack with the blanks that are cut from it, in true size, without kerf: a knife has none, and the trim
 * takes that of a saw. Length of the sheet to the right. Every blank carries its name, the lines it is laid by, in the
 * colour of all that is marked on boards and sheets, and the edge of the layer that comes under it.
 * @param reference of the job
 */
export function stackSheet({ number, sheet: { name, thickness, length, width }, parts }: CutSheet, reference: string): string {
  const title = `${reference} sheet ${number}: ${name}, ${thickness.toFixed(1)} mm, ${length} x ${width} mm, upper sides up`;
  return sheet([
    ...path('SHEET_EDGE', polyline([[0, 0], [length, 0], [length, width], [0, width]], true)), letter({ text: title, at: [0, -2 * LETTER], size: LETTER }),
    ...parts.flatMap(({ outline, marks, letters }) => [...path('CUT', outline), ...marks.flatMap(drawnMark), ...letters.map(letter)]),
  ]);
}

const letter = ({ text, at, size, turn = 0 }: PartLetters): DxfEntity => ({ kind: 'text', layer: 'LETTERS', at, height: size, text, turn });

/** The edge of the next layer is dashed, and keeps a layer of its own. */
const drawnMark = (mark: PartMark): DxfEntity[] => [...path(mark.of === 'NEXT_EDGE' ? mark.of : 'MARK', mark.path), ...wordOn(mark)];

/** Lines across a blank that look alike are told apart by a word; the centre line and the next edge need none. */
const WORDS: Readonly<Record<string, string>> = { BALL_LINE: 'ball', APEX_LINE: 'apex' };
const WORD: Mm = 4, IN_FROM_EDGE: Mm = 5, OFF: Mm = 1;

function wordOn({ of, path: line }: PartMark): DxfEntity[] {
  const text = WORDS[of], [first] = line, last = line.at(-1);
  if (!text || !first || !last || pathLength(line) < text.length * WORD + 2 * IN_FROM_EDGE) return [];
  const [from, to] = asRead(pointOn(first, 0), pointOn(last, 1)), way = unit(subtract(to, from)), up: Point = [-way[1], way[0]];
  return [letter({ text, at: add(from, add(scale(way, IN_FROM_EDGE), scale(up, OFF))), size: WORD, turn: atan2(way[1], way[0]) })];
}

/** From left to right on the sheet, upwards where it is upright: no word stands on its head. */
const asRead = (a: Point, b: Point): readonly [Point, Point] => (b[0] - a[0] > UPRIGHT || (Math.abs(b[0] - a[0]) <= UPRIGHT && b[1] > a[1]) ? [a, b] : [b, a]);
const UPRIGHT: Mm = 1;
