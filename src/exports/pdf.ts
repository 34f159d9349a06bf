import { jsPDF } from 'jspdf';
import { pointOn, type Path, type PathArc } from '../geometry/path.ts';
import { add, scale, type Point } from '../geometry/point.ts';
import { cos, sin, tan } from '../geometry/trig.ts';
import { LINES, type Drawing, type Ink, type Mark, type Shade, type Words } from './drawing.ts';
import { textWidth } from './letters.ts';
import { sha256 } from './sha256.ts';

/** Black on white: only the layers of a sole are told apart by grey, and each is outlined. Nought is black. */
const GREYS: Readonly<Record<Ink | Shade, number>> = { ink: 0, pencil: 0, computed: 0, governs: 0, carbon: 0, rubber: 90, foam: 226, sheet: 255 };

/**
 * Drawings as the pages of one PDF file in true size. Lettering is Helvetica, which every reader brings along.
 * Nothing comes from the clock or from chance: same pages and date, same bytes.
 * @param date ISO date the file is said to be made on
 */
export function pdfBytes(pages: readonly Drawing[], title: string, date: string): Uint8Array {
  const [first] = pages;
  if (!first) throw new RangeError('a PDF file must have at least one page, got 0');
  const file = new jsPDF({ unit: 'mm', ...pageOf(first), compress: true, putOnlyUsedFonts: true, floatPrecision: 4 });
  file.setFileId(sha256(new TextEncoder().encode(JSON.stringify(pages))).slice(0, 32));
  file.setCreationDate(pdfDate(date));
  file.setProperties({ title: printable(title) });
  pages.forEach((page, i) => {
    if (i > 0) { const { format, orientation } = pageOf(page); file.addPage(format, orientation); }
    page.marks.forEach((mark) => write(file, mark));
  });
  return new Uint8Array(file.output('arraybuffer'));
}

const pageOf = ({ paper: { width, height } }: Drawing): { format: [number, number]; orientation: 'landscape' | 'portrait' } =>
  ({ format: [width, height], orientation: width > height ? 'landscape' : 'portrait' });

/** Midnight in Greenwich, so that no time zone enters. The writer takes these years only; every sheet carries the date in words. */
function pdfDate(date: string): Date {
  const inside = /^(19[7-9]\d|20[0-2]\d|203[0-7])-\d\d-\d\d$/.test(date);
  // The writer takes a string of this form for a date as well, though its types do not say so.
  return `D:${inside ? date.replaceAll('-', '') : '19700101'}000000+00'00'` as unknown as Date;
}

function write(file: jsPDF, mark: Mark): void {
  switch (mark.kind) {
    case 'line': {
      const { width, dashes } = LINES[mark.line];
      file.setDrawColor(GREYS[mark.ink]);
      file.setLineWidth(width);
      file.setLineCap(dashes.length ? 'butt' : 'round');
      file.setLineJoin('round');
      file.setLineDashPattern([...dashes], 0);
      track(file, mark.path);
      file.stroke();
      return;
    }
    case 'fill':
      file.setFillColor(GREYS[mark.colour], GREYS[mark.colour], GREYS[mark.colour]);
      track(file, mark.path);
      file.fill();
      return;
    case 'text': lettering(file, mark);
  }
}

/** Pieces laid end to end; a new start where they do not meet. */
function track(file: jsPDF, path: Path): void {
  let here: Point | undefined;
  for (const piece of path) {
    const from = pointOn(piece, 0), to = pointOn(piece, 1);
    if (!here || Math.hypot(from[0] - here[0], from[1] - here[1]) > JOINED) file.moveTo(...from);
    if (piece.kind === 'line') file.lineTo(...to); else bend(file, piece);
    here = to;
  }
}
const JOINED = 1e-6;

/** An arc as cubic pieces of at most 30 degrees, off the circle by less than a millionth of the radius. Source: the usual 4/3 tan rule. */
function bend(file: jsPDF, { centre, radius, start, sweep }: PathArc): void {
  const count = Math.ceil(Math.abs(sweep) / (Math.PI / 6)), step = sweep / count, reach = radius * (4 / 3) * tan(step / 4);
  for (let i = 0; i < count; i++) {
    const a = start + i * step, b = a + step;
    const on = (angle: number): Point => add(centre, scale([cos(angle), sin(angle)], radius));
    const tangent = (angle: number): Point => scale([-sin(angle), cos(angle)], reach);
    file.curveTo(...add(on(a), tangent(a)), ...add(on(b), scale(tangent(b), -1)), ...on(b));
  }
}

function lettering(file: jsPDF, { text, at: [x, y], size, bold, anchor, turned, ink }: Words): void {
  const letters = printable(text);
  file.setFont('helvetica', bold ? 'bold' : 'normal');
  file.setFontSize(size * POINTS_PER_MM);
  file.setTextColor(GREYS[ink]);
  const back = anchor === 'start' ? 0 : textWidth(letters, { size, bold: bold ?? false }) * (anchor === 'end' ? 1 : 0.5);
  if (turned) file.text(letters, x, y + back, { angle: 90 }); else file.text(letters, x - back, y);
}
const POINTS_PER_MM = 72 / 25.4;

const LIKE: Readonly<Record<string, string>> = { '−': '–', '≤': '<=', '≥': '>=', 'Ł': 'L', 'ł': 'l', 'Đ': 'D', 'đ': 'd', 'ı': 'i', 'ℓ': 'l', '\u202f': ' ' };
/** Beyond Latin-1, the letters and signs that the PDF readers' own Helvetica has too. */
const ALSO = '–—‘’“”…€ŠšŽžŒœŸ•';

/** Letters the readers' own face lacks, by the nearest it has: an accent is dropped, a foreign script becomes question marks. */
export const printable = (text: string): string => [...text].map((letter) => {
  const known = (one: string): boolean => /^[\u0020-\u007e\u00a0-\u00ff]*$/.test(one) || ALSO.includes(one);
  const plain = LIKE[letter] ?? (known(letter) ? letter : letter.normalize('NFKD').replace(/\p{M}/gu, ''));
  return known(plain) ? plain : '?';
}).join('');
