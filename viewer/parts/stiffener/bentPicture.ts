import type { Mm } from '../../../src/geometry/units.ts';
import type { PackShown } from '../../desk/protocol.ts';
import { svgEl } from '../dom.ts';
import { lettered } from './lettered.ts';

export type BentLoad = PackShown['bent'][number];

/** How many times as far as it bends the sole is drawn, at most; a soft one no further than its own length allows. */
const MOST_TIMES = 10, MOST_OF_LENGTH = 0.6;
export function mostTimes({ plate: { from, to } }: PackShown, { shape }: BentLoad): number {
  const most = Math.max(0, ...shape.map(([, , up]) => Math.abs(up)));
  return most === 0 ? MOST_TIMES : Math.min(MOST_TIMES, Math.max(1, Math.floor((MOST_OF_LENGTH * (to - from)) / most)));
}

const WIDE = 480, MOST_HIGH = 260, EDGE = 20, FLOOR = 40, THIN = 4, NEAR_TOP = 40;

/**
 * The stiffener from the side, at rest dashed and bent in ink. Length and height to one scale, which stays the same however far
 * the bend is drawn. On the bench the forepart hangs down; in the shoe floor and toe push it up.
 */
export function bentPicture(pack: PackShown, load: BentLoad, times: number): SVGSVGElement {
  const { plate, layers } = pack, { by, at, shape } = load, most = mostTimes(pack, load), way = by === 'bench' ? -1 : 1, lies = shape.map(([x, rest, up]) => ({ x, rest, bent: rest + way * up * times })), far = shape.map(([, rest, up]) => rest + way * up * most);
  const heights = [...far, ...lies.map(({ rest }) => rest)], low = Math.min(...heights), high = Math.max(...heights), { from, to } = plate;
  const scale = Math.min((WIDE - 2 * EDGE) / (to - from), (MOST_HIGH - NEAR_TOP - FLOOR - EDGE) / (high - low)), whole = NEAR_TOP + FLOOR + EDGE + (high - low) * scale, left = (WIDE - (to - from) * scale) / 2;
  const px = (x: Mm): number => left + (x - from) * scale, py = (z: Mm): number => whole - FLOOR - EDGE - (z - low) * scale;
  const line = (of: 'rest' | 'bent', as: string, width: number): SVGPolylineElement => svgEl('polyline', { class: as, 'stroke-width': width, points: lies.map((one) => `${px(one.x).toFixed(1)},${py(one[of]).toFixed(1)}`).join(' ') });
  const nearest = (x: Mm): { readonly rest: Mm; readonly bent: Mm } => lies.reduce((best, one) => (Math.abs(one.x - x) < Math.abs(best.x - x) ? one : best));
  const thick = Math.max(THIN, layers.reduce((sum, layer) => sum + layer.thick, 0) * scale), half = thick / 2 + 2;
  const svg = svgEl('svg', { class: 'bent', viewBox: `0 0 ${WIDE} ${whole.toFixed(1)}`, 'aria-hidden': 'true' });
  svg.append(line('bent', 'sole', thick), line('bent', 'within', thick - 3), line('rest', 'rest', 1.5));
  const mark = (x: Mm, words: string): void => {
    const y = py(nearest(x).bent) + half;
    svg.append(svgEl('path', { class: 'bears', d: `M${px(x)} ${y}l-7 12h14Z` }), lettered(words, px(x), whole - 12, 'quiet', 'middle'));
  };
  if (by === 'bench') svg.append(svgEl('rect', { class: 'clamp', x: px(from), y: py(Math.max(...lies.filter(({ x }) => x <= plate.ball).map(({ rest }) => rest))) - half - 9, width: (plate.ball - from) * scale, height: 9 }), lettered('clamped up to the ball', px(from) + 4, whole - 12, 'quiet'));
  else mark(plate.heel, 'heel');
  if (by !== 'bench') mark(plate.ball, 'ball');
  const tip = py(nearest(at).bent), arrow = by === 'bench' ? tip - half - 26 : tip + half + 26, head = by === 'bench' ? -8 : 8;
  svg.append(svgEl('path', { class: 'push', d: `M${px(at)} ${arrow}V${tip + Math.sign(head) * half}m-5 ${head}l5 ${-head}l5 ${head}` }), lettered(by === 'bench' ? 'load' : 'push', px(at), whole - 12, 'quiet', 'middle'));
  return svg;
}
