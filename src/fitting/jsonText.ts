import { fault, type Fault, type Path } from './faults.ts';

/** A sheet is six groups deep; more than this is no sheet. */
const DEPTH_MAX = 16;
/** A sheet with two hundred measured heights has some 700 values. */
const VALUES_MAX = 10_000;

/** How many letters of its line are shown before and after a break, and how the break is marked. */
const BEFORE = 36, AFTER = 24, MARK = ' <here> ';

type JsonReading =
  | { readonly ok: true; readonly value: unknown; readonly faults: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

interface Cursor { readonly text: string; at: number; values: number; readonly faults: Fault[] }

/** Thrown inside this file only: the text stops being JSON here. */
class Broken extends Error {}

/** What people type for JSON, and what to write instead. Tried in order where the text breaks. */
const SLIPS: readonly (readonly [RegExp, string])[] = [
  [/$/y, 'the text ends too early: a bracket or brace is not closed'],
  [/[+-]?(NaN|Infinity)/y, 'NaN and Infinity are no numbers: leave the field out when it was not measured'],
  [/['‘’“”]/y, 'text stands in straight double quotes (")'],
  [/\/[/*]|#/y, 'a sheet has no comments: use job.note'],
  [/[}\]]/y, 'a comma stands before the closing bracket, or a value is missing'],
  [/-?0\d/y, 'a number has no zeros in front'],
  [/[+.]|-\./y, 'a number begins with a digit, or with a minus and a digit'],
  [/"/y, 'a comma or a colon is missing before this text'],
  [/\d/y, 'a number has a decimal point, not a comma'],
  [/[A-Za-z]/y, 'a number stands alone without its unit, and names and words stand in double quotes'],
];

function slipAt(text: string, at: number): string {
  for (const [pattern, words] of SLIPS) {
    pattern.lastIndex = at;
    if (pattern.test(text)) return words;
  }
  return 'this does not belong here';
}

function broken(cursor: Cursor, words = slipAt(cursor.text, cursor.at)): never {
  const before = cursor.text.slice(0, cursor.at).split(/\r\n|\r|\n/);
  throw new Broken(`line ${before.length}, column ${(before.at(-1) ?? '').length + 1}: ${words}`);
}

/** The line a break stands in, marked; with the end of the line before where the break begins its own. */
function lineAround({ text, at }: Cursor): string {
  const lines = text.slice(0, at).split(/\r\n|\r|\n/), own = lines.at(-1) ?? '';
  const before = own.trim() === '' ? `${lines.slice(0, -1).findLast((line) => line.trim() !== '') ?? ''} ${own}` : own;
  const after = text.slice(at).split(/[\r\n]/, 1)[0] ?? '';
  const tidy = (part: string): string => part.replace(/\s+/g, ' ').trim(), [head, tail] = [tidy(before), tidy(after)];
  return `${head.length > BEFORE ? `…${head.slice(-BEFORE)}` : head}${MARK}${tail.length > AFTER ? `${tail.slice(0, AFTER)}…` : tail}`.trim();
}

/** Next mark that is not white space, without taking it. */
function peek(cursor: Cursor): string {
  const space = /[ \t\r\n]*/y;
  space.lastIndex = cursor.at;
  cursor.at += space.exec(cursor.text)?.[0].length ?? 0;
  return cursor.text[cursor.at] ?? '';
}

function take(cursor: Cursor, mark: string): void {
  if (peek(cursor) !== mark) broken(cursor);
  cursor.at += 1;
}

function takeText(cursor: Cursor): string {
  const { text, at } = cursor;
  let end = at + 1;
  while (end < text.length && text[end] !== '"') end += text[end] === '\\' ? 2 : 1;
  try {
    const value: unknown = JSON.parse(text.slice(at, end + 1));
    cursor.at = end + 1;
    return String(value);
  } catch {
    return broken(cursor, 'text in quotes is not closed on its line, or holds a \\ that means nothing');
  }
}

function takeNumber(cursor: Cursor, path: Path): number {
  const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?!\d)/y;
  number.lastIndex = cursor.at;
  const written = number.exec(cursor.text)?.[0] ?? broken(cursor);
  cursor.at += written.length;
  const value = Number(written);
  if (Number.isFinite(value)) return value;
  cursor.faults.push(fault(path, 'must be a number of ordinary size', written));
  return NaN;
}

const WORDS = new Map<string, unknown>([['true', true], ['false', false], ['null', null]]);

function takeWord(cursor: Cursor): unknown {
  const word = [...WORDS.keys()].find((known) => cursor.text.startsWith(known, cursor.at)) ?? broken(cursor);
  cursor.at += word.length;
  return WORDS.get(word);
}

function takeObject(cursor: Cursor, path: Path): unknown {
  const fields = new Map<string, unknown>();
  take(cursor, '{');
  if (peek(cursor) === '}') cursor.at += 1;
  else
    for (let more = true; more; cursor.at += 1) {
      if (peek(cursor) !== '"') broken(cursor);
      const name = takeText(cursor);
      take(cursor, ':');
      const value = takeValue(cursor, [...path, name]);
      if (fields.has(name)) cursor.faults.push(fault([...path, name], 'must be given only once', value));
      fields.set(name, value);
      more = peek(cursor) === ',';
      if (!more && peek(cursor) !== '}') broken(cursor);
    }
  return Object.fromEntries(fields);
}

function takeArray(cursor: Cursor, path: Path): unknown[] {
  const items: unknown[] = [];
  take(cursor, '[');
  if (peek(cursor) === ']') cursor.at += 1;
  else
    for (let more = true; more; cursor.at += 1) {
      items.push(takeValue(cursor, [...path, items.length]));
      more = peek(cursor) === ',';
      if (!more && peek(cursor) !== ']') broken(cursor);
    }
  return items;
}

function takeValue(cursor: Cursor, path: Path): unknown {
  if (path.length > DEPTH_MAX) broken(cursor, `groups stand more than ${DEPTH_MAX} deep in each other`);
  if (++cursor.values > VALUES_MAX) broken(cursor, `a sheet has at most ${VALUES_MAX} values`);
  const mark = peek(cursor);
  if (mark === '{') return takeObject(cursor, path);
  if (mark === '[') return takeArray(cursor, path);
  if (mark === '"') return takeText(cursor);
  return /[-\d]/.test(mark) ? takeNumber(cursor, path) : takeWord(cursor);
}

/**
 * Strict JSON (RFC 8259) to plain values. Unlike JSON.parse it says in trade words where and why a text is not JSON,
 * and it finds fields given twice and numbers too large to hold (they come back as NaN, with their fault).
 * A byte order mark in front is let pass. Never throws.
 */
export function readJson(text: string): JsonReading {
  const cursor: Cursor = { text, at: text.startsWith('\uFEFF') ? 1 : 0, values: 0, faults: [] };
  try {
    const value = takeValue(cursor, []);
    if (peek(cursor) !== '') broken(cursor, 'the sheet is closed and something follows');
    return { ok: true, value, faults: cursor.faults };
  } catch (error) {
    if (!(error instanceof Broken)) throw error;
    return { ok: false, faults: [fault([], `must be JSON (${error.message})`, lineAround(cursor))] };
  }
}
