import { rounded } from '../checks/say.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { ShoeTargets } from '../targets/shoeTargets.ts';
import { about, circle, clearWords, drawn, filled, LETTERS, polyline, stroke, words, type Drawing, type Mark } from './drawing.ts';

/** A6 on its side. */
const PAPER = { width: 148, height: 105 }, FRAME = { left: 20, right: 140, top: 17, bottom: 86 };
/** Room round what is drawn, in mm of height and degrees. */
const ROUND = 0.5;
const DOT: Mm = 1.1, CROSS: Mm = 1.8, GAP: Mm = 1.2;

/** An axis: what it spans, and where that lies on paper. */
interface Scale { readonly from: number; readonly to: number; readonly step: number; readonly place: (value: number) => Mm }

function scaleOver(values: readonly number[], near: Mm, far: Mm): Scale {
  const least = Math.min(...values) - ROUND, most = Math.max(...values) + ROUND, step = [0.5, 1, 2, 5, 10].find((one) => (most - least) / one <= 9) ?? 20;
  const from = Math.floor(least / step) * step, to = Math.ceil(most / step) * step;
  return { from, to, step, place: (value) => near + ((value - from) / (to - from)) * (far - near) };
}

const ticksOf = ({ from, to, step }: Scale): number[] => Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

/**
 * What a millimetre buys: the height allowed against the toe-off angle of the best rocker within it, each dot a whole
 * answer; a cross for the shoe as it is ordered. Each dot is called `tradeOff.N`, the lowest height 0, so that a screen
 * can let it be pressed.
 */
export function tradeOffDrawing({ curve, answer: { estimated } }: ShoeTargets, reference: string): Drawing {
  const { points, ordered, over, label, side } = curve, own = ordered && { height: ordered[HEIGHT[over]], toeOff: ordered.toeOff };
  const across = scaleOver([...points.map(({ limit }) => limit), ...(own ? [own.height] : [])], FRAME.left, FRAME.right);
  const up = scaleOver([...points.map(({ best }) => best.figures.toeOff), ...(own ? [own.toeOff] : [])], FRAME.bottom, FRAME.top);
  const dots = points.map(({ limit, best }): Point => [across.place(limit), up.place(best.figures.toeOff)]);
  const title = `${reference}, ${side} shoe: what a millimetre buys`;
  return {
    paper: PAPER, title,
    marks: [
      words(title, [FRAME.left, 9], { size: LETTERS.heading, bold: true }), ...axes(across, up, [`${label}, mm`, `Toe-off angle reached${estimated.includes('toeOff') ? ' (est.)' : ''}`]),
      ...(dots.length > 1 ? [drawn(polyline(dots), 'thin', 'computed')] : []),
      ...dots.map((dot, i) => about(`tradeOff.${i}`, filled(circle(dot, DOT), 'computed'))),
      ...(own ? orderedMark([across.place(own.height), up.place(own.toeOff)]) : []),
      words('Each dot is a rocker of its own that was solved; the cross is the shoe as it is ordered.', [FRAME.left, PAPER.height - 3.5], { size: LETTERS.caption, ink: 'pencil' }),
    ],
  };
}

const HEIGHT = { seatHeightAtMost: 'seatHeight', ballHeightAtMost: 'ballHeight', ballThicknessAtMost: 'ballThickness' } as const;

function axes(across: Scale, up: Scale, [below, beside]: readonly [string, string]): Mark[] {
  const { left, right, top, bottom } = FRAME, size = LETTERS.caption + 0.4;
  return [
    ...ticksOf(across).flatMap((value) => [stroke([across.place(value), top], [across.place(value), bottom]), words(tickWords(value, across), [across.place(value), bottom + 4], { size, anchor: 'middle' })]),
    ...ticksOf(up).flatMap((value) => [stroke([left, up.place(value)], [right, up.place(value)]), words(`${tickWords(value, up)}°`, [left - GAP, up.place(value) + 1], { size, anchor: 'end' })]),
    drawn(polyline([[left, top], [left, bottom], [right, bottom]]), 'visible'),
    words(below, [(left + right) / 2, bottom + 10], { anchor: 'middle' }), words(beside, [left - 12, (top + bottom) / 2], { anchor: 'middle', turned: true }),
  ];
}

const tickWords = (value: number, { step }: Scale): string => rounded(value, step < 1 ? 1 : 0);

/** A cross, and its name on the side where there is more room. */
function orderedMark([x, y]: Point): Mark[] {
  const aside = x > (FRAME.left + FRAME.right) / 2;
  return [
    stroke([x - CROSS, y - CROSS], [x + CROSS, y + CROSS], 'visible', 'governs'), stroke([x - CROSS, y + CROSS], [x + CROSS, y - CROSS], 'visible', 'governs'),
    ...clearWords(words('as ordered', [x + (aside ? -1 : 1) * (CROSS + GAP), y - CROSS - GAP], { anchor: aside ? 'end' : 'start', ink: 'governs' })),
  ];
}
