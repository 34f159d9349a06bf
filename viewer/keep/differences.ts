import type { Figure } from '../../src/checks/figure.ts';
import type { FieldShown } from '../desk/protocol.ts';
import { figureWords, isLengthUnit, shownLength, type LengthUnit } from './lengths.ts';
import { isGroup, valueAt, type Json, type Sheet } from './sheet.ts';

/** One line of a table of differences, in words with units. */
export interface Difference { readonly label: string; readonly before: string; readonly after: string }

/** Lists longer than this are counted, not read out. */
const READ_OUT = 6;

/** What two lists of figures of one shoe say differently, as shown: in the order of the second, then what only the first has. */
export function figureDifferences(before: readonly Figure[], after: readonly Figure[], shown: LengthUnit = 'mm'): readonly Difference[] {
  const old = byKey(before), now = byKey(after), words = (figure: Figure | undefined): string => (figure ? figureWords(figure, shown) : 'none');
  return [...new Set([...now.keys(), ...old.keys()])]
    .map((key) => ({ label: (now.get(key) ?? old.get(key))!.label, before: words(old.get(key)), after: words(now.get(key)) }))
    .filter((row) => row.before !== row.after);
}

const byKey = (figures: readonly Figure[]): ReadonlyMap<string, Figure> => new Map(figures.map((figure) => [figure.key, figure]));

/** What two sheets say differently: in the order of the fields, then what the page has no field for. A group in place of a number is told by its own fields. Each length in the unit shown, or else in its own sheet's. */
export function sheetDifferences(before: Sheet, after: Sheet, fields: readonly FieldShown[], shown?: LengthUnit): readonly Difference[] {
  const known = new Map(fields.map((field) => [field.path, field]));
  return [...new Set([...known.keys(), ...placesIn(before), ...placesIn(after)])].flatMap((path) => {
    const field = known.get(path), [was, is] = [before, after].map((sheet) => valueAt(sheet, path));
    if (field?.either?.at === path && isGroup(is) && Object.keys(is).length > 0) return [];
    const numberOf = (value: Json | undefined): Json | undefined => (field?.either?.at === path && isGroup(value) ? undefined : value), old = said(numberOf(was), unitOf(field, before), shown), now = said(numberOf(is), unitOf(field, after), shown);
    if (old !== now) return [{ label: labelOf(path, field), before: old, after: now }];
    return same(was, is) ? [] : [{ label: labelOf(path, field), before: old, after: `${now}, altered` }];
  });
}

/** Places of values. A measure that tells how it was taken, and a shoe size, are one value. */
const placesIn = (group: Sheet, path = ''): string[] => Object.entries(group).flatMap(([name, value]) =>
  isGroup(value) && !('value' in value) && !('size' in value) ? placesIn(value, `${path}${name}.`) : [`${path}${name}`]);

function same(a: Json | undefined, b: Json | undefined): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const own = Object.entries(a), other = new Map<string, Json>(Object.entries(b));
  return own.length === other.size && own.every(([name, value]) => other.has(name) && same(value as Json, other.get(name)));
}

const unitOf = (field: FieldShown | undefined, sheet: Sheet): string => (field?.unit === 'length' ? String(sheet.units ?? 'mm') : field?.unit ?? '');

function said(value: Json | undefined, unit: string, shown?: LengthUnit): string {
  if (value === undefined) return 'not given';
  if (value === null) return 'left empty';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number' && shown && shown !== unit && isLengthUnit(unit)) return said(shownLength(value, unit, shown), shown);
  if (typeof value === 'number') return `${value}${unit === '' || unit === '°' ? '' : ' '}${unit}`;
  if (typeof value === 'string') return value;
  if (isGroup(value)) return saidGroup(value, unit, shown);
  if (value.length === 0) return 'none';
  return value.length > READ_OUT ? `${value.length} entries` : value.map((one) => said(one, unit, shown)).join('; ');
}

function saidGroup(group: Sheet, unit: string, shown?: LengthUnit): string {
  if ('value' in group) return [said(group.value, unit, shown), ...(group.how === undefined ? [] : [said(group.how, '')]), ...(group.twice === true ? ['taken twice'] : []), ...(group.accuracy === undefined ? [] : [`± ${said(group.accuracy, unit, shown)}`])].join(', ');
  if ('size' in group) return `${said(group.size, '')} ${said(group.system, '')}${group.allowance === undefined ? '' : `, ${said(group.allowance, unit, shown)} longer than the foot`}`;
  return Object.values(group).map((one) => said(one, '')).join(', ');
}

/** Fields the page asks for in other ways. */
const OTHER_LABELS: Readonly<Record<string, string>> = { units: 'lengths in', overrides: 'stops taken on a name', 'order.kind': 'what is made', 'last.heights': 'measured heights' };

/** "right: toe, wanted toe spring": the shoe, then the small group, then the field. */
function labelOf(path: string, field: FieldShown | undefined): string {
  const [, side, place = path] = /^(left|right)\.(.+)$/.exec(path) ?? [], steps = place.split('.');
  const label = field?.label ?? OTHER_LABELS[place] ?? apart(steps.at(-1)!), groups = steps.slice(1, -1).map(apart);
  return `${side === undefined ? '' : `${side}: `}${[...groups, label].join(', ')}`;
}

/** `heelPlates` as two words. */
const apart = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
