import type { Design } from '../checks/design.ts';
import { estimatesBehind, figuresOf } from '../checks/figures.ts';
import type { Finding } from '../checks/finding.ts';
import { inputOf } from '../checks/inputs.ts';
import { capital, inUnitOf } from '../checks/say.ts';
import type { Mm } from '../geometry/units.ts';
import { linearSpread } from '../spread/linear.ts';
import { againWords } from '../spread/words.ts';
import { words, type Box, type Mark } from './drawing.ts';
import { LEAST_LETTERS, linesOf } from './fitted.ts';

/** What is said in a column, worst first. What stands out is never left away. */
export interface Said { readonly text: string; readonly bold: boolean; readonly kept: boolean; readonly heads?: boolean }

/** What a maker must know before cutting, in short: stops, warnings, what to measure again, what was estimated. */
export function inShort(design: Design, more: string): readonly Said[] {
  const { findings } = design, of = (severity: Finding['severity']): readonly Finding[] => findings.filter((finding) => finding.severity === severity);
  const notes = of('note').filter(({ code }) => code !== ESTIMATED).length, warns = of('warn'), stops = of('stop');
  const again = linearSpread(design).flatMap((spread, i) => { const text = againWords(design.fitting, spread); return text === undefined ? [] : [`${capital(design.shoes[i]!.side)}: ${inUnitOf(design.fitting.units, firstSentences(text, 1))}`]; });
  return [
    head('Before cutting'), ...(stops.length + warns.length ? [] : [plain('No stops, no warnings.')]),
    ...stops.map((finding) => kept(`STOP ${placeOf(finding)}: ${firstSentences(finding.text, 1)}`)), ...warns.map((finding) => plain(`WARNING ${placeOf(finding)}: ${firstSentences(finding.text, 1)}`)),
    plain(`${notes === 0 ? 'No notes' : notes === 1 ? '1 note besides what was estimated' : `${notes} notes besides what was estimated`}${notes + stops.length + warns.length ? `; all in full in ${more}` : ''}.`),
    ...(again.length ? [head('Measure again'), ...again.map(plain)] : []),
    ...estimatesOf(design),
  ];
}

const ESTIMATED = 'ESTIMATED';
const head = (text: string): Said => ({ text, bold: true, kept: true, heads: true });
const kept = (text: string): Said => ({ text, bold: true, kept: true });
const plain = (text: string): Said => ({ text, bold: false, kept: false });
const placeOf = ({ side, where }: Finding): string => [side, where].filter(Boolean).join(', ');

/** The first sentences of a text; a dot between figures ends none. */
export const firstSentences = (text: string, count: number): string => text.split(/(?<=[.?!]) (?=[A-Z0-9])/).slice(0, count).join(' ');

function estimatesOf({ shoes, fitting }: Design): readonly Said[] {
  const listed = shoes.flatMap((shoe): string[] => {
    const labels = estimatesBehind(shoe, figuresOf(shoe, fitting).map(({ key }) => key)).map((field) => inputOf(field).label);
    return labels.length ? [`${capital(shoe.side)}: ${labels.join(', ')}.`] : [];
  });
  return listed.length ? [head('Estimated or left to a default (est.)'), ...listed.map(plain)] : [kept('Every measure was taken.')];
}

const SIZES: readonly Mm[] = [3.3, 3.18, 2.95, 2.75, LEAST_LETTERS], LINE = 1.32, GAP: Mm = 0.9;

interface Laid { readonly said: Said; readonly lines: readonly string[]; readonly size: Mm }
const laidAt = (said: readonly Said[], width: Mm, size: Mm): Laid[] => said.map((one) => ({ said: one, size, lines: linesOf(one.text, width, { size, bold: one.bold }) }));
const highOf = (laid: readonly Laid[]): Mm => laid.reduce((sum, { lines, size }) => sum + lines.length * size * LINE + GAP, 0);

/**
 * Lays what is said into a column in the largest letters in which all of it goes in. Where even the smallest are too large,
 * the last of what may be left away is, and a line tells how many and where they stand.
 */
export function sayIn(said: readonly Said[], { left, right, top, bottom }: Box, more: string): Mark[] {
  const width = right - left, room = bottom - top, size = SIZES.find((one) => highOf(laidAt(said, width, one)) <= room);
  const laid = size === undefined ? asMuch(said, width, room, more) : laidAt(said, width, size);
  let y = top;
  return laid.flatMap(({ said: { bold }, lines, size: letters }) => {
    const marks = lines.map((line, i) => words(line, [left, y + (i + 0.78) * letters * LINE], { size: letters, bold }));
    y += lines.length * letters * LINE + GAP;
    return marks;
  });
}

function asMuch(said: readonly Said[], width: Mm, room: Mm, more: string): readonly Laid[] {
  for (let left = 1; left <= said.length; left++) {
    const shown = withoutLast(said, left), told = [...shown, plain(`And ${said.filter(({ heads }) => !heads).length - shown.filter(({ heads }) => !heads).length} more: see ${more}.`)], laid = laidAt(told, width, LEAST_LETTERS);
    if (highOf(laid) <= room || shown.every((one) => one.kept)) return inRoom(laid, room);
  }
  return [];
}

function withoutLast(said: readonly Said[], count: number): readonly Said[] {
  const loose = said.flatMap((one, i) => (one.kept ? [] : [i])), gone = new Set(loose.slice(Math.max(0, loose.length - count)));
  const left = said.filter((_, i) => !gone.has(i));
  return left.filter(({ heads }, i) => !heads || (i + 1 < left.length && !left[i + 1]!.heads));
}

/** Even what is kept is cut short by lines before it runs off the column, the longest first. */
function inRoom(laid: readonly Laid[], room: Mm): readonly Laid[] {
  let now = laid, most = Math.max(1, ...laid.map(({ lines }) => lines.length));
  while (highOf(now) > room && most > 1) { most--; const few = most; now = laid.map((one) => ({ ...one, lines: one.lines.length > few ? [...one.lines.slice(0, few - 1), `${one.lines[few - 1]}…`] : one.lines })); }
  while (highOf(now) > room && now.length > 1) now = [...now.slice(0, -2), now.at(-1)!];
  return now;
}
