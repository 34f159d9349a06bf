import type { Paper } from '../../src/exports/drawing.ts';
import { roomFor } from '../../src/exports/letters.ts';
import type { Handle } from '../desk/protocol.ts';
import { isLengthUnit, shownLength, type LengthUnit } from '../keep/lengths.ts';
import { svgEl } from './dom.ts';

export interface Holding {
  readonly layer: SVGGElement;
  /** @param lengths what lengths are shown in; @param pixel how much of the paper a pixel of the screen is, mm */
  readonly show: (handle: Handle, value: number, stopped: boolean, lengths: LengthUnit, paper: Paper, pixel: number) => void;
  readonly hide: () => void;
  /** The handle that is shown as held, and whether it was stopped at a limit. */
  readonly shown: () => string | undefined;
  readonly stopped: () => boolean;
}

/** Words stand this far off the pin, clear of the finger that holds it, px. */
const OFF = 62;
const SIZE = 3.2;

/** What a held pin moves, how far it may go, and the rail it runs on. */
export function holding(): Holding {
  const layer = svgEl('g', { class: 'holding', 'aria-hidden': 'true' });
  let id: string | undefined, at_limit = false;
  return {
    layer,
    show: (handle, value, stopped, lengths, paper, pixel) => {
      id = handle.id;
      at_limit = stopped;
      layer.replaceChildren(...rail(handle, paper), ...said(handle, limitWords(handle, value, stopped, lengths), paper, pixel));
    },
    hide: () => { id = undefined; at_limit = false; layer.replaceChildren(); },
    shown: () => id, stopped: () => at_limit,
  };
}

/** A value of a pin as the page counts: lengths in the unit shown, angles and shares as ever. */
export function pinNumber({ unit }: Pick<Handle, 'unit'>, value: number, lengths: LengthUnit): readonly [value: number, unit: string] {
  const [shown, sign] = isLengthUnit(unit) ? [shownLength(value, unit, lengths), lengths] : [value, unit];
  return [Number(shown.toFixed(sign === 'in' ? 3 : 1)), sign];
}

/** "63 %", "4.5°", "0.472 in". */
export const pinWords = (handle: Pick<Handle, 'unit'>, value: number, lengths: LengthUnit): string => pinNumber(handle, value, lengths).join(' ').replace(' °', '°');

/** What it is now, and between what it may be; where it was stopped, why it goes no further. */
export function limitWords(handle: Handle, value: number, stopped: boolean, lengths: LengthUnit): readonly [now: string, range: string] {
  const { label, least, most } = handle, said = (one: number): string => pinWords(handle, one, lengths);
  const limit = value <= (least + most) / 2 ? `the least is ${said(least)}` : `the most is ${said(most)}`;
  return [`${label} ${said(value)}`, stopped ? `stops here: ${limit}` : `from ${said(least)} to ${said(most)}`];
}

/** The same as it is read out: without the name, and without the range as long as it goes on. */
export const spokenWords = (handle: Handle, value: number, stopped: boolean, lengths: LengthUnit): string =>
  [pinWords(handle, value, lengths), ...(stopped ? [limitWords(handle, value, stopped, lengths)[1]] : [])].join(', ');

/** Where a limit would bring the pin, and the line between as far as it lies on the paper. */
export function railOf({ at: [x, y], moves, value, perPaper, least, most }: Handle, { width, height }: Paper): { readonly from: readonly [number, number]; readonly to: readonly [number, number]; readonly limits: readonly (readonly [number, number])[] } {
  const along = moves === 'along', on = (one: number): readonly [number, number] => along ? [x + (one - value) / perPaper, y] : [x, y - (one - value) / perPaper];
  const cut = ([px, py]: readonly [number, number]): readonly [number, number] => [Math.min(width, Math.max(0, px)), Math.min(height, Math.max(0, py))];
  const ends = [on(least), on(most)] as const;
  return { from: cut(ends[0]), to: cut(ends[1]), limits: ends.filter(([px, py]) => px >= 0 && px <= width && py >= 0 && py <= height) };
}

function rail(handle: Handle, paper: Paper): SVGElement[] {
  const { from, to, limits } = railOf(handle, paper), [dx, dy] = handle.moves === 'along' ? [0, 2.2] : [2.2, 0];
  return [
    svgEl('line', { x1: from[0], y1: from[1], x2: to[0], y2: to[1], class: 'rail' }),
    ...limits.map(([x, y]) => svgEl('line', { x1: x - dx, y1: y - dy, x2: x + dx, y2: y + dy, class: 'limit' })),
  ];
}

function said({ at: [x, y] }: Handle, lines: readonly string[], paper: Paper, pixel: number): SVGElement[] {
  const width = Math.max(...lines.map((line) => roomFor(line))) + 3, height = lines.length * 4.2 + 2;
  const left = Math.min(paper.width - width - 1, Math.max(1, x - width / 2)), over = y - OFF * pixel - height, top = over >= 1 ? over : y + OFF * pixel;
  const text = lines.map((line, i) => {
    const made = svgEl('text', { x: left + 1.5, y: top + 4 + i * 4.2, 'font-size': SIZE });
    made.textContent = line;
    return made;
  });
  return [svgEl('rect', { x: left, y: top, width, height }), ...text];
}
