import type { Mm } from '../../geometry/units.ts';
import type { PartLetters } from '../flatPart.ts';
import { wide } from './letters.ts';

/** A stretch of a rail where lettering would be cut away or written over, or where it stands already, mm. */
export interface Box { readonly from: Mm; readonly to: Mm; readonly low: Mm; readonly high: Mm }

/** Where a rail has wood: its edge, its ends and foot, and what lettering must keep off. */
export interface Wood { readonly edge: (x: Mm) => Mm; readonly from: Mm; readonly to: Mm; readonly foot: Mm; readonly taken: readonly Box[] }

/** Sizes of lettering that are tried; the last is the smallest that is read at the bench. Common practice. */
const SIZES: readonly Mm[] = [3.5, 3, 2.5, 2];
/** Left round lettering; steps in which places are tried. */
const CLEAR: Mm = 1, ALONG: Mm = 3, DOWN: Mm = 1;

/** Lines of lettering on a rail, each as large as there is room for it and as near to a place along as can be, across no slot. */
export function titles(lines: readonly string[], wood: Wood, about: Mm): PartLetters[] {
  const taken = [...wood.taken];
  return lines.map((text) => {
    const found = roomFor(text, { ...wood, taken }, about);
    taken.push(boxOf(found));
    return found;
  });
}

function roomFor(text: string, wood: Wood, about: Mm): PartLetters {
  for (const size of SIZES) for (const start of startsFor(wide(text, size), wood, about)) {
    const most = topAt(wood, start, start + wide(text, size)) - CLEAR - size;
    for (let low = most; low >= wood.foot + CLEAR; low -= DOWN) {
      const line: PartLetters = { text, at: [start, low], size };
      if (!wood.taken.some((box) => overlaps(boxOf(line), box))) return line;
    }
  }
  const size = SIZES.at(-1)!, start = about - wide(text, size) / 2;
  return { text, at: [start, topAt(wood, start, start + wide(text, size)) - CLEAR - size], size };
}

/** Left ends of a line of a length, those nearest to the middle wanted first. */
function startsFor(long: Mm, { from, to }: Wood, about: Mm): Mm[] {
  const least = from + CLEAR, count = Math.max(0, Math.floor((to - CLEAR - long - least) / ALONG) + 1), wanted = about - long / 2;
  return Array.from({ length: count }, (_, i) => least + i * ALONG).sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
}

/** The edge bulges upwards, so over a stretch it is lowest at one end. */
const topAt = ({ edge }: Wood, from: Mm, to: Mm): Mm => Math.min(edge(from), edge(to));

const boxOf = ({ text, at: [x, y], size }: PartLetters): Box => ({ from: x - CLEAR, to: x + wide(text, size) + CLEAR, low: y - CLEAR, high: y + size + CLEAR });
const overlaps = (a: Box, b: Box): boolean => a.from < b.to && b.from < a.to && a.low < b.high && b.low < a.high;
