import { fitArcs, moved, mirroredPath, pointOn, reversed, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { clamp } from '../../geometry/solve.ts';
import { OUTLINE_GAP, SAME_POINT } from '../../geometry/tolerances.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Side } from '../../fitting/words.ts';
import { facePath } from '../../profile/facePath.ts';
import { heightAt } from '../../profile/groundFace.ts';
import { planPoint } from '../../profile/rollLine.ts';
import type { FlatPart, PartLetters } from '../flatPart.ts';
import { roughWidth } from '../gauges/lettering.ts';
import { bandOf, sliceAt } from '../gauges/slice.ts';
import { alongShift } from './base.ts';
import type { Trial, TrialShape } from './trial.ts';
import { variantWords } from './variants.ts';

/**
 * What the trial is cut from sheet by: base and wedges from the side, to be sawn from a block or a thick sheet as wide as the
 * sole, and the edge from above to trim them to. Seen square to the crest; a side view has no side, the edge has.
 */
export function wedgeTemplates(side: Side, trial: Trial): FlatPart[] {
  return [edgeTemplate(side, trial), baseTemplate(side, trial), ...trial.shapes.map((shape) => wedgeTemplate(side, trial, shape))];
}

/** The base from the side: under the stiffener, in the middle of the sole. */
function baseTemplate(side: Side, { planned: { shape, rocker: { hip: [standing] } }, base, baseRim }: Trial): FlatPart {
  const { last, line, upper, build, stiffener } = shape, across = middleOf(baseRim), { from, to } = sliceAt(baseRim, across);
  const top = (along: Mm): Point => [along, upper(...planPoint(line, along, across)) + build - stiffener];
  const alongOf = (x: Mm): Mm => line.apexX + (x - line.apexX + across * line.sine) / line.cosine;
  const breaks = [from, ...[last.seatLength, last.tread, last.length].map(alongOf).filter((along) => along > from + SAME_POINT && along < to - SAME_POINT), to];
  const outline = closedBetween(facePath(base, from, to), fitArcs(top, breaks, OUTLINE_GAP));
  return { name: `${side} trial base, side`, outline, holes: [], marks: [], letters: lettersAt(`${side} trial base`, standing, heightAt(base, standing), top(standing)[1]) };
}

function wedgeTemplate(side: Side, { planned, base, baseRim }: Trial, { variant, sole }: TrialShape): FlatPart {
  const { rim } = sole.bodies.whole, shift = alongShift(planned, sole), below = sliceAt(rim, middleOf(rim)), above = sliceAt(baseRim, middleOf(baseRim)), [standing] = sole.rocker.hip;
  const outline = closedBetween(facePath(sole.shape.face, below.from, below.to), moved(facePath(base, above.from, above.to), [shift, 0]));
  return { name: `${side} wedge ${variant.number}, side`, outline, holes: [], marks: [], letters: lettersAt(`${side} wedge ${variant.number}: ${variantWords(variant)}`, standing, heightAt(sole.shape.face, standing), heightAt(base, standing - shift)) };
}

const middleOf = (rim: Parameters<typeof bandOf>[0]): Mm => { const { inner, outer } = bandOf(rim); return (inner + outer) / 2; };

/** Counter-clockwise: along the lower path, up, back along the upper one, down. */
function closedBetween(lower: Path, upper: Path): Path {
  const ends = (path: Path): readonly [Point, Point] => [pointOn(path[0]!, 0), pointOn(path.at(-1)!, 1)], [a, b] = ends(lower), [c, d] = ends(upper);
  return [...lower, { kind: 'line', from: b, to: d }, ...reversed(upper), { kind: 'line', from: c, to: a }];
}

/** Letters as large as a thin part bears. */
const USUAL: Mm = 3, SMALLEST: Mm = 1, SHARE = 0.5;

/** The words over the standing point, where every shape runs nearly level. */
function lettersAt(text: string, along: Mm, low: Mm, high: Mm): PartLetters[] {
  const size = clamp((high - low) * SHARE, SMALLEST, USUAL);
  return [{ text, at: [along - roughWidth(text, size) / 2, (low + high - size) / 2], size }];
}

/** The edge from above, with the long axis and a line across for each apex. */
function edgeTemplate(side: Side, { planned: { shape: { edge, last } }, shapes }: Trial): FlatPart {
  const onSide = (path: Path): Path => (side === 'left' ? path : mirroredPath(path)), apexes = [...new Map(shapes.map(({ variant: { apexBy }, sole }) => [apexBy, sole.shape.line])).entries()];
  const crest = (line: TrialShape['sole']['shape']['line']): Path => { const half = last.ballWidth * 0.3; return [{ kind: 'line', from: planPoint(line, line.apexX, -half), to: planPoint(line, line.apexX, half) }]; };
  const text = `${side} edge, seen from above`;
  return {
    name: `${side} trial edge`, outline: onSide(edge), holes: [],
    marks: [{ of: 'CENTRE_LINE', path: [{ kind: 'line', from: [0.05 * last.length, 0], to: [0.95 * last.length, 0] }] }, ...apexes.map(([, line]) => ({ of: 'APEX_LINE', path: onSide(crest(line)) }))],
    letters: [
      { text, at: [0.1 * last.length, 6], size: USUAL },
      ...apexes.map(([apexBy, line], i) => ({ text: apexBy === 0 ? 'apex' : `${apexBy > 0 ? '+' : ''}${apexBy}`, at: [line.apexX - 6, -8 - i * 4.4] as const, size: USUAL })),
    ],
  };
}
