import type { Mm } from '../../../src/geometry/units.ts';
import { rounded } from '../../../src/checks/say.ts';
import type { PackShown } from '../../desk/protocol.ts';
import { inUnit, lengthWords, type LengthUnit } from '../../keep/lengths.ts';
import { svgEl } from '../dom.ts';
import { lettered, PICTURE_WIDE as WIDE } from './lettered.ts';

const LEFT = 46, RIGHT = WIDE - 8, BAND = 100, TOP = 26, FOOT = 40;
/** Marks along the shoe lie so far apart in each unit, mm. */
const APART: Readonly<Record<LengthUnit, Mm>> = { mm: 50, in: 50.8 };

interface Curve { readonly title: string; readonly unit: string; readonly digits: number; readonly values: readonly number[]; readonly limit?: number }

/** What is plotted along the sole. */
export type Plotted = 'stiffness' | 'strain';

function plottedCurve({ along, strainAtMost, est }: PackShown, what: Plotted): Curve {
  return what === 'stiffness' ? { title: `Bend stiffness, N·m²${est}`, unit: 'N·m²', digits: 1, values: along.map(([, stiffness]) => stiffness) }
    : { title: `Strain of the plies in walking, %${est}`, unit: '%', digits: 2, values: along.map(([, , strain]) => strain), limit: strainAtMost };
}

/** Bend stiffness, or the strain of walking, along the sole. */
export function alongPlot(pack: PackShown, what: Plotted, lengths: LengthUnit): SVGSVGElement {
  const { along, plate: { from, to, ball } } = pack, curve = plottedCurve(pack, what), px = (x: Mm): number => LEFT + ((x - from) / (to - from)) * (RIGHT - LEFT), places = along.map(([x]) => x), end = TOP + BAND;
  const svg = svgEl('svg', { class: 'along', viewBox: `0 0 ${WIDE} ${end + FOOT}`, role: 'img', 'aria-label': plotSaid(curve, places, ball, lengths) });
  const step = APART[lengths];
  for (let x = Math.ceil(from / step) * step; x <= to; x += step)
    svg.append(svgEl('line', { class: 'grid', x1: px(x), x2: px(x), y1: TOP, y2: end }), lettered(String(Math.round(inUnit(x, lengths))), px(x), end + 16, 'quiet', 'middle'));
  svg.append(svgEl('line', { class: 'ball', x1: px(ball), x2: px(ball), y1: TOP, y2: end }), lettered('ball', px(ball), end + 33, 'quiet', 'middle'), lettered(`${lengths} from the heel`, LEFT, end + 33, 'quiet'));
  svg.append(...curveDrawn(curve, places, px, TOP));
  return svg;
}

function plotSaid({ title, unit, digits, values }: Curve, places: readonly Mm[], ball: Mm, lengths: LengthUnit): string {
  const nearBall = places.reduce((best, x, i) => (Math.abs(x - ball) < Math.abs(places[best]! - ball) ? i : best), 0), most = values.reduce((best, value, i) => (value > values[best]! ? i : best), 0);
  return `${title}, along the sole: ${rounded(values[nearBall]!, digits)} ${unit} at the ball, most ${rounded(values[most]!, digits)} ${unit} at ${lengthWords(places[most]!, lengths, lengths === 'mm' ? 0 : 1)} from the heel.`;
}

function curveDrawn({ title, digits, values, limit }: Curve, places: readonly Mm[], px: (x: Mm) => number, top: number): SVGElement[] {
  const most = Math.max(...values, limit ?? 0), py = (value: number): number => top + BAND - (value / most) * (BAND - 6);
  const level = (value: number, kind: string): SVGElement[] => [svgEl('line', { class: kind, x1: LEFT, x2: RIGHT, y1: py(value), y2: py(value) })];
  return [
    lettered(title, LEFT, top - 8), ...level(0, 'axis'), lettered('0', LEFT - 6, py(0) + 4, 'quiet', 'end'), lettered(rounded(Math.max(...values), digits), LEFT - 6, py(Math.max(...values)) + 8, 'quiet', 'end'),
    svgEl('polyline', { class: 'curve-line', points: places.map((x, i) => `${px(x).toFixed(1)},${py(values[i]!).toFixed(1)}`).join(' ') }),
    ...(limit === undefined ? [] : [...level(limit, 'limit'), lettered(`at most ${rounded(limit, 1)} %`, RIGHT, py(limit) - 4, 'governs', 'end')]),
  ];
}
