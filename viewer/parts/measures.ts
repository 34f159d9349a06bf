import type { FieldShown, Used } from '../desk/protocol.ts';
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

export interface Measures {
  /** Puts the sheet's values into the fields, except the one that is being typed in. */
  readonly show: () => void;
  /** Marks fields that must be corrected, by path. */
  readonly faults: (texts: ReadonlyMap<string, string>) => void;
  /** Shows in the empty fields, greyed, what counts instead. */
  readonly used: (used: Used) => void;
  readonly focus: (path: string) => void;
  /** "Right foot, foot length" for a field, or for a group of them; undefined where the page asks for none such. */
  readonly nameOf: (path: string) => string | undefined;
  /** Another sheet comes: what cleared measures told is forgotten. */
  readonly forget: () => void;
}

/** Groups a maker knows, in the order of the work; each opens and closes. */
const GROUPS: readonly (readonly [title: string, starts: string])[] = [
  ['The job', 'job'], ['The client', 'wearer'],
  ['Left foot', 'left.foot'], ['Left last', 'left.last'], ['Left order', 'left.order'],
  ['Right foot', 'right.foot'], ['Right last', 'right.last'], ['Right order', 'right.order'],
  ['Workshop', 'making'],
];
const OPEN = /foot$|order$/;

/** Every field of the sheet as a form. A field left empty is left out of the sheet. */
export function measures(host: HTMLElement, fields: readonly FieldShown[], sheet: SheetAccess): Measures {
  const rows: (Row & { readonly field: FieldShown; readonly group: string })[] = [], seen = new Map<string, { readonly value: unknown; readonly units: string }>();
  let anew = false;
  const groups = GROUPS.map(([title, starts]) => {
    const own = fields.filter(({ path }) => path.startsWith(`${starts}.`));
    const box = el('details', { class: 'group', open: OPEN.test(starts) }, el('summary', {}, title), kindChoice(starts, sheet));
    for (const field of own) {
      const made = rowFor(field, sheet);
      rows.push({ field, group: starts, ...made });
      box.append(made.row);
    }
    return { starts, box };
  });
  const helpLine = el('p', { class: 'help-line', 'aria-hidden': 'true' });
  host.append(unitsChoice(sheet), ...groups.map(({ box }) => box), helpLine);
  host.addEventListener('focusin', (event) => { const help = (event.target as Element).closest('.row')?.querySelector('.help')?.textContent; if (help) helpLine.textContent = help; });
  const present = (starts: string): boolean => !/^(left|right)/.test(starts) || sheet.valueAt(starts.split('.')[0]!) !== undefined || starts.endsWith('.order');
  return {
    show: () => {
      for (const { starts, box } of groups) {
        box.hidden = !present(starts) || (starts.endsWith('.foot') && sheet.valueAt(`${starts.split('.')[0]}.order.kind`) !== 'rocker');
        for (const choice of box.querySelectorAll<HTMLSelectElement>('select.kind')) choice.value = String(sheet.valueAt(`${starts}.kind`) ?? '');
      }
      for (const choice of host.querySelectorAll<HTMLSelectElement>('select.units')) choice.value = String(sheet.valueAt('units') ?? '');
      const units = `${String(sheet.valueAt('units'))} ${sheet.lengths()}`, active = document.activeElement;
      // While a hand drags all groups but one stay as they are: each part of a sheet that is not changed is the very same.
      const same = new Set(groups.flatMap(({ starts }) => {
        const value = sheet.valueAt(starts), before = seen.get(starts);
        seen.set(starts, { value, units });
        return before && before.value === value && before.units === units && !anew ? [starts] : [];
      }));
      for (const { field, group, row, update } of rows) {
        if (same.has(group) && !row.contains(active)) continue;
        row.hidden = field.forKind !== undefined && sheet.valueAt(`${field.path.split('.')[0]}.order.kind`) !== field.forKind;
        update(anew);
      }
      anew = false;
    },
    faults: (texts) => {
      for (const { field, row, fault, input } of rows) {
        const text = texts.get(field.path);
        fault.textContent = text ?? '';
        row.classList.toggle('faulty', text !== undefined);
        if (text === undefined) input.removeAttribute('aria-invalid'); else input.setAttribute('aria-invalid', 'true');
      }
    },
    forget: () => { anew = true; for (const { forget } of rows) forget(); },
    used: (used) => { for (const { field, instead } of rows) instead(used[field.path]); },
    nameOf: (path) => {
      const group = GROUPS.find(([, starts]) => path === starts || path.startsWith(`${starts}.`)), field = fields.find((one) => one.path === path);
      if (!group) return undefined;
      if (path === group[1]) return group[0].toLowerCase();
      return field || fields.some((one) => one.path.startsWith(`${path}.`)) ? `${group[0]}, ${field?.label ?? inWordsOf(path.slice(group[1].length + 1))}` : undefined;
    },
    focus: (path) => {
      if (path === 'units') return host.querySelector<HTMLSelectElement>('select.units')?.focus();
      const found = rows.find(({ field, row }) => field.path === path && !row.hidden) ?? rows.find(({ field, row }) => !row.hidden && (field.path.startsWith(`${path}.`) || path.startsWith(`${field.path}.`)));
      if (!found) return;
      found.row.closest('details')!.open = true;
      found.input.focus();
      found.row.scrollIntoView({ block: 'nearest' });
    },
  };
}

function unitsChoice(sheet: SheetAccess): HTMLElement {
  return labelled('Lengths on this sheet are in', el('select', { class: 'units', name: 'units', onchange: (event: Event) => { sheet.set('units', (event.target as HTMLSelectElement).value); sheet.settle(); } },
    el('option', { value: '', disabled: true }, 'mm or inches?'), el('option', { value: 'mm' }, 'mm'), el('option', { value: 'in' }, 'inches')));
}

const labelled = (words: string, control: HTMLElement): HTMLElement => el('label', { class: 'row' }, el('span', { class: 'words' }, words), control);

/** What is made for a shoe. */
function kindChoice(starts: string, sheet: SheetAccess): HTMLElement | undefined {
  if (!starts.endsWith('.order')) return undefined;
  const side = starts.split('.')[0]!;
  const choose = (event: Event): void => {
    const kind = (event.target as HTMLSelectElement).value;
    const order = [`${side}.order`, { kind }] as const, last = sheet.valueAt(`${side}.last`) === undefined ? [[`${side}.last`, {}] as const] : [];
    sheet.setAll(kind === '' ? [[side, undefined]] : [order, ...last], `what is made, ${side}`);
  };
  return labelled('What is made', el('select', { class: 'kind', onchange: choose },
    el('option', { value: '' }, 'nothing: not on the sheet'), el('option', { value: 'rocker' }, 'a sole that rolls'), el('option', { value: 'match' }, 'raised to match the other')));
}

/** What counts where the field is empty, in mm, degrees or percent, or a word. */
type Instead = (value: number | string | undefined) => void;
interface Row { readonly instead: Instead; readonly row: HTMLElement; readonly update: (anew: boolean) => void; readonly forget: () => void; readonly fault: HTMLElement; readonly input: HTMLElement }

let rowsMade = 0;

function rowFor(field: FieldShown, sheet: SheetAccess): Row {
  const id = `field-${++rowsMade}`, fault = el('p', { class: 'fault', id: `${id}-fault` }), help = el('p', { class: 'help', id: `${id}-help` }, field.help);
  const control = controlFor(field, sheet, { id, name: field.path, 'aria-describedby': `${id}-fault ${id}-help` });
  const unit = (): string => (field.unit === 'length' ? sheet.lengths() : field.unit);
  const sign = el('span', { class: 'unit' }, unit());
  const more = field.measured ? howTaken(field, sheet) : undefined;
  const row = el('div', { class: 'row' }, el('label', { for: id, class: 'words' }, field.label), el('span', { class: 'value' }, control.input, sign), more?.box, fault, help);
  return { row, fault, input: control.input, instead: control.instead ?? (() => undefined), forget: control.forget ?? (() => undefined), update: (anew) => { sign.textContent = unit(); control.update(anew); more?.update(); } };
}

/** What is being typed in stays as it is, unless it is of another sheet: `anew`. */
interface Control { readonly instead?: Instead; readonly input: HTMLElement; readonly update: (anew: boolean) => void; readonly forget?: () => void }

function controlFor(field: FieldShown, sheet: SheetAccess, attributes: Record<string, string>): Control {
  const { path, kind, words = [] } = field;
  if (kind === 'ticks') return ticks(field, sheet, attributes);
  if (kind === 'word' || kind === 'yes') {
    const options = kind === 'yes' ? ['true', 'false'] : words, said = (word: string): string => (kind === 'yes' ? (word === 'true' ? 'yes' : 'no') : word);
    const none = el('option', { value: '' }, '·'), input = el('select', { ...attributes, onchange: () => { sheet.set(path, input.value === '' ? undefined : kind === 'yes' ? input.value === 'true' : input.value); sheet.settle(); } },
      none, ...options.map((word) => el('option', { value: word }, said(word))));
    return { input, instead: (value) => { none.textContent = typeof value === 'string' ? `· ${value}` : '·'; }, update: () => { input.value = String(sheet.valueAt(path) ?? ''); } };
  }
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

/** `heelPlates` as words. */
const inWordsOf = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`).replace(/\./g, ', ');

/** A number, the number of a measure that tells more, or a shoe size. */
function inWords(value: unknown, shown: (number: number) => number): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number') return String(shown(value));
  if (typeof value !== 'object') return String(value);
  if ('value' in value) return inWords(value.value, shown);
  if ('size' in value && 'system' in value) return `${String(value.size)} ${String(value.system)}`;
  return '';
}

/** How it was taken, and whether twice: shown only where there is a measure. */
function howTaken({ path }: FieldShown, sheet: SheetAccess): { readonly box: HTMLElement; readonly update: () => void } {
  const twice = el('input', { type: 'checkbox', onchange: () => tell({ twice: twice.checked ? true : undefined }) });
  const how = el('input', { type: 'text', placeholder: 'how it was taken', 'aria-label': 'how it was taken', maxlength: 80, onchange: () => tell({ how: how.value.trim() || undefined }) });
  const tell = (more: { readonly how?: string | undefined; readonly twice?: true | undefined }): void => {
    const now = sheet.valueAt(path), whole = typeof now === 'object' && now !== null ? now : { value: now };
    const said = Object.fromEntries(Object.entries({ ...whole, ...more }).filter(([, one]) => one !== undefined));
    sheet.set(path, Object.keys(said).length === 1 && 'value' in said ? said.value : said);
    sheet.settle();
  };
  const box = el('span', { class: 'taken' }, how, el('label', {}, twice, ' taken twice'));
  return {
    box,
    update: () => {
      const now = sheet.valueAt(path) as { readonly how?: string; readonly twice?: boolean } | number | undefined, whole = typeof now === 'object' && now !== null ? now : {};
      box.hidden = now === undefined || now === null || 'size' in whole;
      if (document.activeElement !== how) how.value = whole.how ?? '';
      twice.checked = whole.twice === true;
    },
  };
}

/** A list of words that are ticked. Nothing ticked and none ticked are two things: the second is said with a button. */
function ticks({ path, words = [] }: FieldShown, sheet: SheetAccess, attributes: Record<string, string>): Control {
  const boxes = words.map((word) => ({ word, box: el('input', { type: 'checkbox', onchange: () => put() }) }));
  const put = (): void => { sheet.set(path, boxes.filter(({ box }) => box.checked).map(({ word }) => word)); sheet.settle(); };
  const none = button('asked: none', () => { for (const { box } of boxes) box.checked = false; put(); });
  const input = el('span', { ...attributes, class: 'ticks', role: 'group', tabindex: -1 }, ...boxes.map(({ word, box }) => el('label', {}, box, ` ${word}`)), none);
  return {
    input,
    update: () => {
      const now = sheet.valueAt(path), list = Array.isArray(now) ? now : [];
      for (const { word, box } of boxes) box.checked = list.includes(word);
      none.setAttribute('aria-pressed', String(Array.isArray(now) && list.length === 0));
    },
  };
}
