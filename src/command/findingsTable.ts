import type { Finding, FindingUnit, Severity } from '../checks/finding.ts';
import { stopsLeft } from '../checks/overrides.ts';
import { MM_PER_INCH } from '../geometry/units.ts';
import type { Screen } from './world.ts';
import { counted } from './sheetFile.ts';
import { leftOf, table, wrapped, type Column } from './textTable.ts';

const WORDS: Record<Severity, string> = { stop: 'STOP', warn: 'WARN', note: 'note' };
/** Red and yellow of the terminal's own palette; the word says the same. */
const INKS: Partial<Record<Severity, string>> = { stop: '1;31', warn: '33' };

/** `1 stop, 2 warnings, no notes`, and how many stops were taken on the maker's name. */
export function tally(findings: readonly Finding[]): string {
  const count = (severity: Severity): number => findings.filter((finding) => finding.severity === severity).length;
  const left = stopsLeft(findings).length, taken = count('stop') - left;
  const ownName = taken === 0 ? '' : `${counted(taken, 'stop')} taken on the maker's name, `;
  return `${counted(left, 'stop')}, ${ownName}${counted(count('warn'), 'warning')}, ${counted(count('note'), 'note')}`;
}

/** The findings as an aligned table, no wider than the screen. `inches` repeats lengths in inches. */
export function findingsTable(findings: readonly Finding[], { columns, colour }: Pick<Screen, 'columns' | 'colour'>, inches: boolean): string {
  const ink = (line: string, severity: Severity): string => colour && INKS[severity] ? `\u001b[${INKS[severity]}m${line}\u001b[0m` : line;
  return (columns < NARROW ? paragraphs(findings, columns, ink, inches) : rows(findings, columns, ink, inches)).map((line) => `${line}\n`).join('');
}

type Ink = (line: string, severity: Severity) => string;

/** Below this a table leaves no room for sentences; above the other the basis gets a column of its own. */
const NARROW = 72, WIDE = 120;
const WHERE = 18, NUMBERS = 19, BASIS = 26;

function rows(findings: readonly Finding[], columns: number, ink: Ink, inches: boolean): string[] {
  const severity: Column = { head: '', most: 5, ink: (line, row) => ink(line, findings[row]!.severity) };
  const wide = columns >= WIDE, fixed = [5, 5, WHERE, NUMBERS, ...(wide ? [BASIS] : [])];
  const heads: Column[] = [severity, { head: 'side', most: 5 }, { head: 'where', most: WHERE },
    { head: 'finding', most: leftOf(columns, fixed) }, { head: 'measured / limit', most: NUMBERS }, ...(wide ? [{ head: 'basis', most: BASIS }] : [])];
  return table(heads, findings.map((finding) => [
    WORDS[finding.severity], finding.side ?? 'pair', finding.where,
    wide ? words(finding) : `${words(finding)}\nBasis: ${finding.basis}`, numbers(finding, inches), finding.basis,
  ].slice(0, heads.length)));
}

function paragraphs(findings: readonly Finding[], columns: number, ink: Ink, inches: boolean): string[] {
  return findings.flatMap((finding) => {
    const { severity, side = 'pair', where, basis } = finding, measured = numbers(finding, inches).replace('\n', ', ');
    const [first = '', ...rest] = wrapped(`${WORDS[severity]} ${side}, ${where}: ${words(finding)} ${measured && `${measured}. `}Basis: ${basis}`, columns);
    return [first.replace(WORDS[severity], ink(WORDS[severity], severity)), ...rest, ''];
  });
}

const words = ({ text, overriddenBy }: Finding): string => overriddenBy ? `${text}\nTaken by ${overriddenBy.by}: ${overriddenBy.reason}` : text;

/** `4.2 mm / 5 mm`; lengths in inches on a line of their own. */
function numbers({ measured, limit, unit, places }: Finding, inches: boolean): string {
  const given = [measured, limit].filter((value) => value !== undefined);
  const line = (values: readonly number[], name: FindingUnit | 'in', digits: number): string =>
    apart(values, digits, places !== undefined || FULL.includes(name)).map((text) => `${text}${name === 'deg' ? '°' : ` ${name}`}`.trimEnd()).join(' / ');
  if (given.length === 0) return '';
  const own = line(given, unit, places ?? PLACES[unit]);
  return inches && unit === 'mm' ? `${own}\n${line(given.map((mm) => mm / MM_PER_INCH), 'in', 3)}` : own;
}

const PLACES: Record<FindingUnit, number> = { mm: 1, g: 0, deg: 1, '%': 2, 'g/cm³': 2, kg: 1, times: 2, 'N·m/kg': 2, '': 2 };

/** Told with all their digits, as the sentence beside them does. */
const FULL: readonly (FindingUnit | 'in')[] = ['%', 'times'];

/** Nearer than this two values are one: the rest is the noise of their sums. */
const SAME = 1e-4;

/** Values rounded, with more decimals where two that differ would look alike. */
function apart(values: readonly number[], places: number, full: boolean): string[] {
  const texts = values.map((value) => (full ? value.toFixed(places) : String(Number(value.toFixed(places))))), [one = 0, other = one] = values;
  return texts[0] === texts[1] && Math.abs(one - other) > SAME ? apart(values, places + 1, full) : texts;
}
