import { CLOTHS } from '../materials/stiffeners.ts';
import { checkShape, type Readable, type ReadableSheet, type Shape, type Slip } from './checkShape.ts';
import { asSpoken, inMmAndRadians, type SheetUnits } from './convert.ts';
import { checkRules } from './crossRules.ts';
import { complaintsAbout, fault, isMissing, LEAVE_OUT, pathName, valueAt, withoutInside, type Complain, type Fault } from './faults.ts';
import type { Fitting, Job, ShoeFitting, Wearer } from './fitting.ts';
import { readJson } from './jsonText.ts';
import { readFoot, readFootLengths } from './readFoot.ts';
import type { LengthUnit } from './lengthUnit.ts';
import { readLast } from './readLast.ts';
import { readMaking } from './readMaking.ts';
import { readOrder } from './readOrder.ts';
import type { RawShoe } from './schema.ts';
import { given, takenIf } from './taken.ts';
import { SIDES, type Side } from './words.ts';

export type { Fault } from './faults.ts';

export type Reading =
  | { readonly ok: true; readonly fitting: Fitting }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A sheet is a few kilobytes of text; a file larger than this is something else. */
export const SHEET_MAX_BYTES = 2_000_000;

/**
 * Reads the text of a fitting sheet: JSON, then its form, then every number against its limits, then the whole with
 * estimates filled in against the rules between fields. Returns the fitting, or every fault that can be found at once.
 * Never throws.
 * @param spoken what faults name lengths in, for a maker who sees the sheet in a unit that is not its own; the sheet's own where left out
 */
export function readSheet(text: string, spoken?: LengthUnit): Reading {
  const bytes = text.length > SHEET_MAX_BYTES ? text.length : new TextEncoder().encode(text).length;
  if (bytes > SHEET_MAX_BYTES)
    return { ok: false, faults: [fault([], `must be at most ${SHEET_MAX_BYTES} bytes of text`, bytes, 'Is this the right file?')] };
  if (text.trim() === '') return { ok: false, faults: [fault([], 'must be a fitting sheet in JSON', '', 'The file is empty.')] };
  const json = readJson(text);
  return json.ok ? readValues(json.value, json.faults, spoken) : json;
}

function readValues(sheet: unknown, ofText: readonly Fault[], shown: LengthUnit | undefined): Reading {
  const shape = checkShape(sheet, shown), beyond: Fault[] = [], { units: written } = shape.readable, spoken = written && (shown ?? written);
  const converted = inMmAndRadians(shape.readable, spoken, beyond);
  beyond.push(...beyondInLists(sheet, shape, spoken));
  const { complain, faults } = complaintsAbout((path) => asSpoken(valueAt(sheet, path), path, { written, spoken }), [...shape.faults, ...beyond]);
  const fitting = fittingOf(converted, complain);
  if (shape.faults.every(({ path }) => path !== 'sheet')) {
    checkPair(converted, complain);
    checkStiffeners(converted, complain);
  }
  checkRules(fitting, spoken, complain);
  const all = slipsJoined(withoutInside(withoutRepeats([...ofText, ...shape.faults, ...beyond, ...faults])), shape.slips, sheet);
  return all.length === 0 ? { ok: true, fitting } : { ok: false, faults: all };
}

/** A list with a fault of form is read as none; the numbers in it are held to their limits all the same. */
function beyondInLists(sheet: unknown, { readable: { units }, faults }: Shape, spoken: SheetUnits): Fault[] {
  const found: Fault[] = [];
  if (faults.some(({ path }) => path.includes('['))) inMmAndRadians({ ...(sheet as object), units }, spoken, found);
  return found.filter(({ path }) => path.includes('[') && faults.every((one) => one.path !== path));
}

/** One place breaks one rule once, however many steps of the reading found it. */
const withoutRepeats = (faults: readonly Fault[]): Fault[] =>
  [...new Map(faults.map((one) => [`${one.path} ${one.rule}`, one])).values()];

/** A misspelt field and the missing one it stands for are one fault, not two far apart. */
function slipsJoined(faults: readonly Fault[], slips: readonly Slip[], sheet: unknown): readonly Fault[] {
  return slips.reduce((all, { path, meant }) => {
    const there = pathName(path), wanted = pathName(meant), name = String(meant.at(-1));
    if (!all.some((one) => one.path === wanted && isMissing(one))) return all;
    const joined = fault(path, `is not a field of the sheet, and ${name} is missing`, valueAt(sheet, path), `Was ${name} meant?`);
    return all.filter((one) => one.path !== wanted).map((one) => (one.path === there ? joined : one));
  }, faults);
}

function checkPair({ left, right }: ReadableSheet, complain: Complain): void {
  if (left === undefined && right === undefined) complain(['left'], 'must be given, or right: a sheet is about at least one shoe');
  else if ([left, right].every((shoe) => shoe === undefined || shoe.order?.kind === 'match'))
    complain([left ? 'left' : 'right', 'order', 'kind'], 'must be "rocker" on at least one side: a match follows the other shoe\'s rocker');
}

/** What a stiffener may be told by only one of. */
const ONE_OF = [['core', 'ownCore'], ['wanted', 'bendAtMost']] as const;
/** Where plies are told each may name its own. */
const ONE_CLOTH = ['cloth', 'ownCloth', 'measuredPly'] as const;

function checkStiffeners(sheet: ReadableSheet, complain: Complain): void {
  for (const side of SIDES) {
    const order = sheet[side]?.order, stiffener = order?.kind === 'rocker' && typeof order.stiffener === 'object' ? order.stiffener : undefined;
    if (!stiffener) continue;
    const { ownCloth, plies } = stiffener;
    if (ownCloth && (ownCloth.fibre === undefined) === (ownCloth.ownFibre === undefined)) complain([side, 'order', 'stiffener', 'ownCloth', ownCloth.fibre === undefined ? 'fibre' : 'ownFibre'], ownCloth.fibre === undefined ? 'must be given, or ownFibre' : `${LEAVE_OUT} beside fibre: they tell the same thing`);
    for (const name of ['ownCloth', 'measuredPly'] as const) if (Object.hasOwn(CLOTHS, stiffener[name]?.name ?? '')) complain([side, 'order', 'stiffener', name, 'name'], 'must not be the name of a cloth of the list');
    for (const names of plies ? ONE_OF : [ONE_CLOTH, ...ONE_OF]) names.filter((name) => stiffener[name] !== undefined).slice(1).forEach((name) =>
      complain([side, 'order', 'stiffener', name], `${LEAVE_OUT} beside ${names.find((one) => stiffener[one] !== undefined)}: they tell the same thing`));
  }
}

/** The fitting as far as it could be read: NaN where a number is missing, and then there is a fault to it. */
function fittingOf(sheet: ReadableSheet, complain: Complain): Fitting {
  const wearer = wearerOf(sheet.wearer ?? {});
  const shoeOn = (side: Side): ShoeFitting | undefined => sheet[side] && shoeOf(sheet[side], side, wearer, complain);
  const [left, right] = SIDES.map(shoeOn);
  return {
    version: 1, units: sheet.units ?? 'mm', job: jobOf(sheet.job ?? {}), wearer,
    shoes: given({ left, right }), making: readMaking(sheet.making ?? {}),
    overrides: (sheet.overrides ?? []).map(({ code, by, reason, side }) => ({ code, by, reason, ...given({ side }) })),
  };
}

const jobOf = ({ reference = '', date = '', maker, prescriber, prescribed, note }: NonNullable<ReadableSheet['job']>): Job =>
  ({ reference, date, ...given({ maker, prescriber, prescribed, note }) });

function wearerOf({ mass, stature, crotchHeight, sex, risks, legDifference = {} }: NonNullable<ReadableSheet['wearer']>): Wearer {
  const { correct = NaN, shorter, found = 'prescription' } = legDifference;   // what could not be read breaks no rule: only "none found" would
  return {
    ...given({ mass: takenIf(mass), stature: takenIf(stature), crotchHeight: takenIf(crotchHeight), sex }),
    risks: [...new Set(risks)], risksAsked: risks !== undefined,
    legDifference: { correct, found, ...given({ shorter }) },
  };
}

function shoeOf(raw: Readable<RawShoe>, side: Side, wearer: Wearer, complain: Complain): ShoeFitting | undefined {
  const order = raw.order && readOrder(raw.order);
  if (!order) return undefined;
  if (order.kind === 'rocker' && raw.foot === undefined) complain([side, 'foot'], 'must be given for a rocker: it is struck from the foot');
  const lengths = raw.foot && readFootLengths(raw.foot);
  const last = readLast(raw, lengths, side, complain);
  const foot = raw.foot && lengths && readFoot(raw.foot, lengths, wearer, last, side, complain);
  return { side, last, order, ...given({ foot, upperWeight: raw.upperWeight }) };
}
