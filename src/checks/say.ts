/** Numbers as a maker reads them. A value that rounds to nothing has no sign. */
export function rounded(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}

export const mm = (value: number, digits = 1): string => `${rounded(value, digits)} mm`;
export const deg = (value: number, digits = 1): string => `${rounded(value, digits)}°`;
/** @param volume in mm³ */
export const cubic = (volume: number, digits = 1): string => `${rounded(volume / 1000, digits)} cm³`;
export const grams = (value: number): string => `${rounded(value, 0)} g`;
/** What a pitch other than the last's means for the maker. */
export const ANOTHER_LAST = 'another last, or this one altered to that pitch';

export const fromHeel = (x: number): string => (x < 0.5 ? 'at the back edge' : `${rounded(x, 0)} mm from the heel`);

const ENDS_SENTENCE = /[.?]$/;
/** Parts put one after the other as sentences; empty ones drop out. */
export const sentences = (...parts: readonly string[]): string =>
  parts.filter((part) => part !== '').map((part) => (ENDS_SENTENCE.test(part) ? part : `${part}.`)).join(' ');
