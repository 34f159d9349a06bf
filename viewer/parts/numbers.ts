/** A number as a maker types it: decimal comma or point, blanks anywhere; undefined where it is none. */
export function numberTyped(text: string): number | undefined {
  const plain = text.replace(/[\s\u00a0]/g, '').replace('−', '-').replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}

/** A dragged value in steps a maker would type: tenths, or two hundredths of an inch. */
export const stepped = (value: number, unit: string): number => {
  const step = unit === 'in' ? 0.005 : 0.1;
  return Number((Math.round(value / step) * step).toFixed(3));
};
