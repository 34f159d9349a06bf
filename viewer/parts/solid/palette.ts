import type { PartName } from '../../desk/protocol.ts';

export interface Palette { readonly card: string; readonly ink: string; readonly line: string; readonly measure: string; readonly parts: Readonly<Record<PartName, string>> }

/** The page's own colours, or those it was drawn for where the page does not say. */
export function paletteOf(host: HTMLElement): Palette {
  const style = getComputedStyle(host), colour = (name: string, otherwise: string): string => style.getPropertyValue(name).trim() || otherwise;
  const foam = colour('--foam', '#D9C7A3');
  return {
    card: colour('--card', '#EFE6D2'), ink: colour('--ink', '#22303C'), line: colour('--line', '#B9AB8C'), measure: colour('--governs', '#8C2F2B'),
    parts: { 'whole sole': foam, foam, outsole: colour('--rubber', '#4A4640'), foot: colour('--plaster', '#E2DCD0'), mould: colour('--mould', '#AEB8B0'), lid: colour('--lid', '#C4CBC4') },
  };
}
