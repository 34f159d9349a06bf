import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { ARROW_LENGTH, arrowHead, LETTERS, stroke, words, type Mark, type Words } from './drawing.ts';
import { textWidth } from './letters.ts';

/** A dimension as a workshop writes it: extension lines, a line with arrows, the value above it. Source: ISO 129-1 (from memory). */
export interface Dimension { readonly marks: readonly Mark[]; readonly label: Words }

/** Extension lines begin a little off what they extend and run a little past the dimension line. */
const OFF: Mm = 0.8, PAST: Mm = 1.2, ABOVE: Mm = 1.35;

/** Between two points, on a level line at a height of the paper, for what lies above it. */
export function levelDimension([x0, y0]: Point, [x1, y1]: Point, lineY: Mm, text: string): Dimension {
  const extension = (x: Mm, y: Mm): Mark => stroke([x, y + OFF], [x, lineY + PAST]);
  const label = words(text, [(x0 + x1) / 2, lineY - ABOVE], { anchor: 'middle' });
  const fits = textWidth(text, label) < x1 - x0 - 1;
  return {
    marks: [extension(x0, y0), extension(x1, y1), ...arrows([x0, lineY], [x1, lineY])],
    label: fits ? label : { ...label, at: [x1 + ARROW_LENGTH + 1, lineY - ABOVE], anchor: 'start' },
  };
}

/** Between two points, on an upright line at a place of the paper; the value reads upwards, left of the line. */
export function uprightDimension([x0, y0]: Point, [x1, y1]: Point, lineX: Mm, text: string): Dimension {
  const extension = (x: Mm, y: Mm): Mark[] => {
    const way = Math.sign(lineX - x);
    return Math.abs(lineX - x) > OFF ? [stroke([x + way * OFF, y], [lineX + way * PAST, y])] : [];
  };
  const low = Math.max(y0, y1), high = Math.min(y0, y1), length = textWidth(text, { size: LETTERS.label });
  const from = length < low - high ? (low + high + length) / 2 : low - OFF;
  return {
    marks: [...extension(x0, y0), ...extension(x1, y1), ...arrows([lineX, high], [lineX, low])],
    label: words(text, [lineX - ABOVE, from], { turned: true }),
  };
}

/** A dimension line: arrows point outwards from within, or inwards from outside where there is no room. */
function arrows(a: Point, b: Point): Mark[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]), ux = (b[0] - a[0]) / (length || 1), uy = (b[1] - a[1]) / (length || 1);
  if (length > 2.6 * ARROW_LENGTH) return [stroke(a, b), arrowHead(a, [-ux, -uy]), arrowHead(b, [ux, uy])];
  const beyond = 2 * ARROW_LENGTH;
  return [
    stroke([a[0] - ux * beyond, a[1] - uy * beyond], [b[0] + ux * beyond, b[1] + uy * beyond]),
    arrowHead(a, [ux, uy]), arrowHead(b, [-ux, -uy]),
  ];
}
