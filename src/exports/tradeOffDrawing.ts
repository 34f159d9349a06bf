import { rounded } from '../checks/say.ts';
import { changedUnit, type LengthUnit } from '../fitting/lengthUnit.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { ShoeTargets } from '../targets/shoeTargets.ts';
import { about, boxOf, circle, clearWords, drawn, filled, LETTERS, overlap, polyline, stroke, words, type Drawing, type Mark, type Paper, type Words } from './drawing.ts';

/** A6 on its side. Source: ISO 216. */
const A6: Paper = { width: 148, height: 105 };
/** Room for what stands round the field, and for a heading and a line below where they are wanted. */
const ROUND = { left: 17, right: 5, top: 6, bottom: 15 }, HEADED = { left: 3, right: 3, top: 11, bottom: 4 };
const DOT: Mm = 1.1, RING: Mm = 2, CROSS: Mm = 1.8, GAP: Mm = 1.2;
/** Room round what is drawn, as a share of what it spans, and at least in mm of height or degrees. */
const SPARE = 0.04, LEAST_SPARE = 0.3;

/** An axis: what it spans, and where that lies on paper. */
interface Scale { readonly from: number; readonly to: number; readonly step: number; readonly place: (value: number) => Mm }

/** Words of a tick need so much room, and steps are round. */
const APART: Mm = 11, STEPS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];

function scaleOver(values: readonly number[], near: Mm, far: Mm, least: number): Scale {
  const low = Math.min(...values), high = Math.max(...values), spare = Math.max(least, SPARE * (high - low)), ticks = Math.floor(Math.abs(far - near) / APART);
  const fits = (step: number): boolean => Math.ceil((high + spare) / step - TINY) - Math.floor((low - spare) / step + TINY) <= ticks;
  const step = STEPS.find(fits) ?? 20, from = Math.floor((low - spare) / step + TINY) * step, to = Math.ceil((high + spare) / step - TINY) * step;
  return { from, to, step, place: (value) => near + ((value - from) / (to - from)) * (far - near) };
}
const TINY = 1e-9;

const ticksOf = ({ from, to, step }: Scale): number[] => Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

/** How it is to be drawn: heights in which unit, on what paper, and whether what it shows is told on it too. */
export interface TradeOffStyle { readonly lengths: LengthUnit; readonly paper: Paper; readonly headed: boolean }
/** As a file. */
export const onA6 = (lengths: LengthUnit): TradeOffStyle => ({ lengths, paper: A6, headed: true });

/** A drawing, and where on its paper the dots lie. */
export interface TradeOffSheet { readonly drawing: Drawing; readonly dots: readonly Point[] }

/**
 * What height buys: the height allowed against the greatest toe-off angle there is within it, each dot a shoe of its own; a cross for
 * the shoe as it is ordered, a ring for the answer, a line where the limit stands. Each dot is called `tradeOff.N`, the lowest height 0,
 * so that a screen can let it be pressed.
 */
export function tradeOffSheet({ curve, answer }: ShoeTargets, reference: string, { lengths, paper, headed }: TradeOffStyle): TradeOffSheet {
  const { points, ordered, over, label, side, asked } = curve, height = (mm: number): number => changedUnit(mm, 'mm', lengths), of = HEIGHT[over];
  const frame = frameOn(paper, headed), shoes = [...(ordered ? [ordered] : []), ...(answer.ok ? [answer.best.figures] : [])];
  const across = scaleOver([...points.map(({ limit }) => limit), ...shoes.map((one) => one[of]), ...(asked === undefined ? [] : [asked])].map(height), frame.left, frame.right, height(LEAST_SPARE));
  const up = scaleOver([...points.map(({ best }) => best.figures.toeOff), ...shoes.map(({ toeOff }) => toeOff)], frame.bottom, frame.top, LEAST_SPARE);
  const at = (mm: number, toeOff: number): Point => [across.place(height(mm)), up.place(toeOff)], dots = points.map(({ limit, best }) => at(limit, best.figures.toeOff));
  const title = `${reference}, ${side} shoe: what height buys`, estimated = answer.estimated.includes('toeOff') ? ' (est.)' : '';
  return {
    dots,
    drawing: {
      paper, title,
      marks: [
        ...(headed ? told(title, frame, paper, answer.ok) : []), ...axes(across, up, frame, [`${label}, ${lengths}`, `Toe-off angle reached${estimated}`]),
        ...(asked === undefined ? [] : limitMark(across.place(height(asked)), frame)),
        ...(dots.length > 1 ? [drawn(polyline(dots), 'thin', 'computed')] : []),
        ...(answer.ok ? [drawn(circle(at(answer.best.figures[of], answer.best.figures.toeOff), RING), 'hidden', 'ink')] : []),
        ...dots.map((dot, i) => about(`tradeOff.${i}`, filled(circle(dot, DOT), 'computed'))),
        ...(ordered ? orderedMark(at(ordered[of], ordered.toeOff), frame, dots) : []),
      ],
    },
  };
}

const HEIGHT = { seatHeightAtMost: 'seatHeight', ballHeightAtMost: 'ballHeight', ballThicknessAtMost: 'ballThickness' } as const;

interface Frame { readonly left: Mm; readonly right: Mm; readonly top: Mm; readonly bottom: Mm }
function frameOn({ width, height }: Paper, headed: boolean): Frame {
  const more = (name: keyof Frame): Mm => ROUND[name] + (headed ? HEADED[name] : 0);
  return { left: more('left'), right: width - more('right'), top: more('top'), bottom: height - more('bottom') };
}

/** What the marks of the picture are, in a line. */
export const keySaid = (found: boolean): string => `Each dot turns furthest at its height; the cross is the shoe as ordered${found ? ', the ring the one that loses least within all limits' : ''}.`;

const told = (title: string, { left }: Frame, { height }: Paper, found: boolean): Mark[] => [
  words(title, [left, 9], { size: LETTERS.heading, bold: true }), words(keySaid(found), [left, height - 3.5], { size: LETTERS.caption, ink: 'pencil' }),
];

function axes(across: Scale, up: Scale, { left, right, top, bottom }: Frame, [below, beside]: readonly [string, string]): Mark[] {
  const size = LETTERS.caption + 0.4;
  return [
    ...ticksOf(across).flatMap((value) => [stroke([across.place(value), top], [across.place(value), bottom]), words(tickWords(value, across), [across.place(value), bottom + 4], { size, anchor: 'middle' })]),
    ...ticksOf(up).flatMap((value) => [stroke([left, up.place(value)], [right, up.place(value)]), words(`${tickWords(value, up)}°`, [left - GAP, up.place(value) + 1], { size, anchor: 'end' })]),
    drawn(polyline([[left, top], [left, bottom], [right, bottom]]), 'visible'),
    words(below, [(left + right) / 2, bottom + 10], { anchor: 'middle' }), words(beside, [left - 11, (top + bottom) / 2], { anchor: 'middle', turned: true }),
  ];
}

const tickWords = (value: number, { step }: Scale): string => rounded(value, step < 0.1 ? 2 : step < 1 ? 1 : 0);

/** Its word reads upwards at the foot of the line, where the curve is not. */
function limitMark(x: Mm, frame: Frame): Mark[] {
  const { top, bottom } = frame;
  return [stroke([x, top], [x, bottom], 'hidden', 'governs'), ...clearWords(words('limit', [x - GAP, bottom - GAP], { turned: true, ink: 'governs', size: LETTERS.caption + 0.4 }))];
}

/** A cross, and its name on a side where no dot is under it. */
function orderedMark([x, y]: Point, { left, right, top, bottom }: Frame, dots: readonly Point[]): Mark[] {
  const named = ([1, -1] as const).flatMap((down) => (['end', 'start'] as const).map((anchor) =>
    words('as ordered', [x + (anchor === 'end' ? -1 : 1) * (CROSS + GAP), y + (down > 0 ? CROSS + GAP + 2 : -CROSS - GAP)], { anchor, ink: 'governs' })));
  const isFree = (one: Words): boolean => {
    const box = boxOf(one);
    return box.left > left && box.right < right && box.top > top && box.bottom < bottom && dots.every(([a, b]) => !overlap(box, { left: a - DOT, right: a + DOT, top: b - DOT, bottom: b + DOT }));
  };
  return [
    stroke([x - CROSS, y - CROSS], [x + CROSS, y + CROSS], 'visible', 'governs'), stroke([x - CROSS, y + CROSS], [x + CROSS, y - CROSS], 'visible', 'governs'),
    ...clearWords(named.find(isFree) ?? words('as ordered', [x, y + CROSS + 2 * GAP + 2], { anchor: 'middle', ink: 'governs' })),
  ];
}
