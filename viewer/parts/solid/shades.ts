/** Steps of thickness, mm, each darker than the one before, so that grey alone tells them apart. */
export const STEPS: readonly { readonly from: number; readonly colour: string }[] = [
  { from: 0, colour: '#8C2F2B' }, { from: 4, colour: '#F3E7C4' }, { from: 8, colour: '#DFC48C' }, { from: 15, colour: '#B99B63' },
  { from: 25, colour: '#7F7B62' }, { from: 35, colour: '#4F6472' }, { from: 45, colour: '#2B4C6F' }, { from: 60, colour: '#22303C' },
];

export const shadeFor = (thickness: number): string => STEPS.reduce((colour, step) => (thickness >= step.from ? step.colour : colour), STEPS[0]!.colour);
