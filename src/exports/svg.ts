import { lengthOf, pointOn, type Path } from '../geometry/path.ts';
import { distance, type Point } from '../geometry/point.ts';
import { LINES, type Drawing, type Ink, type LineKind, type Mark, type Shade, type Words } from './drawing.ts';

/** Ink on warm card. Checked for contrast on the sheet, and never the only difference between two things. */
const COLOURS: Readonly<Record<Ink | Shade, string>> = {
  ink: '#22303C', pencil: '#6B7276', computed: '#2B4C6F', governs: '#8C2F2B', sheet: '#FBF7EC', foam: '#D9C7A3', rubber: '#4A4640', carbon: '#2A2A2A',
};
/** A face every system has, or has one just as wide; the boxes of the drawing are measured for it. */
const FACE = "Helvetica, Arial, 'Liberation Sans', 'Noto Sans', sans-serif";

/** Paper is drawn to a thousandth of a millimetre. */
function number(value: number): string {
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
const pair = ([x, y]: Point): string => `${number(x)} ${number(y)}`;
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** The drawing as one SVG file in true size: width and height in mm, the picture in the same numbers. Same drawing, same text. */
export function svgText({ paper: { width, height }, title, marks }: Drawing): string {
  const sheet = `<rect width="${number(width)}" height="${number(height)}" fill="${COLOURS.sheet}"/>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}"`
    + ` font-family="${FACE}" fill="none" style="font-variant-numeric:tabular-nums">`,
    `<title>${escaped(title)}</title>`, sheet, ...marks.map(element), '</svg>', '',
  ].join('\n');
}

/** One mark as an SVG element, in millimetres of the paper. */
export function element(mark: Mark): string {
  switch (mark.kind) {
    case 'line': return `<path d="${track(mark.path)}" ${strokeOf(mark.line, mark.ink)}/>`;
    case 'fill': return `<path d="${closed(track(mark.path))}" fill="${COLOURS[mark.colour]}"/>`;
    case 'text': return lettering(mark);
  }
}

/** A closing stroke with nothing to close is no path at all. */
const closed = (track: string): string => (track === '' ? '' : `${track}Z`);

function strokeOf(line: LineKind, ink: Ink): string {
  const { width, dashes } = LINES[line];
  const pattern = dashes.length ? ` stroke-dasharray="${dashes.join(' ')}"` : ' stroke-linecap="round" stroke-linejoin="round"';
  return `stroke="${COLOURS[ink]}" stroke-width="${width}"${pattern}`;
}

/** Pieces that end nearer than this to where the next begins are one line: the last digit may round either way. */
const SAME_PLACE = 0.002;

/** Pieces laid end to end as the text of a path; a new start where they do not meet. */
export function track(path: Path): string {
  let here: Point | undefined;
  return path.filter((piece) => lengthOf(piece) > 0).map((piece) => {
    const start = pointOn(piece, 0), end = pointOn(piece, 1), to = pair(end), move = here && distance(here, start) < SAME_PLACE ? '' : `M${pair(start)}`;
    here = end;
    if (piece.kind === 'line') return `${move}L${to}`;
    const radius = number(piece.radius);
    return `${move}A${radius} ${radius} 0 ${Math.abs(piece.sweep) > Math.PI ? 1 : 0} ${piece.sweep > 0 ? 1 : 0} ${to}`;
  }).join('');
}

function lettering({ text, at, size, bold, anchor, turned, ink }: Words): string {
  const place = turned ? `transform="translate(${pair(at)})rotate(-90)"` : `x="${number(at[0])}" y="${number(at[1])}"`;
  return `<text ${place} font-size="${number(size)}"${bold ? ' font-weight="bold"' : ''}${anchor === 'start' ? '' : ` text-anchor="${anchor}"`} fill="${COLOURS[ink]}">${escaped(text)}</text>`;
}
