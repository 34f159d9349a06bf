import type { Mm } from '../../../src/geometry/units.ts';
import type { LoadShown, PackShown } from '../../desk/protocol.ts';
import { svgEl } from '../dom.ts';
import { lettered, PICTURE_WIDE as WIDE } from './lettered.ts';

/** How many times as far as it bends the sole is drawn, at most; a soft one no further than its own length allows. */
const MOST_TIMES = 10, MOST_OF_LENGTH = 0.6;
export function mostTimes({ plate: { from, to } }: PackShown, { shape }: LoadShown): number {
  const most = Math.max(0, ...shape.map(([, , up]) => Math.abs(up)));
  return most === 0 ? MOST_TIMES : Math.min(MOST_TIMES, Math.max(1, Math.floor((MOST_OF_LENGTH * (to - from)) / most)));
}

/** In parts of the picture: room beside and, of what is borne by the foot, above and below; the thinnest stack that is drawn. */
const EDGE = 36, ABOVE = 34, BELOW = 56, MOST_HIGH = 210, THIN = 4;
/** On the bench: how high the blocks of the clamp are, and room for gauges above and for the mass below. */
const BLOCK = 22, GAUGES = 54, HANGS = { line: 24, wide: 66, high: 24 } as const;

interface Place { readonly x: Mm; readonly rest: Mm; readonly bent: Mm }

/** The stiffener as it lies in the picture. @property half of its thickness @property floor the lowest place, where letters stand */
interface Laid { readonly svg: SVGSVGElement; readonly places: readonly Place[]; readonly px: (x: Mm) => number; readonly py: (z: Mm) => number; readonly half: number; readonly low: number; readonly whole: number; readonly at: (x: Mm) => Place }

/**
 * The stiffener from the side, at rest dashed and bent in ink. Length and height to one scale, which stays the same however far
 * the bend is drawn. On the bench it lies foot side down as the bench card has it, so that what hangs on the toe bends it the way walking does.
 */
export function bentPicture(pack: PackShown, load: LoadShown, times: number): SVGSVGElement {
  const laid = laidOut(pack, load, times);
  if (load.clamp) onBench(laid, pack, load, load.clamp); else inShoe(laid, pack, load);
  return laid.svg;
}

function laidOut(pack: PackShown, load: LoadShown, times: number): Laid {
  const { plate: { from, to }, layers } = pack, way = load.clamp ? -1 : 1, most = mostTimes(pack, load), places = load.shape.map(([x, rest, up]): Place => ({ x, rest: way * rest, bent: way * (rest + up * times) }));
  const heights = [...load.shape.map(([, rest, up]) => way * (rest + up * most)), ...places.map(({ rest }) => rest)], least = Math.min(...heights), high = Math.max(...heights) - least;
  const above = load.clamp ? GAUGES + BLOCK : ABOVE, below = load.clamp ? HANGS.line + HANGS.high + BLOCK : BELOW;
  const scale = Math.min((WIDE - 2 * EDGE) / (to - from), (MOST_HIGH - above) / Math.max(high, 1)), whole = above + below + high * scale, left = (WIDE - (to - from) * scale) / 2;
  const px = (x: Mm): number => left + (x - from) * scale, py = (z: Mm): number => whole - below - (z - least) * scale;
  const thick = Math.max(THIN, layers.reduce((sum, layer) => sum + layer.thick, 0) * scale), svg = svgEl('svg', { class: 'bent', viewBox: `0 0 ${WIDE} ${whole.toFixed(1)}`, 'aria-hidden': 'true' });
  const line = (of: 'rest' | 'bent', as: string, width: number): SVGPolylineElement => svgEl('polyline', { class: as, 'stroke-width': width, points: places.map((one) => `${px(one.x).toFixed(1)},${py(one[of]).toFixed(1)}`).join(' ') });
  svg.append(line('bent', 'sole', thick), line('bent', 'within', Math.max(thick - 3, 1)), line('rest', 'rest', 1.5));
  return { svg, places, px, py, half: thick / 2 + 1, low: py(least), whole, at: (x) => places.reduce((best, one) => (Math.abs(one.x - x) < Math.abs(best.x - x) ? one : best)) };
}

/** The foot holds it at heel and ball; floor and toe push the rest up. */
function inShoe({ svg, px, py, half, whole, at }: Laid, { plate: { heel, ball } }: PackShown, load: LoadShown): void {
  for (const [x, words] of [[heel, 'heel'], [ball, 'ball']] as const) {
    const y = py(at(x).bent) + half;
    svg.append(svgEl('path', { class: 'bears', d: `M${px(x)} ${y}l-7 12h14Z` }), lettered(words, px(x), whole - 8, 'quiet', 'middle'));
  }
  const tip = py(at(load.at).bent) + half;
  svg.append(svgEl('path', { class: 'push', d: `M${px(load.at)} ${tip + 28}V${tip + 2}m-5 8l5 -8l5 8` }), lettered('push', px(load.at), whole - 8, 'quiet', 'middle'));
}

/** Blocks hold it up to the clamp line; a gauge stands on the tread line and one on the load line, where the mass hangs. */
function onBench({ svg, places, px, py, half, at }: Laid, { plate: { ball } }: PackShown, load: LoadShown, { at: clampAt, hung, droop }: NonNullable<LoadShown['clamp']>): void {
  const held = places.filter(({ x }) => x <= clampAt), ys = held.map(({ rest }) => py(rest)), top = Math.min(...ys) - half - BLOCK, foot = Math.max(...ys) + half + BLOCK, end = px(clampAt), start = px(held[0]!.x);
  const block = (by: number, edge: number): SVGElement => svgEl('path', { class: 'clamp', d: `M${start} ${edge}${held.map(({ x, rest }) => `L${px(x).toFixed(1)} ${(py(rest) + by).toFixed(1)}`).join('')}L${end} ${edge}Z` });
  svg.prepend(block(-half, top), block(half, foot));
  svg.append(svgEl('line', { class: 'table', x1: 4, x2: end, y1: foot, y2: foot }), lettered('bench', start, foot + 16, 'quiet'), lettered('clamped up to here', end - 4, foot + 16, 'quiet', 'end'));
  for (const [x, words] of [[ball, 'gauge 2'], [load.at, 'gauge 1']] as const) {
    const y = py(at(x).bent) - half;
    svg.append(svgEl('path', { class: 'gauge', d: `M${px(x)} ${top - 14}V${y - 1}m-4 -7l4 7l4 -7` }), svgEl('circle', { class: 'gauge', cx: px(x), cy: top - 20, r: 6 }), lettered(words, px(x), top - 31, 'quiet', 'middle'));
  }
  const y = py(at(load.at).bent) + half, box = y + HANGS.line, x = Math.min(px(load.at), WIDE - HANGS.wide / 2 - 2);
  svg.append(svgEl('line', { class: 'push', x1: px(load.at), x2: px(load.at), y1: y, y2: box }), svgEl('rect', { class: 'mass', x: x - HANGS.wide / 2, y: box, width: HANGS.wide, height: HANGS.high }), lettered(hung, x, box + 17, '', 'middle'));
  svg.append(lettered(`${droop} down`, x - HANGS.wide / 2 - 6, Math.max(box + 17, foot + 34), 'governs', 'end'));
}
