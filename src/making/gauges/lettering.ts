import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { PartLetters } from '../flatPart.ts';

/** How lettering is laid out on a part before anyone knows which letters will cut it. */
export const LETTER: Mm = 3, ROW: Mm = 4.4;

/** Room a letter needs as a share of its height, in the faces that drawing programs and lasers take. */
const WIDE = 0.8;
export const roughWidth = (text: string, size: Mm = LETTER): Mm => text.length * size * WIDE;

/** Breaks words into lines no longer than a width; a word longer than that stands alone. */
export function lettersWithin(text: string, width: Mm): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1), longer = line === undefined ? word : `${line} ${word}`;
    if (line === undefined || roughWidth(longer) > width) lines.push(word); else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** Words in no more than so many lines, those as short as they go. */
export function linesInRows(text: string, rows: number): string[] {
  const words = text.split(' '), widths = words.flatMap((_, i) => words.slice(i).map((__, j) => roughWidth(words.slice(i, i + j + 1).join(' ')))).sort((a, b) => a - b);
  return lettersWithin(text, widths.find((width) => lettersWithin(text, width).length <= rows) ?? Infinity);
}
export const widthOf = (lines: readonly string[]): Mm => Math.max(...lines.map((line) => roughWidth(line)));

/** Lines one below the other, the lowest of them on a height. */
export const linesOver = (lines: readonly string[], [x, lowest]: Point): PartLetters[] =>
  lines.map((text, i) => ({ text, at: [x, lowest + (lines.length - 1 - i) * ROW], size: LETTER }));

interface Label { readonly text: string; readonly x: Mm }
interface Box { readonly left: Mm; readonly right: Mm; readonly low: Mm; readonly high: Mm }

/** Between two labels, and between a label and what stands over it. */
const CLEAR: Mm = 1.2;

/**
 * Labels centred under their places as high as they go, each clear of all set before it.
 * @param ceiling the height below which letters may stand at a place
 */
export function labelsUnder(labels: readonly Label[], ceiling: (x: Mm) => Mm): PartLetters[] {
  const taken: Box[] = [];
  return labels.map(({ text, x }) => {
    const half = roughWidth(text) / 2, left = x - half, right = x + half;
    let high = Math.min(ceiling(left), ceiling(x), ceiling(right)) - CLEAR;
    const blocking = (): Box | undefined => taken.find((box) => box.left < right + CLEAR && left < box.right + CLEAR && box.low < high + CLEAR && high - LETTER < box.high + CLEAR);
    for (let box = blocking(); box; box = blocking()) high = box.low - CLEAR - 1e-6;
    taken.push({ left, right, low: high - LETTER, high });
    return { text, at: [left, high - LETTER], size: LETTER };
  });
}
