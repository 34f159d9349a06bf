/** Plain text set into lines and columns. */

/** Lines of at most `width` letters, broken between words; a word longer than a line is cut. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '').flatMap((part) => pieces(part, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (lengthOf(longer) <= width) { line = longer; continue; }
    lines.push(line);
    line = word;
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}

const lengthOf = (text: string): number => [...text].length;

function pieces(word: string, width: number): string[] {
  const letters = [...word];
  return Array.from({ length: Math.ceil(letters.length / width) }, (_, i) => letters.slice(i * width, (i + 1) * width).join(''));
}

/** A column, no wider than `most`; `ink` colours a line of it after it was set. */
export interface Column { readonly head: string; readonly most: number; readonly ink?: (line: string, row: number) => string }

const GAP = 2;

/**
 * Rows under their heads, each cell wrapped in its column, an empty line between rows.
 * A cell may hold several lines of its own. Columns are as narrow as their longest line allows.
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const cells = [columns.map(({ head }) => head), ...rows].map((row) => row.map((cell, i) => cell.split('\n').flatMap((line) => wrapped(line, columns[i]!.most))));
  const widths = columns.map((_, i) => Math.max(...cells.map((row) => Math.max(...row[i]!.map(lengthOf)))));
  return cells.flatMap((row, index) => {
    const height = Math.max(...row.map((lines) => lines.length));
    const set = Array.from({ length: height }, (_, k) => row.map((lines, i) => {
      const line = lines[k] ?? '', padded = line + ' '.repeat(widths[i]! - lengthOf(line)), ink = columns[i]!.ink;
      return ink && index > 0 && line !== '' ? ink(padded, index - 1) : padded;
    }).join(' '.repeat(GAP)).trimEnd());
    return index === 0 ? set : ['', ...set];
  });
}

/** What is left of a line for one more column when the others have taken theirs. */
export const leftOf = (width: number, taken: readonly number[]): number => width - taken.reduce((sum, one) => sum + one + GAP, 0);
