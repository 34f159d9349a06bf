import type { PartLetters } from '../making/flatPart.ts';
import type { CutSheet } from '../making/stack/stack.ts';
import type { Mm } from '../geometry/units.ts';
import { polyline } from './drawing.ts';
import type { DxfEntity } from './dxf.ts';
import { path, sheet } from './dxfSheets.ts';

const LETTER: Mm = 8;

/**
 * One sheet of the rack with the blanks that are cut from it, in true size, without kerf: a knife has none, and the trim
 * takes that of a saw. Length of the sheet to the right. Every blank carries its name, the lines it is laid by, and the
 * edge of the layer that comes under it.
 * @param reference of the job
 */
export function stackSheet({ number, sheet: { name, thickness, length, width }, parts }: CutSheet, reference: string): string {
  const title = `${reference} sheet ${number}: ${name}, ${thickness.toFixed(1)} mm, ${length} x ${width} mm, upper sides up`;
  return sheet([
    ...path('SHEET_EDGE', polyline([[0, 0], [length, 0], [length, width], [0, width]], true)), letter({ text: title, at: [0, -2 * LETTER], size: LETTER }),
    ...parts.flatMap(({ outline, marks, letters }) => [...path('CUT', outline), ...marks.flatMap((mark) => path(mark.of, mark.path)), ...letters.map(letter)]),
  ]);
}

const letter = ({ text, at, size, turn = 0 }: PartLetters): DxfEntity => ({ kind: 'text', layer: 'LETTERS', at, height: size, text, turn });
