import { rangeOf, type Unit } from '../fitting/ranges.ts';
import { inTableUnit } from '../fitting/convert.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import { changedUnit, typedLength, type LengthUnit } from '../fitting/lengthUnit.ts';
import type { Side } from '../fitting/words.ts';
import { degrees, inDegrees, MM_PER_INCH } from '../geometry/units.ts';
import { isAligned } from './prosthesis.ts';
import { ANOTHER_LAST, inInches } from './say.ts';
import { signQuestion, turnedAnkle } from './sign.ts';
import { Infeasible, orInfeasible, type Change, type Mendable, type Remedy, type Trouble } from '../profile/infeasible.ts';
import { RANGE_OF, tryMaking, withRemedy } from '../profile/remedy.ts';
import type { RockerCase } from '../profile/rocker.ts';
import { soleFrom } from '../solid/fromRocker.ts';

/** Why one shoe cannot be, and what was found to mend it: lengths in mm, angles in radians. */
interface Refused { readonly side: Side; readonly trouble: Trouble; readonly text: string; readonly given: RockerCase; readonly remedies: readonly Remedy[] }

/** The same in the sheet's own fields and units; the sentences may be spoken in the other unit of length. */
export interface TroubleWords {
  /** The field to blame, like `left.order.toe.endAngle`. */
  readonly path: string;
  readonly text: string;
  /** Each alone mends the shoe: it was put in and made. The nearest to what was asked. */
  readonly works: readonly Works[];
}

/** Values to type in, nearly always one, and the same as a sentence. */
export interface Works { readonly values: readonly SheetValue[]; readonly text: string }
/** Of a group of fields (`order.taper`) the value is the most that any of them may be. */
export interface SheetValue { readonly path: string; readonly value: number; readonly unit: SheetUnit }

type SheetUnit = LengthUnit | '°' | '%';
/** What lengths are typed into the sheet in, and what they are spoken of in. */
interface Units { readonly written: LengthUnit; readonly spoken: LengthUnit }
/** What of the sheet decides how a remedy is written, and which of them is none. */
type Sheet = Pick<Fitting, 'units' | 'shoes'>;

const BLAMED: Record<Trouble, string> = {
  APEX_TOO_NEAR: 'order.apex', TOE_ARC_TOO_SHORT: 'order.toe', TOE_ARC_TOO_TIGHT: 'order.toe', TOE_SPRING_OUT_OF_REACH: 'order.toe.toeSpring',
  TOE_OFF_OUT_OF_REACH: 'order.toe.toeOffAngle', END_ANGLE_TOO_SMALL: 'order.toe.endAngle', NO_BUILD: 'order', WALLS_MEET: 'order.taper', OUTLINE_FOLDS: 'last',
};

/** Where a measure stands on the sheet, and how it is written there. */
interface Field {
  readonly path: string;
  readonly now: (given: RockerCase) => number | undefined;
  /** From inside to the row's unit and back, where that is more than a change of unit. */
  readonly written?: (value: number, given: RockerCase) => number;
  readonly inside?: (written: number, given: RockerCase) => number;
  readonly words?: (path: string, value: string) => string;
}

const FIELDS: Record<Mendable, Field> = {
  apexX: {
    path: 'order.apex', now: ({ order }) => order.apexX,
    written: (value, { last }) => (value / last.length) * 100, inside: (written, { last }) => (written / 100) * last.length,
  },
  standingFlat: { path: 'order.standingFlat', now: ({ order }) => order.standingFlat },
  pitch: {
    path: 'last.pitch', now: ({ last }) => last.pitch,
    words: (path, value) => `${path} ${value} (${ANOTHER_LAST})`,
  },
  'toe.radius': { path: 'order.toe.radius', now: ({ order }) => order.toe.radius },
  'toe.toeSpring': { path: 'order.toe.toeSpring', now: ({ order }) => order.toe.toeSpring },
  'toe.toeOff': { path: 'order.toe.toeOffAngle', now: ({ order }) => order.toe.toeOff },
  'toe.endAngle': { path: 'order.toe.endAngle', now: ({ order }) => order.toe.endAngle },
  strike: { path: 'foot.strikeAngle', now: ({ order }) => order.strike },
  taper: {
    path: 'order.taper', now: ({ order }) => Math.max(...Object.values(order.taper)),
    words: (path, value) => `no taper of ${path} above ${value}`,
  },
};

/**
 * A shape that cannot be, in the maker's own fields and units, with what works instead. No pitch is named for a prosthetic foot.
 * @param spoken what the sentences name lengths in; the values that work are the sheet's own all the same
 */
export function troubleWords(refused: Refused, { units: written, shoes }: Sheet, spoken: LengthUnit = written): TroubleWords {
  const units: Units = { written, spoken };
  const { side, trouble, text, given } = refused, shoe = shoes[side], aligned = shoe !== undefined && isAligned(shoe);
  const question = shoe ? signQuestion(shoe, given.last) : '';
  const remedies = refused.remedies.filter((remedy) => !(aligned && remedy.some(({ measure }) => measure === 'pitch')));
  return {
    path: `${side}.${BLAMED[trouble]}`,
    text: [`${side}.${BLAMED[trouble]}: ${spoken === 'in' ? inInches(text) : text}`, ...(question ? [question] : [])].join('. '),
    works: shoe && question ? turnedRound(shoe, given, units) : remedies.flatMap((remedy) => worksOn(side, remedy, given, units) ?? []),
  };
}

/** The ankle angle with the other sign, alone where that makes a shoe, else with what more it takes then. */
function turnedRound(shoe: ShoeFitting, given: RockerCase, units: Units): Works[] {
  const turned = turnedAnkle(shoe, given.last);
  if (!turned) return [];
  const value: SheetValue = { path: `${shoe.side}.foot.ankleAngle`, value: Number(inDegrees(turned.ankleAngle).toFixed(6)), unit: '°' };
  const other: RockerCase = { ...given, foot: { ...given.foot, stance: { kind: 'locked', ankleAngle: degrees(value.value) } } };
  const text = `${value.path} ${value.value}° (the other sign)`, making = tryMaking(other, soleFrom);
  if (making.ok) return [{ values: [value], text }];
  for (const remedy of making.remedies) {
    const more = worksOn(shoe.side, remedy, other, units);
    if (more) return [{ values: [value, ...more.values], text: `${text} together with ${more.text}` }];
  }
  return [];
}

/** A remedy as it can be typed, put in again as it will be read; undefined when the sheet would not take it or it makes no shoe. */
function worksOn(side: Side, remedy: Remedy, given: RockerCase, units: Units): Works | undefined {
  const typed = remedy.map((change) => typedIn(change, given, units));
  const refused = typed.some(({ asRead: { measure }, table }) => { const [least, most] = rangeOf(RANGE_OF[measure]).limits; return table < least || table > most; });
  if (refused || !makes(withRemedy(given, typed.map(({ asRead }) => asRead)))) return undefined;
  const values = typed.map(({ field, value, unit }): SheetValue => ({ path: `${side}.${field.path}`, value, unit }));
  return { values, text: typed.map((one) => wordsFor(`${side}.${one.field.path}`, one)).join(' together with ') };
}

const wordsFor = (path: string, { said, field: { words } }: Typed): string => words?.(path, said) ?? `${path} ${said}`;

/** A change as it is said, as the number on the sheet, the same in the unit of the range table, and as the sheet's reader takes it. */
interface Typed { readonly field: Field; readonly said: string; readonly value: number; readonly unit: SheetUnit; readonly table: number; readonly asRead: Change }

/** Rounded as it is said: what is said is what is put in. Inches have steps of their own, so they are rounded away from what was asked. */
function typedIn({ measure, value }: Change, given: RockerCase, { written: own, spoken }: Units): Typed {
  const field = FIELDS[measure], { unit } = rangeOf(RANGE_OF[measure]), isLength = unit === 'mm', inches = isLength && spoken === 'in';
  const written = field.written?.(value, given) ?? inTableUnit(value, unit);
  const typed = inches ? roundedAway(written / MM_PER_INCH, 3, value < (field.now(given) ?? -Infinity)) : Number(written.toFixed(1));
  const table = inches ? typed * MM_PER_INCH : typed, put = isLength ? typedLength(typed, spoken, own) : typed, read = isLength ? changedUnit(put, own, 'mm') : put;
  const asRead = { measure, value: field.inside?.(read, given) ?? (unit === 'deg' ? degrees(read) : read) };
  return { field, said: `${typed}${unit === 'deg' ? '' : ' '}${inches ? 'in' : signOf(unit)}`, value: put, unit: isLength ? own : signOf(unit), table, asRead };
}

const signOf = (unit: Unit): SheetUnit => (unit === 'deg' ? '°' : unit === '%' ? '%' : 'mm');

/** A value already on a whole step stays, whatever the last bit of its sum says. */
const STEP_NOISE = 1e-6;

function roundedAway(value: number, places: number, downwards: boolean): number {
  const steps = value * 10 ** places;
  return Number(((downwards ? Math.floor(steps + STEP_NOISE) : Math.ceil(steps - STEP_NOISE)) / 10 ** places).toFixed(places));
}

const makes = (given: RockerCase): boolean => !(orInfeasible(() => soleFrom(given)) instanceof Infeasible);
