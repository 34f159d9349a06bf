import type { Point } from '../../geometry/point.ts';
import { clamp } from '../../geometry/solve.ts';
import { degrees, type Mm, type Rad } from '../../geometry/units.ts';
import { tan } from '../../geometry/trig.ts';
import { rounded } from '../../checks/say.ts';
import type { FlatPart, PartLetters, PartMark } from '../flatPart.ts';
import { LETTER, linesInRows, linesOver, roughWidth, ROW, widthOf } from './lettering.ts';
import { polygon } from './polygon.ts';

/** How near the toe spring is kept. Common practice of the trade. */
export const SPRING_WITHIN: Mm = 1.5;

/** The wedge is this much steeper than the sole at its tip, or it would touch behind the tip; between these it is easy to hold and to read. */
const STEEPER: Rad = degrees(12), FLATTEST: Rad = degrees(45), STEEPEST: Rad = degrees(88);
/** How far it reaches above the planned height. */
const OVER: Mm = 8;

/** @property height of the end of the ground face above the ground at rest  @property slope of the face there */
export interface ToeEnd { readonly height: Mm; readonly slope: Rad }

/**
 * A wedge that is pushed under the toe from ahead, on the bench, until its slope touches the very end of the ground face; there
 * it reads the height of it. Ticks count the millimetres, longer ones at the fives and tens; the planned height is the longest
 * of all, and a bracket beside the ticks tells what may be less or more. The name stands ahead of them all.
 */
export function toeWedge(name: string, { height, slope }: ToeEnd, estimated: boolean): FlatPart {
  const rise = tan(clamp(slope + STEEPER, FLATTEST, STEEPEST)), top = height + OVER, run = top / rise;
  const planned = `${rounded(height, 1)} ±${SPRING_WITHIN}${estimated ? ' est.' : ''}`, lines = linesInRows(name, Math.floor((top - 2 * CLEAR) / ROW)), nameLeft = run + PLANNED.to + roughWidth(planned) + 3 * CLEAR, width = nameLeft + widthOf(lines) + CLEAR;
  const at: OnSlope = (z, aside) => [z / rise + aside, z], whole = Array.from({ length: Math.floor(top - 2 * SLIM) }, (_, i) => i + 1);
  const told = whole.filter((z) => z % 10 === 0 && Math.abs(z - height) > SPRING_WITHIN + LETTER / 2 + CLEAR && z + LETTER / 2 < top);
  return {
    name, outline: polygon([[0, 0], [width, 0], [width, top], [run, top]]), holes: [],
    marks: [...whole.filter((z) => Math.abs(z - height) >= ONE_TICK).map((z) => tick(z, tickTo(z), at)), ...plannedMarks(height, at)],
    letters: [
      ...told.map((z): PartLetters => ({ text: String(z), at: [z / rise + TICK.ten + 1, z - LETTER / 2], size: LETTER })),
      { text: planned, at: [height / rise + PLANNED.to + 1, height - LETTER / 2], size: LETTER },
      ...linesOver(lines, [nameLeft, (top - (lines.length - 1) * ROW - LETTER) / 2]),
    ],
  };
}

/** A point at a height, so far in from the slope. */
type OnSlope = (z: Mm, aside: Mm) => Point;
const scribed = (points: readonly Point[]): PartMark => ({ of: 'HEIGHTS', path: points.slice(1).map((to, i) => ({ kind: 'line', from: points[i]!, to })) });

/** A tick is a slim point, closed: single lines so near each other would be taken for one broken line. Its tip is at the height. */
const tick = (z: Mm, to: Mm, at: OnSlope): PartMark => scribed([at(z - SLIM, FROM), at(z, to), at(z + SLIM, FROM), at(z - SLIM, FROM)]);
const SLIM: Mm = 0.15;

/** Ticks begin so far in from the slope, clear of the cut, and reach so far: those of one, five and ten millimetres, the planned height and the ends of its bracket. */
const FROM: Mm = 1, TICK = { one: 3.5, five: 5.5, ten: 8 }, PLANNED = { bracket: 9.5, back: 12, to: 16 };
const tickTo = (z: Mm): Mm => (z % 10 === 0 ? TICK.ten : z % 5 === 0 ? TICK.five : TICK.one);

/** Between letters and what is beside them; a tick nearer to the planned height than this would be taken for it. */
const CLEAR: Mm = 1, ONE_TICK: Mm = 0.25;

function plannedMarks(height: Mm, at: OnSlope): PartMark[] {
  const [low, high] = [height - SPRING_WITHIN, height + SPRING_WITHIN];
  return [tick(height, PLANNED.to, at), scribed([at(low, PLANNED.bracket), at(low, PLANNED.back), at(high, PLANNED.back), at(high, PLANNED.bracket)])];
}
