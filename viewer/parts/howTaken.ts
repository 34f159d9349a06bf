import type { FieldShown } from '../desk/protocol.ts';
import type { SheetAccess } from './controls.ts';
import { el } from './dom.ts';

/** How it was taken, and whether twice: shown only where there is a measure. */
export function howTaken({ path }: FieldShown, sheet: SheetAccess): { readonly box: HTMLElement; readonly update: () => void } {
  const twice = el('input', { type: 'checkbox', onchange: () => tell({ twice: twice.checked ? true : undefined }) });
  const how = el('input', { type: 'text', placeholder: 'how it was taken', 'aria-label': 'how it was taken', maxlength: 80, onchange: () => tell({ how: how.value.trim() || undefined }) });
  const tell = (more: { readonly how?: string | undefined; readonly twice?: true | undefined }): void => {
    const now = sheet.valueAt(path), whole = typeof now === 'object' && now !== null ? now : { value: now };
    const said = Object.fromEntries(Object.entries({ ...whole, ...more }).filter(([, one]) => one !== undefined));
    sheet.set(path, Object.keys(said).length === 1 && 'value' in said ? said.value : said);
    sheet.settle();
  };
  const box = el('span', { class: 'taken' }, how, el('label', {}, twice, ' taken twice'));
  return {
    box,
    update: () => {
      const now = sheet.valueAt(path) as { readonly how?: string; readonly twice?: boolean } | number | undefined, whole = typeof now === 'object' && now !== null ? now : {};
      box.hidden = now === undefined || now === null || 'size' in whole;
      if (document.activeElement !== how) how.value = whole.how ?? '';
      twice.checked = whole.twice === true;
    },
  };
}
