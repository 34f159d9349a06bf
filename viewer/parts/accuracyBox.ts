import type { FieldShown, Used } from '../desk/protocol.ts';
import { isLengthUnit, shownLength, typedLength, type LengthUnit } from '../keep/lengths.ts';
import type { SheetAccess } from './controls.ts';
import { el } from './dom.ts';
import { lengthTyped, numberTyped } from './numbers.ts';

const MEANS = 'How far off the reading may be: two readings of three lie within it. Left empty, what is usual for how it was taken.';

/** How surely a measure was taken, in its own unit: one standard deviation. Greyed, what counts where nothing is typed. */
export function accuracyBox({ path, unit }: FieldShown, sheet: SheetAccess, put: (accuracy: number | string | undefined) => void): {
  readonly box: HTMLElement; readonly input: HTMLInputElement; readonly instead: (used: Used) => void; readonly update: (accuracy: number | string | undefined, anew: boolean) => void;
} {
  const own = (): LengthUnit => { const units = sheet.valueAt('units'); return isLengthUnit(units) ? units : sheet.lengths(); }, isLength = unit === 'length';
  const input = el('input', { type: 'text', class: 'accuracy', name: `${path}.accuracy`, inputmode: 'decimal', autocomplete: 'off', 'aria-label': 'give or take', title: MEANS });
  const sign = el('span', { class: 'unit' }), box = el('span', { class: 'sure', hidden: true }, '±', input, sign);
  let counts = false;
  input.addEventListener('input', () => {
    const text = input.value.trim(), number = isLength ? lengthTyped(text, sheet.lengths()) : numberTyped(text);
    put(text === '' ? undefined : number === undefined ? text : isLength ? typedLength(number, sheet.lengths(), own()) : number);
  });
  input.addEventListener('change', () => sheet.settle());
  return {
    box, input,
    instead: (used) => {
      const usual = used[`${path}.accuracy`];
      counts = typeof usual === 'number';
      input.placeholder = typeof usual === 'number' ? String(Number((isLength ? shownLength(usual, 'mm', sheet.lengths()) : usual).toFixed(3))) : '';
      box.hidden = !counts && input.value === '';
    },
    update: (accuracy, anew) => {
      sign.textContent = isLength ? sheet.lengths() : unit;
      if (anew || document.activeElement !== input) input.value = accuracy === undefined ? '' : String(typeof accuracy === 'number' && isLength ? shownLength(accuracy, own(), sheet.lengths()) : accuracy);
      box.hidden = !counts && input.value === '';
    },
  };
}
