import type { MakingName } from '../../../src/fitting/words.ts';
import type { PartName, SolePart } from '../../desk/protocol.ts';
import { thingOf } from './partNames.ts';

export interface Palette { readonly card: string; readonly ink: string; readonly line: string; readonly measure: string; readonly part: (part: PartName) => string }

/** Things of the workshop, so far as they are not of plain board. */
const THINGS: Readonly<Partial<Record<MakingName, string>>> = { mould: '#AEB8B0', block: '#E4D9BE', print: '#B7BCC2', stack: '#D0B98C' }, BOARD = '#C8AD7F', LID = '#C4CBC4';

/** The page's own colours, or those it was drawn for where the page does not say. */
export function paletteOf(host: HTMLElement): Palette {
  const style = getComputedStyle(host), colour = (name: string, otherwise: string): string => style.getPropertyValue(name).trim() || otherwise;
  const foam = colour('--foam', '#D9C7A3');
  const sole: Readonly<Record<SolePart, string>> = { 'whole sole': foam, foam, outsole: colour('--rubber', '#4A4640'), foot: colour('--plaster', '#E2DCD0') };
  return {
    card: colour('--card', '#EFE6D2'), ink: colour('--ink', '#22303C'), line: colour('--line', '#B9AB8C'), measure: colour('--governs', '#8C2F2B'),
    part: (part) => {
      const thing = thingOf(part);
      return thing === undefined ? sole[part as SolePart] : part === 'mould: lid' ? LID : THINGS[thing] ?? BOARD;
    },
  };
}
