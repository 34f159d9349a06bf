import { svgEl } from '../dom.ts';

/** How wide the pictures are in their own parts: as wide as a phone shows them, so that letters there are as large as they are told to be. */
export const PICTURE_WIDE = 370;

export function lettered(words: string, x: number, y: number, kind = '', anchor: 'start' | 'middle' | 'end' = 'start'): SVGTextElement {
  const text = svgEl('text', { x, y, 'text-anchor': anchor, ...(kind ? { class: kind } : {}) });
  text.textContent = words;
  return text;
}
