import type { FieldShown, Used } from '../desk/protocol.ts';
import { controlFor, type SheetAccess } from './controls.ts';
import { el } from './dom.ts';
import { faulted } from './faulted.ts';
import { howTaken } from './howTaken.ts';
import { listField } from './listField.ts';

/** A field with its name, its unit, what is wrong with it and how it is taken. */
export interface Row {
  readonly row: HTMLElement;
  /** Puts in what the sheet says; what is being typed stays, unless it is of another sheet: `anew`. */
  readonly update: (anew: boolean) => void;
  /** What is told where the field is empty. */
  readonly instead: (used: Used) => void;
  /** What cleared measures told is forgotten. */
  readonly forget: () => void;
  readonly faults: (texts: ReadonlyMap<string, string>) => void;
  readonly focus: (path: string) => void;
}

let rowsMade = 0;

export function fieldRow(field: FieldShown, sheet: SheetAccess): Row {
  if (field.kind === 'list') return listField(field, sheet);
  const surely = `${field.path}.accuracy`, id = `field-${++rowsMade}`, fault = el('p', { class: 'fault', id: `${id}-fault` }), help = el('p', { class: 'help', id: `${id}-help` }, field.help);
  const control = controlFor(field, sheet, { id, name: field.path, 'aria-describedby': `${id}-fault ${id}-help` });
  const unit = (): string => (field.unit === 'length' ? sheet.lengths() : field.unit);
  const sign = el('span', { class: 'unit' }, unit());
  const more = field.measured ? howTaken(field, sheet) : undefined;
  more?.accuracy.setAttribute('aria-describedby', `${id}-name ${id}-fault`);
  const row = el('div', { class: 'row' }, el('label', { for: id, id: `${id}-name`, class: 'words' }, field.label), el('span', { class: 'value' }, control.input, sign), more?.box, fault, help);
  return {
    row, focus: (path) => (more && path === surely && !more.box.hidden ? more.accuracy : control.input).focus(),
    instead: (used) => { control.instead?.(used[field.path]); more?.instead(used); },
    forget: () => control.forget?.(),
    faults: (texts) => {
      const own = texts.get(field.path), other = own === undefined ? texts.get(surely) : undefined;
      if (more) faulted(other, row, fault, more.accuracy);
      if (!more || other === undefined) faulted(own, row, fault, control.input); else control.input.removeAttribute('aria-invalid');
    },
    update: (anew) => { sign.textContent = unit(); control.update(anew); more?.update(anew); },
  };
}
