import { inflateSync } from 'node:zlib';

/** What a page of a PDF draws, in mm from its upper left corner: straight strokes with their width, the middles of curved ones, and lettering. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly { readonly from: readonly [number, number]; readonly to: readonly [number, number]; readonly width: number }[];
  readonly bends: readonly (readonly [number, number])[];
  readonly words: readonly string[];
}

const MM = 25.4 / 72;

/** Reads the plain kind of PDF this project writes: one content stream a page, no nested transforms. */
export function readPdf(bytes: Uint8Array): PdfPage[] {
  const raw = Buffer.from(bytes).toString('latin1');
  const boxes = [...raw.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [Number(w) * MM, Number(h) * MM] as const);
  const streams = [...raw.matchAll(/\/Filter \/FlateDecode\n>>\nstream\n/g)].map(({ index, 0: head }) => {
    const from = index + head.length, to = raw.indexOf('\nendstream', from);
    return inflateSync(Buffer.from(bytes).subarray(from, to)).toString('latin1');
  });
  return boxes.map(([width, height], i) => pageOf(streams[i]!, width, height));
}

function pageOf(content: string, width: number, height: number): PdfPage {
  const strokes: PdfPage['strokes'][number][] = [], bends: PdfPage['bends'][number][] = [], words: string[] = [];
  let pen = 0, here: [number, number] = [0, 0], path: PdfPage['strokes'][number][] = [];
  const place = (x: string, y: string): [number, number] => [Number(x) * MM, height - Number(y) * MM];
  for (const line of content.split('\n')) {
    const parts = line.trim().split(/\s+/), operator = parts.at(-1);
    if (operator === 'w') pen = Number(parts[0]) * MM;
    if (operator === 'm') here = place(parts[0]!, parts[1]!);
    if (operator === 'l') { const to = place(parts[0]!, parts[1]!); path.push({ from: here, to, width: pen }); here = to; }
    if (operator === 'c') {
      const [a, b, to] = [0, 2, 4].map((k) => place(parts[k]!, parts[k + 1]!)) as [[number, number], [number, number], [number, number]];
      bends.push([(here[0] + 3 * a[0] + 3 * b[0] + to[0]) / 8, (here[1] + 3 * a[1] + 3 * b[1] + to[1]) / 8]);
      here = to;
    }
    if (operator === 'S') strokes.push(...path);
    if (operator === 'S' || operator === 'f') path = [];
    const text = /^\((.*)\) Tj$/.exec(line.trim());
    if (text) words.push(text[1]!.replace(/\\(.)/g, '$1'));
  }
  return { width, height, strokes, bends, words };
}
