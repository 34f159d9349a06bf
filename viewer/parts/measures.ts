import type { FieldShown, Used } from '../desk/protocol.ts';
import type { SheetAccess } from './controls.ts';
import { button, el } from './dom.ts';
import { fieldRow, type Row } from './fieldRow.ts';
import { FORM_GROUPS, isPack, isUnder, WHOLE_GROUPS, type FormGroup } from './formGroups.ts';

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

interface Made extends FormGroup { readonly box: HTMLDetailsElement; readonly rows: readonly (Row & { readonly field: FieldShown })[]; readonly leave: readonly Leave[] }

/**
 * Every field of the sheet as a form. A field left empty is left out of the sheet.
 * @param wide where lists of many columns stand
 */
export function measures(host: HTMLElement, wide: HTMLElement, fields: readonly FieldShown[], sheet: SheetAccess): Measures {
  const groups = FORM_GROUPS.map((group) => groupMade(group, fields.filter(({ path }) => isUnder(path, group.starts) && !FORM_GROUPS.some(({ starts }) => starts.startsWith(`${group.starts}.`) && isUnder(path, starts))), sheet));
  const rows = groups.flatMap((group) => group.rows), workshop = groups.find(({ starts }) => starts === 'making.chordGap')!.box, seen = new Map<string, { readonly value: unknown; readonly units: string }>();
  const helpLine = el('p', { class: 'help-line', 'aria-hidden': 'true' });
  host.append(unitsChoice(sheet), ...groups.filter(({ within }) => within === undefined).map(({ box }) => box), helpLine);
  workshop.append(...groups.filter(({ within }) => within === 'workshop').map(({ box }) => box));
  wide.append(...groups.filter(({ within }) => within === 'wide').map(({ box }) => box));
  host.addEventListener('focusin', ({ target }) => { const help = (target as HTMLElement).title || (target as Element).closest('.row')?.querySelector('.help')?.textContent; if (help) helpLine.textContent = help; });
  let anew = false;
  /** While a hand drags all groups but one stay as they are: each part of a sheet that is not changed is the very same. */
  const isSame = (starts: string, units: string): boolean => {
    const value = sheet.valueAt(starts), before = seen.get(starts);
    seen.set(starts, { value, units });
    return before !== undefined && before.value === value && before.units === units && !anew;
  };
  return {
    show: () => {
      for (const { starts, box, shown } of groups) {
        if (box.hidden === shown(sheet)) box.hidden = !box.hidden;
        for (const choice of box.querySelectorAll<HTMLSelectElement>('select.either')) choice.value = numberOrGroup(sheet, starts);
        for (const choice of box.querySelectorAll<HTMLSelectElement>('select.kind:not(.either)')) choice.value = String(sheet.valueAt(`${starts}.kind`) ?? '');
      }
      for (const choice of host.querySelectorAll<HTMLSelectElement>('select.units')) choice.value = String(sheet.valueAt('units') ?? '');
      const units = `${String(sheet.valueAt('units'))} ${sheet.lengths()}`, active = document.activeElement;
      for (const { starts, rows: own, leave } of groups) {
        const same = isSame(starts, units);
        for (const { field, row, update } of own) {
          if (same && !row.contains(active)) continue;
          row.hidden = isLeftOut(field, sheet) || (field.inPlaceOf !== undefined && sheet.valueAt(field.path) === undefined && !(row.contains(active) && sheet.valueAt(field.inPlaceOf) === undefined));
          update(anew);
        }
        if (!same) for (const { path, press } of leave) press.hidden = sheet.valueAt(path) === undefined;
      }
      anew = false;
    },
    faults: (texts) => { for (const row of rows) row.faults(texts); },
    forget: () => { anew = true; for (const { forget } of rows) forget(); },
    used: (used) => { for (const { instead } of rows) instead(used); },
    nameOf: (path) => nameOf(path, fields),
    focus: (path) => {
      if (path === 'units') return host.querySelector<HTMLSelectElement>('select.units')?.focus();
      const there = rows.filter(({ row }) => !row.hidden), found = there.find(({ field }) => field.path === path) ?? there.find(({ field }) => field.orNumber?.at === path) ?? there.find(({ field }) => isUnder(field.path, path) || isUnder(path, field.path));
      if (found) bring(found, path);
    },
  };
}

/** What is told as a number is not asked for as a group, nor what only another kind of shoe has. */
const isLeftOut = ({ path, either, forKind }: FieldShown, sheet: SheetAccess): boolean =>
  (either ? numberOrGroup(sheet, either.at) !== either.as : forKind !== undefined && sheet.valueAt(`${path.split('.')[0]}.order.kind`) !== forKind);

function bring({ row, focus }: Row, path: string): void {
  for (let box = row.closest('details'); box; box = box.parentElement?.closest('details') ?? null) box.open = true;
  focus(path);
  (document.activeElement && row.contains(document.activeElement) ? document.activeElement : row).scrollIntoView({ block: 'nearest' });
}

function groupMade(group: FormGroup, own: readonly FieldShown[], sheet: SheetAccess): Made {
  const rows = own.map((field) => ({ field, ...fieldRow(field, sheet) }));
  const leave = leaveButtons(group, own, sheet);
  const box = el('details', { class: 'group', open: group.open === true }, el('summary', {}, group.title), kindChoice(group.starts, sheet), own.some(({ path, either }) => either?.at === path && path === group.starts) && eitherChoice(group.starts, sheet), ...rows.map(({ row }) => row));
  for (const { path, press } of leave) rows.findLast(({ field }) => isUnder(field.path, path))?.row.after(press);
  return { ...group, rows, leave, box };
}

interface Leave { readonly path: string; readonly press: HTMLElement }

/** What has to stand whole on the sheet goes as a whole. */
function leaveButtons({ starts }: FormGroup, own: readonly FieldShown[], sheet: SheetAccess): readonly Leave[] {
  return Object.entries(WHOLE_GROUPS).filter(([path]) => isUnder(path, starts) && own.some((field) => isUnder(field.path, path)))
    .map(([path, words]) => ({ path, press: button(words, () => sheet.setAll([[path, undefined]], words)) }));
}

/** A row of a list is counted from one. */
function nameOf(path: string, fields: readonly FieldShown[]): string | undefined {
  if (path === 'making') return 'workshop';
  if (path.endsWith('.accuracy')) { const of = nameOf(path.slice(0, -'.accuracy'.length), fields); return of && `${of}, give or take`; }
  const group = FORM_GROUPS.findLast(({ starts }) => isUnder(path, starts)), [, list = path, row, cell = ''] = /^(.*?)\[(\d+)\](.*)$/.exec(path) ?? [], field = fields.find((one) => one.path === list);
  if (!group) return undefined;
  if (row !== undefined && field) return [group.title, `${field.row ?? 'row'} ${Number(row) + 1}`, field.columns?.find((one) => one.path === cell)?.label].filter(Boolean).join(', ');
  if (path === group.starts && !field) return group.title.toLowerCase();
  return field || fields.some((one) => one.path.startsWith(`${path}.`)) ? `${group.title}, ${field?.label ?? inWordsOf(path.slice(group.starts.length + 1))}` : undefined;
}

/** `heelPlates` as words. */
const inWordsOf = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`).replace(/\./g, ', ');

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

const numberOrGroup = (sheet: SheetAccess, path: string): 'number' | 'group' => (isPack(sheet.valueAt(path)) ? 'group' : 'number');

/** Whether a stiffener is told by its thickness, or by what is wanted of it or laid. */
function eitherChoice(path: string, sheet: SheetAccess): HTMLElement {
  const choose = (event: Event): void => {
    const group = (event.target as HTMLSelectElement).value === 'group', side = path.split('.')[0]!;
    sheet.setAll([[path, group ? { wanted: 'rigid' } : undefined]], group ? `stiffener worked out, ${side}` : `stiffener by its thickness, ${side}`);
  };
  return labelled('What is known of it', el('select', { class: 'kind either', onchange: choose }, el('option', { value: 'number' }, 'its thickness alone'), el('option', { value: 'group' }, 'how stiff it is to be, or what is laid')));
}
