import type { InputField } from '../checks/inputs.ts';
import type { Numbers, Vary } from './variants.ts';

/** How the numbers of a shoe answer to one measure: what each changes by for one standard deviation less and more. */
export interface Response {
  readonly less: Numbers;
  readonly more: Numbers;
  /** Shares of a standard deviation off at which there was no shape, each way; none where all have one. */
  readonly noShape: { readonly less?: number; readonly more?: number };
}

/** Where a whole standard deviation leaves no shape, parts of it are tried. */
const PARTS = [1, 0.5, 0.25, 0.1] as const;

/**
 * Both one-sided differences by one standard deviation: where another place begins to govern the thickness, they differ.
 * A side without any shape is taken to answer like the other; without both nothing is known.
 */
export function responseTo(field: InputField, deviation: number, base: Numbers, vary: Vary): Response | undefined {
  const below = sideOf(field, -deviation, base, vary), above = sideOf(field, deviation, base, vary);
  if (!below.change && !above.change) return undefined;
  return {
    less: below.change ?? opposite(above.change!), more: above.change ?? opposite(below.change!),
    noShape: { ...(below.noShape === undefined ? {} : { less: below.noShape }), ...(above.noShape === undefined ? {} : { more: above.noShape }) },
  };
}

const opposite = (change: Numbers): Numbers => change.map((one) => -one);

/** The change by a whole deviation to one side, from the greatest part of it that has a shape; and the least part tried that has none. */
function sideOf(field: InputField, deviation: number, base: Numbers, vary: Vary): { readonly change?: Numbers; readonly noShape?: number } {
  let noShape: number | undefined;
  for (const part of PARTS) {
    const found = vary({ [field]: deviation * part });
    if (found) return { change: found.map((one, i) => (one - base[i]!) / part), ...(noShape === undefined ? {} : { noShape }) };
    noShape = part;
  }
  return { noShape: PARTS.at(-1)! };
}

/**
 * Variance of a result that answers with one slope to errors on one side and with another on the other, errors on a bell
 * curve: (a² + b²) / 2 − (a − b)² / (2π), a and b what it moves by for a standard deviation up each side (b = −less).
 */
export const varianceOf = (less: number, more: number): number => (more * more + less * less) / 2 - (more + less) ** 2 / (2 * Math.PI);
