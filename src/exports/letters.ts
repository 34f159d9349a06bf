import type { Mm } from '../geometry/units.ts';

/**
 * How wide letters run, so that a drawing knows its boxes without a screen. Widths in thousandths of the letter size.
 * Source: the metrics published for the Helvetica and Helvetica-Bold of every PDF reader (from memory; compared with a PDF
 * writer's by the test).
 */
const PLAIN: Readonly<Record<number, string>> = {
  191: "'", 222: 'ijl', 260: '|', 278: ' !,./:;I[\\]ftíìîï·', 333: '()-`r³²', 334: '{}', 355: '"', 389: '*', 400: '°', 469: '^',
  500: 'Jckvxyzsç', 556: '#$0123456789?L_abdeghnopquäöüáàâéèêóòôúùûñå–', 584: '+<=>~±×', 611: 'FTZßø', 667: '&ABEKPSVXYÄÁÀÂÉÈÊ',
  722: 'CDHNRUwÜÚÙÛÑ', 778: 'GOQÖÓÒÔØ', 833: 'Mm', 889: '%', 944: 'W', 1000: '—', 1015: '@',
};
const BOLD: Readonly<Record<number, string>> = {
  238: "'", 278: ' ,./I\\ijlíìîï·', 280: '|', 333: '!()-:;[]`ft³²', 389: '*r{}', 400: '°', 474: '"', 500: 'z', 556: '#$0123456789J_aceksvxyäéèêáàâçå–',
  584: '+<=>^~±×', 611: '?FLTZbdghnopquöüßóòôúùûñø', 667: 'EPSVXYÉÈÊ', 722: '&ABCDHKNRUÄÁÀÂÜÚÙÛÑ', 778: 'GOQwÖÓÒÔØ', 833: 'M', 889: '%m', 944: 'W', 975: '@', 1000: '—',
};
const tableOf = (widths: Readonly<Record<number, string>>): ReadonlyMap<string, number> =>
  new Map(Object.entries(widths).flatMap(([width, letters]) => [...letters].map((letter) => [letter, Number(width) / 1000] as const)));
const WIDTHS = { plain: tableOf(PLAIN), bold: tableOf(BOLD) };
/** A letter not listed counts as one of the wider ones. */
const OTHER = 0.72;

/** Letter size of a line of which capitals stand 0.72 times as high. */
export interface Lettering { readonly size: Mm; readonly bold?: boolean }

export function textWidth(text: string, { size, bold = false }: Lettering): Mm {
  const widths = bold ? WIDTHS.bold : WIDTHS.plain;
  let sum = 0;
  for (const letter of text) sum += widths.get(letter) ?? OTHER;
  return sum * size;
}

/** Letter sizes: values and labels, headings, the small captions of a title block. */
export const LETTERS = { label: 3.2, heading: 4.2, caption: 2.3 } as const;

/** Where the face asked for is missing, the one taken instead runs wider by up to this. */
export const WIDER = 1.1;
export const roomFor = (text: string, lettering: Lettering = { size: LETTERS.label }): Mm => textWidth(text, lettering) * WIDER;

/** Breaks a sentence into lines no wider than a column; a word wider than the column is cut. */
export function wrapped(text: string, width: Mm, lettering: Lettering): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean).flatMap((whole) => cut(whole, width, lettering))) {
    const longer = line ? `${line} ${word}` : word;
    if (line && textWidth(longer, lettering) > width) { lines.push(line); line = word; } else line = longer;
  }
  return line ? [...lines, line] : lines;
}

function cut(word: string, width: Mm, lettering: Lettering): string[] {
  if (textWidth(word, lettering) <= width) return [word];
  const letters = [...word];
  let fits = 1;
  while (fits < letters.length && textWidth(letters.slice(0, fits + 1).join(''), lettering) <= width) fits++;
  return [letters.slice(0, fits).join(''), ...cut(letters.slice(fits).join(''), width, lettering)];
}
