import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { HAZARDS } from '../making/card/hazards.ts';
import type { DatedStep } from '../making/card/card.ts';
import type { Check, SideValue, Step, Target } from '../making/card/step.ts';
import { drawn, polyline, stroke, WIDER, words, type LineKind, type Mark } from './drawing.ts';
import type { Block } from './flow.ts';
import { wrapped, type Lettering } from './letters.ts';

/** The pieces a job card is laid out of. Letters are larger than on other papers: it is read at arm's length. */
export const CARD_WIDTH: Mm = 186;
const NAME: Lettering = { size: 5, bold: true }, BODY: Lettering = { size: 3.9 }, BOLD: Lettering = { size: 3.9, bold: true }, SMALL: Lettering = { size: 2.8 };
/** Steps are set in, so that tick box and number stand free beside them. */
const INDENT: Mm = 12;

/** What is drawn of a strip at a height, and how high it is. */
interface Row { readonly height: Mm; readonly marks: (left: Mm, top: Mm) => readonly Mark[] }

const stacked = (rows: readonly Row[]): Row => ({
  height: rows.reduce((sum, { height }) => sum + height, 0),
  marks: (left, top) => { let y = top; return rows.flatMap((row) => { const at = y; y += row.height; return row.marks(left, at); }); },
});

const lineOf = ({ size }: Lettering): Mm => size * 1.34;
function text(said: string, width: Mm, lettering: Lettering, from: Mm = 0): Row {
  const lines = wrapped(said, width / WIDER, lettering), height = lineOf(lettering);
  return { height: lines.length * height, marks: (left, top) => lines.map((one, i) => words(one, [left + from, top + 0.78 * height + i * height], lettering)) };
}

const box = ([x, y]: Point, width: Mm, height: Mm, line: LineKind = 'thin'): Mark => drawn(polyline([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], true), line);

/** A step that is never cut over two pages: tick box and number, what and how, numbers to hit, settings, clock, batches, cautions. */
export function stepBlock({ number, day, step }: DatedStep): Block {
  const inside = CARD_WIDTH - INDENT, rows = [
    titleRow(number, day, step), text(step.how, inside, BODY, INDENT), gap(0.8),
    ...step.targets.map((target) => targetRow(target, inside)), ...step.settings.map(({ what, value }) => text(`Set ${what}: ${value}. (common practice; machine and supplier first)`, inside, BODY, INDENT)),
    ...(step.wait ? [waitRow(step.wait, inside)] : []), ...(step.batches.length ? [batchRow(step.batches, inside)] : []), ...step.hazards.map((hazard) => cautionRow(HAZARDS[hazard], inside)), gap(1.6),
  ];
  const { height, marks } = stacked(rows);
  return { height, marks: (left, top) => [...marks(left, top), stroke([left, top + height - 0.4], [left + CARD_WIDTH, top + height - 0.4], 'thin', 'ink')] };
}

const gap = (height: Mm): Row => ({ height, marks: () => [] });

/** A box to tick, the number, the name, the shoes, the day, and room for initials. */
function titleRow(number: number, day: number, { name, sides }: Step): Row {
  const room = CARD_WIDTH - INDENT - 66, lines = wrapped(name, room / WIDER, NAME), shoes = sides.join(' + ');
  return {
    height: Math.max(9, lines.length * lineOf(NAME) + 2),
    marks: (left, top) => [
      box([left + 1, top + 1.6], 6, 6, 'visible'), ...lines.map((one, i) => words(`${i === 0 ? `${number}  ` : ''}${one}`, [left + INDENT, top + 6.4 + i * lineOf(NAME)], NAME)),
      words(shoes, [left + CARD_WIDTH - 48, top + 6.4], { ...BODY, anchor: 'end' }), words(`day ${day}`, [left + CARD_WIDTH - 45, top + 6.4], BOLD),
      words('by', [left + CARD_WIDTH - 28, top + 6.4], SMALL), box([left + CARD_WIDTH - 23, top + 1.2], 22, 7),
    ],
  };
}

/** "L 46.0 mm". */
const sideWords = ({ side, text: said }: SideValue): string => `${side === 'left' ? 'L' : 'R'} ${said}`;
const READING: Mm = 25;

/** What to hit, each shoe's number, how far off, and boxes for what was found. */
function targetRow({ what, values, within }: Target, width: Mm): Row {
  const readings = values.length || 1, room = width - readings * (READING + 3) - 2;
  const said = stacked([text(what, room, BODY, INDENT + 2), text([...values.map(sideWords), within].filter(Boolean).join(';  '), room, BOLD, INDENT + 2)]);
  const names = values.length ? values.map(({ side }) => `${side === 'left' ? 'L' : 'R'} found`) : ['found'];
  return {
    height: Math.max(said.height, 9) + 1.6,
    marks: (left, top) => [
      stroke([left + INDENT, top + 0.6], [left + INDENT, top + said.height], 'visible', 'ink'), ...said.marks(left, top),
      ...names.flatMap((name, i) => { const x = left + CARD_WIDTH - (names.length - i) * (READING + 3) + 2; return [box([x, top + 0.8], READING, 8), words(name, [x + 1, top + 3.3], { size: 2.3 })]; }),
    ],
  };
}

const VERBS = { dry: 'Let dry', press: 'Press and hold', cure: 'Let cure', rest: 'Let rest', print: 'Printing time' } as const;

/** A time, its clock boxes, and what it rests on. */
function waitRow({ what, time, basis }: NonNullable<Step['wait']>, width: Mm): Row {
  const room = width - 66, said = stacked([text(`${VERBS[what]}: ${time}`, room, BOLD, INDENT + 2), text(basis, room, SMALL, INDENT + 2)]);
  const clock = (name: string, x: Mm, top: Mm): Mark[] => [box([x, top + 0.8], 30, 10), words(name, [x + 1, top + 3.5], { size: 2.3 }), words(':', [x + 17, top + 8.2], { size: 5, bold: true, anchor: 'middle' })];
  return {
    height: Math.max(said.height, 11) + 1.6,
    marks: (left, top) => [...said.marks(left, top), ...clock('start', left + CARD_WIDTH - 63, top), ...clock('end', left + CARD_WIDTH - 31, top)],
  };
}

function batchRow(batches: readonly string[], width: Mm): Row {
  const each = width / batches.length;
  return {
    height: 9,
    marks: (left, top) => batches.flatMap((batch, i) => {
      const x = left + INDENT + i * each;
      return [words(`batch, ${batch}`, [x, top + 3], { size: 2.6 }), stroke([x, top + 7.8], [x + each - 4, top + 7.8], 'thin', 'ink')];
    }),
  };
}

/** In a thick frame, with the word, so that it stands out on any print. */
function cautionRow(said: string, width: Mm): Row {
  const label = 24, body = text(said, width - label - 4, BOLD, INDENT + label);
  return {
    height: body.height + 3.4,
    marks: (left, top) => [box([left + INDENT, top + 0.8], width, body.height + 1.8, 'visible'), words('CAUTION', [left + INDENT + 2, top + 1.7 + 0.78 * lineOf(BOLD)], { size: 4.2, bold: true }), ...body.marks(left, top + 1.6)],
  };
}

export const checkHead: Block = {
  height: 6, staysWithNext: true,
  marks: (left, top) => [words('look at', [left + 10, top + 4.4], SMALL), words('this job', [left + 76, top + 4.4], SMALL), words('passes', [left + 121, top + 4.4], SMALL), words('found', [left + CARD_WIDTH - 22, top + 4.4], SMALL)],
};

/** One line of a list: a box to tick, what to look at, this job's numbers, what passes, room for what was found. */
export function checkBlock({ name, values, pass, outside }: Check): Block {
  const columns = [text(name, 64, BODY, 10), stacked(values.map((value) => text(sideWords(value), 44, BOLD, 76))), stacked([text(pass, 42, BODY, 121), ...(outside === undefined ? [] : [text(outside, 42, BOLD, 121)])])], height = Math.max(9, ...columns.map((one) => one.height + 2));
  return {
    height, head: checkHead,
    marks: (left, top) => [
      box([left + 1, top + 1.7], 5.5, 5.5, 'visible'), ...columns.flatMap(({ marks }) => marks(left, top + 1)), box([left + CARD_WIDTH - 22, top + 1], 22, Math.min(8, height - 1.6)),
      stroke([left, top + height - 0.3], [left + CARD_WIDTH, top + height - 0.3], 'thin', 'ink'),
    ],
  };
}

export const sentence = (said: string, lettering: Lettering = BODY): Block => stacked([text(said, CARD_WIDTH, lettering), gap(1.5)]);
export function bigHeading(said: string): Block {
  return { height: 12, staysWithNext: true, marks: (left, top) => [words(said, [left, top + 8.5], { size: 6, bold: true })] };
}
/** Empty lines to write on. */
export const writingLines = (count: number): Block => ({ height: count * 9, marks: (left, top) => Array.from({ length: count }, (_, i) => stroke([left, top + (i + 1) * 9 - 1], [left + CARD_WIDTH, top + (i + 1) * 9 - 1], 'thin', 'ink')) });
