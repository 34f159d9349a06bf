import { GRAVITY, degrees } from '../geometry/units.ts';
import type { StanceRow } from './fitting.ts';

/** A table of a walk as it was pasted: its rows, or every line that is none. */
export type TableReading = { readonly ok: true; readonly rows: readonly StanceRow[] } | { readonly ok: false; readonly rules: readonly string[] };

/** Widest angles a shank is believed to lean at in walking, degrees, and the hardest push of one foot, in body weights. */
const SHANK = [-60, 85] as const, PUSH_MOST = 3;
/** Above this a push is told in newtons, up to it in percent of body weight: nobody weighs less than that, and no walk pushes harder. */
const PERCENT_MOST = 200;
const LEAST_ROWS = 5, FAULTS_TOLD = 4;

interface Line { readonly number: number; readonly text: string; readonly cells: readonly string[] }

/**
 * Reads share of stance (0 to 100 %), shank angle (degrees, forward of upright positive) and, where there is a third column,
 * the upright push (N, or % of body weight). Columns stand apart by tabs, semicolons, commas or spaces; decimals by a point,
 * or by a comma beside tabs and semicolons. A first line of words is passed over.
 * @param mass kg, to tell newtons as shares of body weight
 */
export function stanceTable(text: string, mass: number | undefined): TableReading {
  const lines = linesOf(text), [first] = lines, columns = first?.cells.length ?? 0, told = lines.map((line) => numbersOf(line, columns));
  const wrong = told.filter((one) => typeof one === 'string');
  if (wrong.length > 0) return { ok: false, rules: wrong.slice(0, FAULTS_TOLD) };
  const numbers = told.filter((one) => typeof one !== 'string'), rule = wholeRule(numbers, columns) ?? orderRule(numbers, lines) ?? turningRule(numbers) ?? pushRule(numbers, mass, lines);
  if (rule !== undefined) return { ok: false, rules: [rule] };
  const weight = inNewtons(numbers) ? (mass ?? NaN) * GRAVITY : 100;
  return { ok: true, rows: numbers.map(([share = NaN, shank = NaN, push]) => ({ share: share / 100, shank: degrees(shank), ...(push === undefined ? {} : { push: push / weight }) })) };
}

/** What parts the columns, the surest sign first. */
const SEPARATORS = [/\t/, /;/, /,/, /\s+/] as const;

function linesOf(text: string): Line[] {
  const written = text.split(/\r\n|\n|\r/).map((line, i) => ({ number: i + 1, text: line.trim() })).filter((line) => line.text !== '');
  const table = written.filter((line, i) => i > 0 || /^[-+−]?[\d.,]/.test(line.text)), apart = SEPARATORS.find((sign) => table.some((line) => sign.test(line.text))) ?? /\s+/;
  return table.map((line) => ({ ...line, cells: line.text.split(apart).map((cell) => cell.trim()) }));
}

const NAMES = ['share of stance', 'shank angle', 'push'] as const;

/** The numbers of a line, or what is wrong with it. */
function numbersOf({ number, text, cells }: Line, columns: number): readonly number[] | string {
  if (cells.some((cell) => /\d\s+[-+−\d]/.test(cell))) return `must have its columns apart by tabs or semicolons where decimals have a comma; line ${number} has "${text}"`;
  if (columns < 2 || columns > 3 || cells.length !== columns)
    return `must have two columns, share of stance and shank angle, or three with the push, the same on every line; line ${number} has ${cells.length}: "${text}"`;
  const numbers = cells.map((cell) => (/^[-+−]?(\d+([.,]\d*)?|[.,]\d+)$/.test(cell) ? Number(cell.replace(',', '.').replace('−', '-')) : NaN));
  const at = numbers.findIndex((value, i) => !isWithin(value, i));
  return at < 0 ? numbers : `must have ${WANTED[at]} as ${NAMES[at]}; line ${number} has "${cells[at]}"`;
}

const WANTED = ['a number from 0 to 100 %', `a number from ${SHANK[0]} to ${SHANK[1]} °`, 'a number from 0 up, N or % of body weight,'] as const;
const isWithin = (value: number, column: number): boolean =>
  (column === 0 ? value >= 0 && value <= 100 : column === 1 ? value >= SHANK[0] && value <= SHANK[1] : value >= 0);

type Numbers = readonly (readonly number[])[];
const shareOf = (row: readonly number[] | undefined): number => row?.[0] ?? NaN;

function wholeRule(numbers: Numbers, columns: number): string | undefined {
  if (columns === 0 || numbers.length < LEAST_ROWS) return `must have at least ${LEAST_ROWS} lines of numbers; it has ${numbers.length}`;
  if (shareOf(numbers[0]) !== 0 || shareOf(numbers.at(-1)) !== 100) return `must run from 0 to 100 % of stance, heel contact to toe-off; it runs from ${shareOf(numbers[0])} to ${shareOf(numbers.at(-1))}`;
  return undefined;
}

function orderRule(numbers: Numbers, lines: readonly Line[]): string | undefined {
  const back = numbers.findIndex((row, i) => i > 0 && !(shareOf(row) > shareOf(numbers[i - 1])));
  return back < 0 ? undefined : `must have its shares of stance rising; line ${lines[back]?.number} has ${shareOf(numbers[back])} after ${shareOf(numbers[back - 1])}`;
}

/** With the signs of another laboratory a walk would be read backwards. */
function turningRule(numbers: Numbers): string | undefined {
  const contact = numbers[0]?.[1] ?? NaN, toeOff = numbers.at(-1)?.[1] ?? NaN;
  return toeOff > contact ? undefined : `must have a shank that turns forward over the standing foot, forward of upright positive; it goes from ${contact} to ${toeOff} °`;
}

const hardest = (numbers: Numbers): number => Math.max(...numbers.map(([, , push]) => push ?? 0));
const inNewtons = (numbers: Numbers): boolean => hardest(numbers) > PERCENT_MOST;

function pushRule(numbers: Numbers, mass: number | undefined, lines: readonly Line[]): string | undefined {
  const most = hardest(numbers), line = lines[numbers.findIndex(([, , push]) => push === most)]?.number, isTold = numbers.some(([, , push]) => push !== undefined);
  if (isTold && most <= PUSH_MOST) return `must tell the push in N or % of body weight; the hardest, on line ${line}, is ${most}${most > 0 ? `: in body weights that would be ${Math.round(100 * most)} %` : ''}`;
  if (!inNewtons(numbers)) return undefined;
  if (mass === undefined) return `must tell the push in % of body weight where the body mass is not given (wearer.mass); line ${line} has ${most}`;
  return most <= PUSH_MOST * mass * GRAVITY ? undefined : `must have a push of at most ${PUSH_MOST} body weights, ${Math.round(PUSH_MOST * mass * GRAVITY)} N; line ${line} has ${most}`;
}
