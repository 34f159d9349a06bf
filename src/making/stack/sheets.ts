import type { RackSheet, StackOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { ZoneName } from './blanks.ts';

/** Denser than this it is rubber or board, not foam or cork for a body. Common practice; shoe foams 0.15 to 0.25 g/cm³ (Verdejo and Mills 2002). */
const DENSEST_FOAM = 0.4;

/**
 * Softer than this is padding or bedding, not the body of a rocker. Common practice: bodies 45 to 60 Shore A, bedding 30 to
 * 40; 40 Shore A is about 66 Asker C on foam.
 */
const SOFTEST = { 'Shore A': 40, 'Asker C': 66 } as const;

/** Sheets of one thickness count once, and of more kinds than this only some, thin to thick. */
const KINDS = 10;
const SAME_THICKNESS: Mm = 0.02;

const isBody = ({ density, hardness }: RackSheet): boolean => density <= DENSEST_FOAM && (!hardness || hardness.value >= SOFTEST[hardness.scale]);

/** The sheets a zone may be built up from, thin to thick; of two of one thickness the cheaper one. */
export function sheetsFor(rack: readonly RackSheet[], order: StackOrder, zone: ZoneName): readonly RackSheet[] {
  const named = zone === 'heel' ? order.heel : zone === 'forepart' ? order.forepart : undefined;
  if (named !== undefined) return rack.filter(({ name }) => name === named).slice(0, 1);
  const price = (sheet: RackSheet): number => sheet.price ?? Infinity;
  const sorted = rack.filter(isBody).toSorted((a, b) => a.thickness - b.thickness || (price(a) === price(b) ? 0 : price(a) - price(b)));
  const kinds = sorted.filter(({ thickness }, i) => i === 0 || thickness - sorted[i - 1]!.thickness > SAME_THICKNESS);
  return kinds.length <= KINDS ? kinds : Array.from({ length: KINDS }, (_, i) => kinds[Math.round((i * (kinds.length - 1)) / (KINDS - 1))]!);
}
