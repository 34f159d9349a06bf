import { degrees, inDegrees, MM_PER_INCH } from '../geometry/units.ts';
import type { ReadableSheet } from './checkShape.ts';
import { fault, type Fault, type Path } from './faults.ts';
import { shownLength, type LengthUnit } from './lengthUnit.ts';
import { accuracyRow, isRangeName, rangeOf, type RangeName, type Range, type Unit } from './ranges.ts';
import { lengthOfSize } from './sizes.ts';
import { SIZE_SYSTEMS, type SizeSystem } from './words.ts';

/** Undefined where the sheet does not say. */
export type SheetUnits = LengthUnit | undefined;

/** What the lengths of a sheet are written in, and what its faults name them in. */
export interface WrittenAndSpoken { readonly written: SheetUnits; readonly spoken: SheetUnits }

/** The two numbers of a pair in the list of measured heights. */
const IN_PAIR = ['forward', 'up'];

/** Room for the rounding of a unit change at the very limit. */
const EPSILON = 1e-9;

/** The row of the range table for a number of the sheet, if it is a quantity. */
function rangeNameAt(path: Path): RangeName | undefined {
  const steps = path.filter((step) => typeof step === 'string'), inPair = path.at(-1);
  if (steps.at(-1) === 'heights' && typeof inPair === 'number') steps.push(IN_PAIR[inPair] ?? '');
  if (steps[0] === 'left' || steps[0] === 'right') steps.shift();
  const last = steps.at(-1);
  if (last === 'value' || last === 'accuracy') steps.pop();
  const name = steps.join('.');
  if (!isRangeName(name)) return undefined;
  return last === 'accuracy' ? accuracyRow(name) : name;
}

/** From a number as typed to the number inside: mm, radians, shares of one. NaN while the sheet's units are unknown. */
function inside(value: number, unit: Unit, units: SheetUnits): number {
  if (unit === 'deg') return degrees(value);
  if (unit === '%') return value / 100;
  if (unit !== 'mm' || value === 0) return value;   // nothing is nothing in any unit
  return units === undefined ? NaN : units === 'in' ? value * MM_PER_INCH : value;
}

/** From a number inside back to the unit of the range table. */
export const inTableUnit = (value: number, unit: Unit): number => (unit === 'deg' ? inDegrees(value) : unit === '%' ? value * 100 : value);

const UNIT_SIGN: Record<Unit, string> = { mm: 'mm', deg: '°', kg: 'kg', g: 'g', 'g/cm³': 'g/cm³', 'g/m²': 'g/m²', MPa: 'MPa', '%': '%', size: '', '': '' };

/** Numbers of the range table the way the maker counts, e.g. `99 to 484.5 mm` or, on a sheet in inches, `3.898 in`. */
export function quantityWords(values: readonly number[], unit: Unit, units: SheetUnits): string {
  const inches = unit === 'mm' && units === 'in';
  const said = values.map((value) => Number((inches ? value / MM_PER_INCH : value).toPrecision(4)));
  return `${said.join(' to ')} ${inches ? 'in' : UNIT_SIGN[unit]}`.trimEnd();
}

export const lengthWords = (mm: readonly number[], units: SheetUnits): string => quantityWords(mm, 'mm', units);

/** A length that was computed, the way the maker would have typed it. */
export const asTyped = (mm: number, units: SheetUnits): number => Number((units === 'in' ? mm / MM_PER_INCH : mm).toPrecision(4));

/** Limits are said in tenths of a mm or hundredths of an inch. */
const step = (units: SheetUnits): number => (units === 'in' ? MM_PER_INCH / 100 : 0.1);

/** A computed limit, mm, rounded inwards to what is easily typed: the number that is said is itself accepted. */
export const roundedUp = (mm: number, units: SheetUnits): number => Math.ceil(mm / step(units) - EPSILON) * step(units);
export const roundedDown = (mm: number, units: SheetUnits): number => Math.floor(mm / step(units) + EPSILON) * step(units);

/** Lengths are typed in one of these by mistake. */
const SLIPS = [['cm', 10], ['m', 1000], ['inches', MM_PER_INCH], ['mm', 1]] as const;

/** Asks about the commonest slip, a length typed in another unit: each unit in which it would be usual. Answers in `spoken`. */
function otherUnit(typed: number, { unit, limits, usual }: Range, units: SheetUnits, spoken = units): string {
  if (unit !== 'mm') return '';
  const [least, most] = usual?.() ?? limits, own = units === 'in' ? 'inches' : 'mm', where = units === spoken ? 'Lengths are' : `On the sheet it is ${typed},`;
  const guesses = SLIPS.map(([name, mm]) => ({ name, mm: typed * mm })).filter(({ name, mm }) => name !== own && mm >= least && mm <= most);
  const asked = guesses.map(({ name }) => name).join(' or '), would = guesses.map(({ name, mm }) => `${typed} ${typed === 1 && name === 'inches' ? 'inch' : name} would be ${lengthWords([mm], spoken)}`);
  return guesses.length === 0 ? '' : `${where} in ${own}: is it in ${asked}? ${would.join(', ')}.`;
}

/**
 * For a length outside its usual range: asks whether it was typed in another unit, where it would be usual in that one,
 * like `Lengths are in mm: is it in cm? 1.4 cm would be 14 mm.` Empty where no such slip explains it.
 * @param value mm
 */
export function slipQuestion(name: RangeName, value: number, units: SheetUnits): string {
  const range = rangeOf(name), [least, most] = range.usual?.() ?? range.limits;
  const isUsual = value >= least && value <= most, reachesZero = least <= 0;   // where zero is usual, any number is in some unit
  return isUsual || reachesZero ? '' : otherUnit(asTyped(value, units), range, units);
}

/** The same where the number is known as it was typed: in the unit it is shown in, or else in the sheet's own. */
function slipOf(typed: number, range: Range, units: WrittenAndSpoken): string {
  const { written, spoken } = units, asShown = otherUnit(spokenNumber(typed, range.unit, units), range, spoken);
  return asShown === '' && written !== spoken ? otherUnit(typed, range, written, spoken) : asShown;
}

const spokenNumber = (typed: number, unit: Unit, { written, spoken }: WrittenAndSpoken): number =>
  unit === 'mm' && written && spoken ? shownLength(typed, written, spoken) : typed;

/** What stands at a place of the sheet as the maker sees it: the lengths in it in the unit that is spoken. */
export function asSpoken(came: unknown, path: Path, units: WrittenAndSpoken): unknown {
  if (units.written === units.spoken) return came;
  return withNumbers(came, path, (number, name) => spokenNumber(number, rangeOf(name).unit, units));
}

/** The same with each number that has a row in the range table changed, by that row; and each group, once its numbers are, made of them. */
function withNumbers(value: unknown, path: Path, changed: (number: number, name: RangeName, path: Path) => number, made = (fields: object, _: Path): unknown => fields): unknown {
  if (typeof value === 'number') {
    const name = rangeNameAt(path);
    return name === undefined ? value : changed(value, name, path);
  }
  if (Array.isArray(value)) return value.map((item, i) => withNumbers(item, [...path, i], changed, made));
  if (typeof value !== 'object' || value === null) return value;
  return made(Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withNumbers(item, [...path, key], changed, made)])), path);
}

/** A number against its limits; a number that breaks them comes back as NaN, so that no later rule trips over it again. */
function held(typed: number, value: number, name: RangeName, path: Path, units: WrittenAndSpoken, faults: Fault[]): number {
  const range = rangeOf(name), [least, most] = range.limits, compared = inTableUnit(value, range.unit);
  if (Number.isNaN(compared) || (compared >= least - EPSILON && compared <= most + EPSILON)) return value;
  faults.push(fault(path, `must be ${quantityWords(range.limits, range.unit, units.spoken)}`, spokenNumber(typed, range.unit, units), slipOf(typed, range, units)));
  return NaN;
}

interface RawSize { readonly size: number; readonly system: SizeSystem; readonly allowance?: number }
const isSize = (value: object): value is RawSize =>
  'size' in value && typeof value.size === 'number' && 'system' in value && SIZE_SYSTEMS.some((system) => system === value.system);

/** A size is held to the limits of the length it stands for. */
function heldSize(size: RawSize, path: Path, units: SheetUnits, faults: Fault[]): RawSize | number {
  const name = rangeNameAt(path);
  if (name !== 'foot.length' && name !== 'last.length') return size;
  const { limits } = rangeOf(name), { value } = lengthOfSize(size, name === 'foot.length' ? 'foot' : 'last');
  if (!(value < limits[0] || value > limits[1])) return size;
  const help = `As ${size.system} it stands for ${lengthWords([value], units)}; is the system right?`;
  faults.push(fault([...path, 'size'], `must stand for ${quantityWords(limits, 'mm', units)}`, size.size, help));
  return NaN;
}

/**
 * The sheet with every length in mm (inches times exactly 25.4), every angle in radians and every percentage as a
 * share of one, each number held to the limits of the range table. What breaks them is NaN and leaves a fault.
 */
export function inMmAndRadians(sheet: ReadableSheet, spoken: SheetUnits, faults: Fault[]): ReadableSheet {
  const units: WrittenAndSpoken = { written: sheet.units, spoken };
  return withNumbers(sheet, [],
    (value, name, path) => held(value, inside(value, rangeOf(name).unit, units.written), name, path, units, faults),
    (fields, path) => (isSize(fields) ? heldSize(fields, path, spoken, faults) : fields)) as ReadableSheet;
}
