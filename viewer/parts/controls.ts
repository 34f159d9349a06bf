import type { FieldShown } from '../desk/protocol.ts';
import { isLengthUnit, shownLength, typedLength, type LengthUnit } from '../keep/lengths.ts';
import { button, el } from './dom.ts';
import { lengthTyped, numberTyped } from './numbers.ts';

/** What the form reads of a sheet, and how it writes. */
export interface SheetAccess {
  readonly valueAt: (path: string) => unknown;
  readonly set: (path: string, value: unknown) => void;
  /** Several at once, as one step. */
  readonly setAll: (values: readonly (readonly [path: string, value: unknown])[], label: string) => void;
  readonly settle: () => void;
  /** What lengths are shown and typed in. */
  readonly lengths: () => LengthUnit;
}

/** What counts where the field is empty, in mm, degrees or percent, or a word. */
export type Instead = (value: number | string | undefined) => void;

/** What is being typed in stays as it is, unless it is of another sheet: `anew`. */
export interface Control { readonly instead?: Instead; readonly input: HTMLElement; readonly update: (anew: boolean) => void; readonly forget?: () => void }

/** What one field is typed or chosen in. */
export function controlFor(field: FieldShown, sheet: SheetAccess, attributes: Readonly<Record<string, string>>): Control {
  const { path, kind } = field;
  if (kind === 'ticks') return ticks(field, sheet, attributes);
  if (kind === 'lines') return lines(field, sheet, attributes);
  if (kind === 'word' || kind === 'yes') return choice(field, sheet, attributes);
  const input = el('input', { ...attributes, type: kind === 'date' ? 'date' : 'text', inputmode: kind === 'number' ? 'decimal' : undefined, autocomplete: 'off', spellcheck: 'false' });
  const put = (): void => {
    const text = input.value.trim(), number = kind !== 'number' ? undefined : field.unit === 'length' ? lengthTyped(text, sheet.lengths()) : numberTyped(text);
    sheet.set(path, text === '' ? undefined : number === undefined ? text : withTold(inOwn(number)));
  };
  const own = (): LengthUnit => { const units = sheet.valueAt('units'); return isLengthUnit(units) ? units : sheet.lengths(); };
  const inOwn = (number: number): number => (field.unit === 'length' ? typedLength(number, sheet.lengths(), own()) : number);
  const inShown = (number: number): number => (field.unit === 'length' ? shownLength(number, own(), sheet.lengths()) : number);
  // A measure that was cleared to be typed anew is still the one that was taken so.
  let told: object | undefined;
  const withTold = (value: number): unknown => (told && sheet.valueAt(path) === undefined ? { ...told, value } : value);
  const remember = (): void => {
    const now = sheet.valueAt(path);
    if (now !== undefined) told = typeof now === 'object' && now !== null && 'value' in now ? now : undefined;
  };
  input.addEventListener('input', put);
  input.addEventListener('change', () => sheet.settle());
  const instead: Instead = (value) => { input.placeholder = typeof value === 'number' ? String(Number((field.unit === 'length' ? shownLength(value, 'mm', sheet.lengths()) : value).toFixed(3))) : value ?? ''; };
  return { input, instead, forget: () => { told = undefined; }, update: (anew) => { remember(); if (anew || document.activeElement !== input) input.value = inWords(sheet.valueAt(path), inShown); } };
}

/** A number, the number of a measure that tells more, or a shoe size. */
function inWords(value: unknown, shown: (number: number) => number): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number') return String(shown(value));
  if (typeof value !== 'object') return String(value);
  if ('value' in value) return inWords(value.value, shown);
  if ('size' in value && 'system' in value) return `${String(value.size)} ${String(value.system)}`;
  return '';
}

/** In the choice of a word: that a number is told in its place. */
const NUMBER = '#';

/** One of some words, yes or no; a number that may stand in a word's place is chosen beside them, and either takes the other off the sheet in the same step. */
function choice({ path, kind, words = [], orNumber }: FieldShown, sheet: SheetAccess, attributes: Readonly<Record<string, string>>): Control {
  const options = kind === 'yes' ? ['true', 'false'] : words, said = (word: string): string => (kind === 'yes' ? (word === 'true' ? 'yes' : 'no') : word);
  const chosen = (): unknown => (input.value === '' ? undefined : kind === 'yes' ? input.value === 'true' : input.value);
  let usual: string | undefined;
  const put = (): void => {
    if (!orNumber) { sheet.set(path, chosen()); return sheet.settle(); }
    const number = input.value === NUMBER, grade = String(sheet.valueAt(path) ?? usual ?? words[0]);
    sheet.setAll([[path, number ? undefined : chosen()], [orNumber.at, number ? orNumber.from[grade] : undefined]], path);
  };
  const none = el('option', { value: '' }, '·'), input = el('select', { ...attributes, onchange: put },
    none, ...options.map((word) => el('option', { value: word }, said(word))), orNumber && el('option', { value: NUMBER }, orNumber.words));
  return {
    input, instead: (value) => { usual = typeof value === 'string' ? value : undefined; none.textContent = usual === undefined ? '·' : `· ${usual}`; },
    update: () => { input.value = orNumber && sheet.valueAt(orNumber.at) !== undefined ? NUMBER : String(sheet.valueAt(path) ?? ''); },
  };
}

/** Writing on several lines, pasted as a rule: tabs and line ends are kept. */
function lines({ path }: FieldShown, sheet: SheetAccess, attributes: Readonly<Record<string, string>>): Control {
  const input = el('textarea', { ...attributes, rows: 4, spellcheck: 'false' });
  input.addEventListener('input', () => sheet.set(path, input.value.trim() === '' ? undefined : input.value));
  input.addEventListener('change', () => sheet.settle());
  return { input, update: (anew) => { const now = sheet.valueAt(path); if (anew || document.activeElement !== input) input.value = typeof now === 'string' ? now : ''; } };
}

/** A list of words that are ticked. Nothing ticked and none ticked are two things: the second is said with a button. */
function ticks({ path, words = [], some }: FieldShown, sheet: SheetAccess, attributes: Readonly<Record<string, string>>): Control {
  const boxes = words.map((word) => ({ word, box: el('input', { type: 'checkbox', onchange: () => put() }) }));
  const put = (): void => { sheet.set(path, boxes.filter(({ box }) => box.checked).map(({ word }) => word)); sheet.settle(); };
  const none = button('asked: none', () => { for (const { box } of boxes) box.checked = false; put(); });
  const input = el('span', { ...attributes, class: 'ticks', role: 'group', tabindex: -1 }, ...boxes.map(({ word, box }) => el('label', {}, box, ` ${word}`)), !some && none);
  return {
    input,
    update: () => {
      const now = sheet.valueAt(path), list = Array.isArray(now) ? now : [];
      for (const { word, box } of boxes) box.checked = list.includes(word);
      none.setAttribute('aria-pressed', String(Array.isArray(now) && list.length === 0));
    },
  };
}
