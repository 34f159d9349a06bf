import { isLengthUnit, type LengthUnit } from './lengths.ts';

const NAME = 'rockerbench lengths';

/** The unit chosen on this device; none where nothing was chosen, or the browser keeps nothing. */
export function lengthsChosen(): LengthUnit | undefined {
  try {
    const word = localStorage.getItem(NAME);
    return isLengthUnit(word) ? word : undefined;
  } catch { return undefined; }
}

/** Where the browser keeps nothing the choice lasts as long as the page. */
export function keepLengths(unit: LengthUnit): void {
  try { localStorage.setItem(NAME, unit); } catch { /* the page goes on with it all the same */ }
}
