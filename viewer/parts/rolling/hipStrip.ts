import type { Point } from '../../../src/geometry/point.ts';
import type { Mm } from '../../../src/geometry/units.ts';
import { frameAt, PERCENT_SHARES, type WalkOn } from '../../../src/walk/frame.ts';
import { OTHER_LANDS } from '../../../src/walk/phases.ts';
import type { ShoeWalk } from '../../../src/walk/walking.ts';
import { lengthWords, type LengthUnit } from '../../keep/lengths.ts';
import { el, svgEl } from '../dom.ts';
import { scaleOver, type Scale } from './reach.ts';
import { spots } from './soleDrawn.ts';

/** How high the hip is through stance, from left to right, with a line at the moment that is shown. */
export interface HipStrip { readonly box: HTMLElement; readonly lay: (share: number) => void }

/** Lines of height lie so far apart, in each unit, mm. */
const APART: Readonly<Record<LengthUnit, Mm>> = { mm: 10, in: 12.7 };
const APART_WORDS: Readonly<Record<LengthUnit, string>> = { mm: '10 mm', in: '½ in' };

const hips = (on: WalkOn): readonly Point[] => PERCENT_SHARES.map((share) => [100 * share, frameAt(on, share).hip[1]]);

/** One scale for all shoes, so that their hips can be compared. */
export const hipScale = (shoes: readonly ShoeWalk[], lengths: LengthUnit): Scale => scaleOver(shoes.flatMap(({ own, ordinary }) => [own, ordinary].flatMap(hips).map(([, up]) => up)), APART[lengths]);

export function hipStrip({ kind, own, ordinary }: ShoeWalk, scale: Scale, lengths: LengthUnit): HipStrip {
  const mine = hips(own), other = kind === 'rocker' ? hips(ordinary) : [];
  const svg = svgEl('svg', { class: 'hip', viewBox: `0 ${-scale.to} 100 ${scale.to - scale.from}`, preserveAspectRatio: 'none', 'aria-hidden': 'true' });
  const now = svgEl('line', { class: 'now', x1: 0, x2: 0, y1: -scale.to, y2: -scale.from });
  svg.append(...heights(scale), ...(other.length ? [inTwo(other, 'ordinary')] : []), inTwo(mine, 'own'), now);
  const end = (up: Mm): HTMLElement => el('span', {}, lengthWords(up, lengths, lengths === 'in' ? 1 : 0));
  return {
    box: el('div', { class: 'hip-strip' }, el('p', {}, `Hip above the floor; lines ${APART_WORDS[lengths]} apart, dashed once the other foot carries too`), el('div', { class: 'scaled' }, el('div', { class: 'ends' }, end(scale.to), end(scale.from)), svg)),
    lay: (share) => now.setAttribute('transform', `translate(${(100 * share).toFixed(2)})`),
  };
}

const heights = ({ lines }: Scale): SVGElement[] => lines.map((up) => svgEl('line', { class: 'height', x1: 0, x2: 100, y1: -up, y2: -up }));

/** From when the other foot lands the knee bends, and the height is only where a straight leg would have it. */
function inTwo(points: readonly Point[], name: string): SVGGElement {
  const group = svgEl('g', { class: name }), part = (of: readonly Point[], as: string): SVGPolylineElement => svgEl('polyline', { class: as, points: spots(of) });
  const lands = Math.ceil(100 * OTHER_LANDS);
  group.append(part(points.slice(0, lands + 1), 'straight'), part(points.slice(lands), 'bent'));
  return group;
}
