/** A fitting sheet as it is written: plain JSON, never changed in place. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [name: string]: Json };
export type Sheet = { readonly [name: string]: Json };

const isGroup = (value: Json | undefined): value is Sheet => typeof value === 'object' && value !== null && !Array.isArray(value);

/** What stands at a place like `right.order.apex`; undefined where nothing does. */
export function valueAt(sheet: Sheet, path: string): Json | undefined {
  let at: Json | undefined = sheet;
  for (const name of path.split('.')) at = isGroup(at) ? at[name] : undefined;
  return at;
}

/**
 * The sheet with a value put in at a place; groups on the way are made. Undefined takes the field out, and groups that
 * are empty then. A number put where a measure tells how it was taken keeps what it tells.
 */
export function withValue(sheet: Sheet, path: string, value: Json | undefined): Sheet {
  return putIn(sheet, path.split('.'), value) ?? {};
}

function putIn(group: Sheet, [name, ...rest]: readonly string[], value: Json | undefined): Sheet | undefined {
  const now = group[name!], next = rest.length ? putIn(isGroup(now) ? now : {}, rest, value) : told(now, value);
  const { [name!]: _, ...others } = group;
  if (next !== undefined) return name! in group ? { ...group, [name!]: next } : { ...others, [name!]: next };
  return Object.keys(others).length === 0 ? undefined : others;
}

const told = (now: Json | undefined, value: Json | undefined): Json | undefined =>
  typeof value === 'number' && isGroup(now) && 'value' in now ? { ...now, value } : value;

/** The text the command reads. */
export const sheetText = (sheet: Sheet): string => `${JSON.stringify(sheet, null, 2)}\n`;

export type ReadText = { readonly ok: true; readonly sheet: Sheet } | { readonly ok: false; readonly text: string };

/** The text of a file as a sheet, or why it is none. What stands in it is judged later. */
export function readText(text: string): ReadText {
  try {
    const value = JSON.parse(text) as Json;
    return isGroup(value) ? { ok: true, sheet: value } : { ok: false, text: 'This file holds no fitting sheet: a sheet is a group of fields in braces.' };
  } catch (error) {
    return { ok: false, text: `This file is no JSON: ${error instanceof Error ? error.message : String(error)}.` };
  }
}

const OTHER = { left: 'right', right: 'left' } as const;

/** Left and right change places, and the shorter leg with them. */
export function mirrored(sheet: Sheet): Sheet {
  const { left, right, ...rest } = sheet, shorter = valueAt(sheet, 'wearer.legDifference.shorter');
  const swapped: Sheet = { ...rest, ...(right === undefined ? {} : { left: right }), ...(left === undefined ? {} : { right: left }) };
  return shorter === 'left' || shorter === 'right' ? withValue(swapped, 'wearer.legDifference.shorter', OTHER[shorter]) : swapped;
}

/** The other shoe gets what stands on the sheet for this one. */
export function copiedAcross(sheet: Sheet, from: 'left' | 'right'): Sheet {
  const shoe = sheet[from];
  return shoe === undefined ? sheet : { ...sheet, [OTHER[from]]: shoe };
}
