import type * as z from 'zod';
import { fault, valueAt, type Fault, type Path } from './faults.ts';
import { aboutField, meantBy, suggestion } from './fieldNames.ts';
import type { LengthUnit } from './lengthUnit.ts';
import { SHEET, type RawSheet } from './schema.ts';
import { LENGTH_WANTED } from './shapes.ts';

/** A sheet of which any field may be missing; lists are whole or missing. */
export type Readable<T> = T extends readonly unknown[] ? T : T extends object ? { readonly [K in keyof T]?: Readable<T[K]> | undefined } : T;
export type ReadableSheet = Readable<RawSheet>;

/** One rule of the definition that a sheet breaks. */
type Breach = z.core.$ZodIssue;

/** A number typed as text: what to write instead. */
function asNumber(came: unknown): string {
  const written = typeof came === 'string' ? /^\s*([-+]?\d*)[.,]?(\d*)\s*(?:mm|cm|in|kg|°|%|")?\s*$/.exec(came) : null;
  if (!written || `${written[1]}${written[2]}` === '') return '';
  return `Write the number alone, without quotes${String(came).includes(',') ? ' and with a decimal point' : ''}.`;
}

/** Of a field that takes several forms, the complaints about the form that was tried. */
function formTried(breach: Breach & { code: 'invalid_union' }, came: unknown): readonly Breach[] {
  if (typeof came !== 'object' || came === null || Array.isArray(came)) return [];
  return breach.errors[Object.hasOwn(came, 'size') && breach.errors.length > 2 ? 2 : 1] ?? [];
}

function faultsOf(breach: Breach, sheet: unknown, base: Path, spoken: LengthUnit | undefined): Fault[] {
  const path = [...base, ...(breach.path as Path)], came = valueAt(sheet, path);
  if (breach.code === 'unrecognized_keys') return breach.keys.map((key) => unknownField(key, path, sheet));
  if (breach.code === 'invalid_union') {
    const tried = formTried(breach, came);
    if (tried.length > 0) return tried.flatMap((inner) => faultsOf(inner, sheet, path, spoken));
  }
  if (Number.isNaN(came)) return [];   // a number too large to hold; it has its fault since the text was read
  const wanted = inUnitsOf(sheet, breach.message, spoken);
  if (came === undefined) return [fault(path, `must be given: ${wanted}`, came)];
  return [fault(path, `must be ${wanted}`, came, came === null ? aboutField(path) : asNumber(came))];
}

/** What is asked for, in the units spoken; both are named as long as the sheet does not say which it is written in. */
function inUnitsOf(sheet: unknown, wanted: string, spoken: LengthUnit | undefined): string {
  const units = valueAt(sheet, ['units']);
  return units === 'mm' || units === 'in' ? wanted.replace(LENGTH_WANTED, `a length in ${(spoken ?? units) === 'in' ? 'inches' : 'mm'}`) : wanted;
}

function unknownField(name: string, place: Path, sheet: unknown): Fault {
  const path = [...place, name];
  return fault(path, 'is not a field of the sheet', valueAt(sheet, path), suggestion(name, place));
}

/** Leaves out what could not be read: a list as a whole; a number becomes NaN, so that nothing is estimated in its place. */
function withoutUnreadable(sheet: unknown, breaches: readonly Breach[]): unknown {
  const copy: unknown = structuredClone(sheet);
  for (const breach of breaches) {
    if (breach.code === 'unrecognized_keys') continue;
    const list = breach.path.findIndex((step) => typeof step === 'number');
    const path = (list < 0 ? breach.path : breach.path.slice(0, list)) as Path, name = path.at(-1);
    const parent = name === undefined ? undefined : valueAt(copy, path.slice(0, -1));
    if (typeof parent !== 'object' || parent === null || name === undefined || !Object.hasOwn(parent, name)) continue;
    const wasNumber = breach.code === 'invalid_union' ? !breach.discriminator : breach.code === 'invalid_type' && breach.expected === 'number';
    (parent as Record<string | number, unknown>)[name] = wasNumber && list < 0 ? NaN : undefined;
  }
  return typeof copy === 'object' && copy !== null && !Array.isArray(copy) ? copy : {};
}

/** An unknown field, and the place that was meant, where one is near. */
export interface Slip { readonly path: Path; readonly meant: Path }

const slipsIn = (breach: Breach): Slip[] => (breach.code !== 'unrecognized_keys' ? [] : breach.keys.flatMap((key) => {
  const place = breach.path as Path, meant = meantBy(key, place);
  return meant === undefined ? [] : [{ path: [...place, key], meant: [...place, meant] }];
}));

export interface Shape { readonly readable: ReadableSheet; readonly faults: readonly Fault[]; readonly slips: readonly Slip[] }

/**
 * Holds plain values against the definition of the sheet: all faults of form, and what can be read in spite of them.
 * @param spoken what lengths are asked for in; the sheet's own unit where left out
 */
export function checkShape(sheet: unknown, spoken?: LengthUnit): Shape {
  const { success, error } = SHEET.safeParse(sheet);
  if (success) return { readable: sheet as RawSheet, faults: [], slips: [] };
  const faults = error.issues.flatMap((breach) => faultsOf(breach, sheet, [], spoken));
  return { readable: withoutUnreadable(sheet, error.issues) as ReadableSheet, faults, slips: error.issues.flatMap(slipsIn) };
}
