import { inUnit, type LengthUnit } from '../../keep/lengths.ts';

/** Steps of thickness, mm, each darker than the one before, so that grey alone tells them apart. */
export const STEPS: readonly { readonly from: number; readonly colour: string }[] = [
  { from: 0, colour: '#F8F1DC' }, { from: 4, colour: '#E9D49B' }, { from: 8, colour: '#D6B66F' }, { from: 15, colour: '#B39663' },
  { from: 25, colour: '#848270' }, { from: 35, colour: '#587080' }, { from: 45, colour: '#35567A' }, { from: 60, colour: '#1F2E3D' },
];

export const shadeFor = (thickness: number): string => STEPS.reduce((colour, step) => (thickness >= step.from ? step.colour : colour), STEPS[0]!.colour);

/** In words: from where to where a colour stands, in the unit shown. */
export const stepWords = (step: number, unit: LengthUnit): string => {
  const said = (mm: number): string => String(Number(inUnit(mm, unit).toFixed(2))), from = said(STEPS[step]!.from), next = STEPS[step + 1];
  if (!next) return `${from} and more`;
  return step === 0 ? `under ${said(next.from)}` : `${from} to ${said(next.from)}`;
};
