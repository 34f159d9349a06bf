import { svgEl } from '../dom.ts';

export function lettered(words: string, x: number, y: number, kind = '', anchor: 'start' | 'middle' | 'end' = 'start'): SVGTextElement {
  const text = svgEl('text', { x, y, 'text-anchor': anchor, ...(kind ? { class: kind } : {}) });
  text.textContent = words;
  return text;
}
