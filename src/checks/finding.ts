import type { Side } from '../fitting/words.ts';

export type Severity = 'stop' | 'warn' | 'note';
export type FindingUnit = 'mm' | 'g' | 'deg' | '%' | 'g/cm³' | 'kg' | 'times' | 'N·m/kg' | '';

/** The words of a finding with what they rest on, which some name already. */
export const inFull = ({ text, basis }: Finding): string => (text.includes(basis) ? text : `${text} (${basis})`);

/** One line of the check report. Numbers apart from words, so a table can sort them and a drawing can point at the place. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly side?: Side;
  readonly measured?: number;
  readonly limit?: number;
  readonly unit: FindingUnit;
  /** Decimals of the two where more are known than is usual of the unit: a gauge's. */
  readonly places?: number;
  /** Where on the sole, in words, and its x from the heel in mm when it is a place. */
  readonly where: string;
  readonly at?: number;
  readonly text: string;
  /** Published source, or "common practice". */
  readonly basis: string;
  /** Set on a stop that the maker took on his own name. */
  readonly overriddenBy?: { readonly by: string; readonly reason: string };
}
