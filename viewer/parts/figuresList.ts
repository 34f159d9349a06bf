import type { ShoeShown } from '../desk/protocol.ts';
import { figureWords, type LengthUnit } from '../keep/lengths.ts';
import { el } from './dom.ts';

export interface FiguresList { readonly show: (shoes: readonly ShoeShown[], lengths: LengthUnit) => void; readonly light: (of: string | undefined) => void }

/** Every number of both shoes; touching one lights up its lines on the drawing. */
export function figuresList(host: HTMLElement, light: (of: string | undefined) => void): FiguresList {
  const lines = new Map<string, { readonly line: HTMLElement; readonly value: HTMLElement }>(), tables = new Map<string, HTMLElement>();
  const lineFor = (key: string, of: string, label: string, into: HTMLElement): { readonly line: HTMLElement; readonly value: HTMLElement } => {
    const known = lines.get(key);
    if (known) return known;
    const value = el('td'), line = el('tr', { tabindex: 0, onfocus: () => light(of), onblur: () => light(undefined), onpointerenter: () => light(of), onpointerleave: () => light(undefined) }, el('th', { scope: 'row' }, label), value);
    into.append(line);
    const made = { line, value };
    lines.set(key, made);
    return made;
  };
  return {
    show: (shoes, lengths) => {
      const seen = new Set<string>();
      for (const { side, kind, figures } of shoes) {
        const title = `${side} shoe, ${kind === 'rocker' ? 'rocker' : 'raise'}`;
        let table = tables.get(title);
        if (!table) { table = el('table', { class: 'figures' }, el('caption', {}, title)); tables.set(title, table); host.append(table); }
        for (const figure of figures) {
          const of = `${side}.${figure.key}`, key = `${title} ${of}`, { line, value } = lineFor(key, of, figure.label, table), text = figureWords(figure, lengths);
          seen.add(key);
          if (value.textContent !== text) value.textContent = text;
          const label = line.firstElementChild!;
          if (label.textContent !== figure.label) label.textContent = figure.label;
        }
      }
      for (const [of, { line }] of lines) if (!seen.has(of)) { line.remove(); lines.delete(of); }
      for (const [title, table] of tables) if (!table.querySelector('tr')) { table.remove(); tables.delete(title); }
    },
    light: (of) => { for (const [key, { line }] of lines) line.classList.toggle('lit', of !== undefined && key.endsWith(` ${of}`)); },
  };
}
