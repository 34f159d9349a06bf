/** Steps of thickness, mm, each darker than the one before, so that grey alone tells them apart. */
export const STEPS: readonly { readonly from: number; readonly colour: string }[] = [
  { from: 0, colour: '#F8F1DC' }, { from: 4, colour: '#E9D49B' }, { from: 8, colour: '#D6B66F' }, { from: 15, colour: '#B39663' },
  { from: 25, colour: '#848270' }, { from: 35, colour: '#587080' }, { from: 45, colour: '#35567A' }, { from: 60, colour: '#1F2E3D' },
];

export const shadeFor = (thickness: number): string => STEPS.reduce((colour, step) => (thickness >= step.from ? step.colour : colour), STEPS[0]!.colour);

/** In words: from where to where a colour stands. */
export const stepWords = (step: number): string => {
  const from = STEPS[step]!.from, to = STEPS[step + 1]?.from;
  if (step === 0) return `under ${to}`;
  return to === undefined ? `${from} and more` : `${from} to ${to}`;
};
