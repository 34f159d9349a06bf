import type { FieldShown, Used } from '../desk/protocol.ts';
import type { SheetAccess } from './controls.ts';
import { accuracyBox } from './accuracyBox.ts';
import { el } from './dom.ts';

/** What the sheet tells of a measure besides its value. */
interface Told { readonly how?: string | undefined; readonly twice?: true | undefined; readonly accuracy?: number | string | undefined }

export interface HowTaken {
  readonly box: HTMLElement;
  readonly update: (anew: boolean) => void;
  readonly instead: (used: Used) => void;
  /** Where how surely it was taken is typed. */
  readonly accuracy: HTMLElement;
}

/** How it was taken, whether twice, and how surely: shown only where there is a measure. */
export function howTaken(field: FieldShown, sheet: SheetAccess): HowTaken {
  const { path } = field, twice = el('input', { type: 'checkbox', 'aria-label': 'taken twice', onchange: () => { tell({ twice: twice.checked ? true : undefined }); sheet.settle(); } });
  const how = el('input', { type: 'text', placeholder: 'how taken', 'aria-label': 'how it was taken', maxlength: 80, onchange: () => { tell({ how: how.value.trim() || undefined }); sheet.settle(); } });
  const tell = (more: Told): void => {
    const now = sheet.valueAt(path), whole = typeof now === 'object' && now !== null ? now : { value: now };
    const said = Object.fromEntries(Object.entries({ ...whole, ...more }).filter(([, one]) => one !== undefined));
    sheet.set(path, Object.keys(said).length === 1 && 'value' in said ? said.value : said);
  };
  const sure = accuracyBox(field, sheet, (accuracy) => tell({ accuracy }));
  const box = el('span', { class: 'taken' }, how, el('label', {}, twice, ' twice'), field.accuracy && sure.box);
  return {
    box, accuracy: sure.input, instead: sure.instead,
    update: (anew) => {
      const now = sheet.valueAt(path) as Told | number | undefined, whole: Told = typeof now === 'object' && now !== null ? now : {};
      box.hidden = now === undefined || now === null || 'size' in whole;
      if (document.activeElement !== how) how.value = whole.how ?? '';
      twice.checked = whole.twice === true;
      sure.update(whole.accuracy, anew);
    },
  };
}
