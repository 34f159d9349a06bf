import { readJson } from '../../src/fitting/jsonText.ts';
import { MAKINGS, otherSide, SIDES, type Side } from '../../src/fitting/words.ts';

/** A fitting sheet as it is written: plain JSON, never changed in place. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [name: string]: Json };
export type Sheet = { readonly [name: string]: Json };

export const isGroup = (value: Json | undefined): value is Sheet => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The steps of a place: names of fields, and numbers of rows. */
const stepsOf = (path: string): readonly (string | number)[] => path.split('.').flatMap((name) => {
  const [, list, rows] = (path.includes('[') && /^([^[\]]+)((?:\[\d+\])+)$/.exec(name)) || [];
  return list === undefined || rows === undefined ? [name] : [list, ...[...rows.matchAll(/\d+/g)].map(Number)];
});

function fieldOf(value: Json | undefined, step: string | number): Json | undefined {
  if (typeof step === 'number') return Array.isArray(value) ? (value as readonly Json[])[step] : undefined;
  return isGroup(value) && Object.hasOwn(value, step) ? value[step] : undefined;
}

/** What stands at a place like `right.order.apex` or `making.rack[0].thickness`; undefined where nothing does. */
export const valueAt = (sheet: Sheet, path: string): Json | undefined => stepsOf(path).reduce<Json | undefined>(fieldOf, sheet);

/** Things that are ordered by their group alone: it stays when its last field goes. */
const ORDERED_BY_GROUP: ReadonlySet<string> = new Set([...MAKINGS.map((name) => `making.${name}`), ...SIDES.map((side) => `${side}.order.stiffener`)]);

/**
 * The sheet with a value put in at a place; groups on the way are made. Undefined takes the field out, and groups that
 * are empty then; of a list it takes out the row. A number put where a measure tells how it was taken keeps what it tells.
 * The very same sheet where the value stands there already.
 */
export function withValue(sheet: Sheet, path: string, value: Json | undefined): Sheet {
  return valueAt(sheet, path) === value ? sheet : putIn(sheet, stepsOf(path), value, '') as Sheet | undefined ?? {};
}

function putIn(here: Json | undefined, [step, ...rest]: readonly (string | number)[], value: Json | undefined, place: string): Json | undefined {
  const now = fieldOf(here, step!), next = rest.length ? putIn(now, rest, value, place === '' ? String(step) : `${place}.${step!}`) : told(now, value);
  if (typeof step === 'number') return inList(Array.isArray(here) ? here as readonly Json[] : [], step, next, rest.length > 0);
  const group = isGroup(here) ? here : {};
  if (next !== undefined) return { ...group, [step!]: next };
  const { [step!]: _, ...others } = group;
  return Object.keys(others).length === 0 && !ORDERED_BY_GROUP.has(place) ? undefined : others;
}

/** A row that loses its last field, or a number of a pair, leaves its place empty: the others stay where they are. */
function inList(list: readonly Json[], at: number, next: Json | undefined, within: boolean): Json | undefined {
  const now = list[at], row = next ?? (within ? {} : typeof now === 'object' && now !== null ? undefined : null);
  const rows = [...list.slice(0, at), ...(row === undefined ? [] : [row]), ...list.slice(at + 1)];
  return rows.length ? rows : undefined;
}

const told = (now: Json | undefined, value: Json | undefined): Json | undefined =>
  typeof value === 'number' && isGroup(now) && Object.hasOwn(now, 'value') ? { ...now, value } : value;

/** A value that works for a group of walls caps each of them; all else is put where it says. */
export function worksIn(sheet: Sheet, path: string, value: number): Sheet {
  const now = valueAt(sheet, path);
  if (!path.endsWith('.taper') || !isGroup(now)) return withValue(sheet, path, value);
  return withValue(sheet, path, Object.fromEntries(Object.entries(now).map(([wall, lean]) => [wall, Math.min(Number(lean), value)])));
}

/** What only one toe rule asks for. */
const OF_RULE: Readonly<Record<string, string>> = { given: 'radius', 'for-toe-spring': 'toeSpring', 'for-toe-off': 'toeOffAngle' };

/** The sheet with another toe rule, without what only the rule before asked for. @param path like `right.order.toe.rule` */
export function toeRuled(sheet: Sheet, path: string, rule: Json | undefined): Sheet {
  const others = Object.entries(OF_RULE).filter(([name]) => name !== rule).map(([, field]) => path.replace(/rule$/, field));
  return others.reduce((less, other) => withValue(less, other, undefined), withValue(sheet, path, rule));
}

/** The job's number as a file may be called. */
export const referenceOf = (sheet: Sheet): string => String(valueAt(sheet, 'job.reference') ?? 'sheet').replace(/[^A-Za-z0-9._-]/g, '_');

/** The text the command reads. */
export const sheetText = (sheet: Sheet): string => `${JSON.stringify(sheet, null, 2)}\n`;

export type ReadText = { readonly ok: true; readonly sheet: Sheet } | { readonly ok: false; readonly text: string };

/** The text of a file as a sheet, or why it is none. What stands in it is judged later. */
export function readText(text: string): ReadText {
  if (text.trim() === '') return { ok: false, text: 'This file is empty.' };
  const json = readJson(text), faults = json.faults.map((one) => one.text).join(' ');
  if (!json.ok || faults !== '') return { ok: false, text: `This file cannot be read: ${faults}` };
  const value = json.value as Json;
  return isGroup(value) ? { ok: true, sheet: value } : { ok: false, text: 'This file holds no fitting sheet: a sheet is a group of fields in braces.' };
}

const isSide = (value: Json | undefined): value is Side => value === 'left' || value === 'right';

/** Left and right change places; the shorter leg, and the shoe a stop was taken on a name for, with them. */
export function mirrored(sheet: Sheet): Sheet {
  const swapped = shoesSwapped(sheet), shorter = valueAt(sheet, 'wearer.legDifference.shorter'), { overrides } = sheet;
  const legs = isSide(shorter) ? withValue(swapped, 'wearer.legDifference.shorter', otherSide(shorter)) : swapped;
  return Array.isArray(overrides) ? { ...legs, overrides: (overrides as readonly Json[]).map(sideSwapped) } : legs;
}

/** Both keep the place in the text that the other had; one alone keeps its own. */
function shoesSwapped(sheet: Sheet): Sheet {
  const { left, right } = sheet;
  if (left !== undefined && right !== undefined) return { ...sheet, left: right, right: left };
  return Object.fromEntries(Object.entries(sheet).map(([name, value]) => [isSide(name) ? otherSide(name) : name, value]));
}

function sideSwapped(override: Json): Json {
  const side = fieldOf(override, 'side');
  return isGroup(override) && isSide(side) ? { ...override, side: otherSide(side) } : override;
}

/** The other shoe gets what stands on the sheet for this one. */
export function copiedAcross(sheet: Sheet, from: Side): Sheet {
  const shoe = sheet[from];
  return shoe === undefined ? sheet : { ...sheet, [otherSide(from)]: shoe };
}
