import type { Point } from '../../geometry/point.ts';
import { clamp } from '../../geometry/solve.ts';
import { degrees, type Mm, type Rad } from '../../geometry/units.ts';
import { tan } from '../../geometry/trig.ts';
import { rounded } from '../../checks/say.ts';
import type { FlatPart, PartLetters, PartMark } from '../flatPart.ts';
import { LETTER } from './lettering.ts';
import { polygon } from './polygon.ts';

/** How near the toe spring is kept. Common practice of the trade. */
export const SPRING_WITHIN: Mm = 1.5;

/** The wedge is this much steeper than the sole at its tip, or it would touch behind the tip; between these it is easy to hold and to read. */
const STEEPER: Rad = degrees(12), FLATTEST: Rad = degrees(45), STEEPEST: Rad = degrees(88);
/** How far it reaches above the planned height, and how wide its back is. */
const OVER: Mm = 8, BACK: Mm = 54;

/** The name is longer than the wedge is wide, in letters of the usual size. */
const NAME: Mm = 2.5;

/** @property height of the end of the ground face above the ground at rest  @property slope of the face there */
export interface ToeEnd { readonly height: Mm; readonly slope: Rad }

/**
 * A wedge that is pushed under the toe from ahead, on the bench, until its slope touches the very end of the ground face; there
 * it reads the height of it. A ladder counts the millimetres, with longer rungs at the tens; the planned height runs right
 * across a frame of what may be less or more.
 */
export function toeWedge(name: string, { height, slope }: ToeEnd, estimated: boolean): FlatPart {
  const rise = tan(clamp(slope + STEEPER, FLATTEST, STEEPEST)), top = height + OVER, run = top / rise, width = run + BACK;
  const at: OnSlope = (z, aside) => [z / rise + aside, z], whole = Array.from({ length: Math.floor(top) }, (_, i) => i + 1);
  const tens = whole.filter((z) => z % 10 === 0), told = tens.filter((z) => Math.abs(z - height) > 2 * LETTER);
  return {
    name, outline: polygon([[0, 0], [width, 0], [width, top], [run, top]]), holes: [],
    marks: [ladder(whole, at), ...tens.map((z) => scribed([at(z, RUNG.to), at(z, RUNG.ten)])), ...plannedMarks(height, at)],
    letters: [
      { text: name, at: [run + 2, top - LETTER - 0.8], size: NAME },
      ...told.map((z): PartLetters => ({ text: String(z), at: [z / rise + RUNG.ten + 1, z - LETTER / 2], size: LETTER })),
      { text: `${rounded(height, 1)} ±${SPRING_WITHIN}${estimated ? ' est.' : ''}`, at: [height / rise + ACROSS.to + 1, height - LETTER / 2], size: LETTER },
    ],
  };
}

/** A point at a height, so far in from the slope. */
type OnSlope = (z: Mm, aside: Mm) => Point;
const scribed = (points: readonly Point[]): PartMark => ({ of: 'HEIGHTS', path: points.slice(1).map((to, i) => ({ kind: 'line', from: points[i]!, to })) });

/** From where to where, in from the slope, the rungs reach, the tens, and the planned height with its frame. */
const RUNG = { from: 1, to: 4, ten: 8 }, ACROSS = { from: 0.4, frame: 10, to: 16 };

/** One line that runs to and fro: rungs by themselves would lie so near each other that programs join their ends. */
const ladder = (whole: readonly Mm[], at: OnSlope): PartMark =>
  scribed(whole.flatMap((z, i) => (i % 2 === 0 ? [at(z, RUNG.from), at(z, RUNG.to)] : [at(z, RUNG.to), at(z, RUNG.from)])));

function plannedMarks(height: Mm, at: OnSlope): PartMark[] {
  const [low, high] = [height - SPRING_WITHIN, height + SPRING_WITHIN], corners = [at(low, ACROSS.from), at(low, ACROSS.frame), at(height, ACROSS.frame), at(high, ACROSS.frame), at(high, ACROSS.from), at(height, ACROSS.from)];
  return [scribed([...corners, corners[0]!]), scribed([at(height, ACROSS.from), at(height, ACROSS.frame), at(height, ACROSS.to)])];
}
