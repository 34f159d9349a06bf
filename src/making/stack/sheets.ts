import { rounded } from '../../checks/say.ts';
import type { RackSheet, StackOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import { FOAMS, type FoamName } from '../../materials/materials.ts';
import type { ZoneName } from './blanks.ts';

/** Denser than this it is rubber or board, not foam or cork for a body. Common practice; shoe foams 0.15 to 0.25 g/cm³ (Verdejo and Mills 2002). */
export const DENSEST_FOAM = 0.4;

/**
 * Softer than this is padding or bedding, not the body of a rocker. Common practice: bodies 45 to 60 Shore A, bedding 30 to
 * 40; 40 Shore A is about 66 Asker C on foam.
 */
const SOFTEST = { 'Shore A': 40, 'Asker C': 66 } as const;
export const SOFTEST_WORDS = `${SOFTEST['Shore A']} Shore A (${SOFTEST['Asker C']} Asker C)`;

/** A sheet that does not say of what it is is taken for the foam ordered where its density is within this share of it. Common practice: one foam comes so much lighter or denser. */
const NEAR = 0.3;

/** Sheets of one thickness count once, and of more kinds than this only some, thin to thick. */
const KINDS = 10;
const SAME_THICKNESS: Mm = 0.02;

/** Why a sheet is no foam for a body, in words that follow its name; nothing where it is. */
export function whyNoBody({ density, hardness }: RackSheet): string | undefined {
  if (density > DENSEST_FOAM) return `${gCm3(density)} is denser than foam or cork for a body, at most ${gCm3(DENSEST_FOAM)}`;
  return hardness && hardness.value < SOFTEST[hardness.scale] ? `${rounded(hardness.value, 0)} ${hardness.scale} is softer than ${SOFTEST_WORDS}` : undefined;
}

const gCm3 = (density: number): string => `${rounded(density, 2)} g/cm³`;

/** The kinds of foam there are, as names of sheets tell them. */
const KINDS_OF_FOAM = ['EVA', 'cork'] as const;
const tells = (name: string, kind: string): boolean => name.toLowerCase().includes(kind.toLowerCase());

/** Why a sheet is not of the foam ordered: by what it is said to be, else by its name, else by its density. A usual rack is nobody's, and of any foam. */
function whyOther({ name, material, density, usual }: RackSheet, foam: FoamName): string | undefined {
  if (usual || material === foam) return undefined;
  if (material !== undefined) return `${material} is not ${foam}, which is ordered`;
  const own = KINDS_OF_FOAM.some((kind) => tells(foam, kind) && tells(name, kind)), other = own ? undefined : KINDS_OF_FOAM.find((kind) => !tells(foam, kind) && tells(name, kind));
  if (other) return `${other} by its name is not ${foam}, which is ordered`;
  const ordered = FOAMS[foam].density;
  return Math.abs(density / ordered - 1) > NEAR + 1e-9 ? `${gCm3(density)} is more than ${rounded(NEAR * 100, 0)} % off ${foam}, which is ordered, ${gCm3(ordered)}` : undefined;
}

/** Why a sheet is not taken unasked, in words; nothing where it is. */
export const whyLeftOut = (sheet: RackSheet, foam: FoamName): string | undefined => whyNoBody(sheet) ?? whyOther(sheet, foam);

export const isNamed = ({ name }: RackSheet, { heel, forepart }: StackOrder): boolean => name === heel || name === forepart;

/** The sheets a zone may be built up from, thin to thick: of the foam ordered, unless one is named for the zone; of two of one thickness the cheaper one. */
export function sheetsFor(rack: readonly RackSheet[], order: StackOrder, zone: ZoneName, foam: FoamName): readonly RackSheet[] {
  const named = zone === 'heel' ? order.heel : zone === 'forepart' ? order.forepart : undefined;
  if (named !== undefined) return rack.filter(({ name }) => name === named).slice(0, 1);
  const price = (sheet: RackSheet): number => sheet.price ?? Infinity;
  const sorted = rack.filter((sheet) => !whyLeftOut(sheet, foam)).toSorted((a, b) => a.thickness - b.thickness || (price(a) === price(b) ? 0 : price(a) - price(b)));
  const kinds = sorted.filter(({ thickness }, i) => i === 0 || thickness - sorted[i - 1]!.thickness > SAME_THICKNESS);
  return kinds.length <= KINDS ? kinds : Array.from({ length: KINDS }, (_, i) => kinds[Math.round((i * (kinds.length - 1)) / (KINDS - 1))]!);
}
