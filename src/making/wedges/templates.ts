import { rounded } from '../../checks/say.ts';
import { fitArcs, moved, mirroredPath, pointOn, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { OUTLINE_GAP, SAME_POINT } from '../../geometry/tolerances.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Side } from '../../fitting/words.ts';
import { facePath } from '../../profile/facePath.ts';
import { heightAt } from '../../profile/groundFace.ts';
import { alongAt, planPoint } from '../../profile/rollLine.ts';
import type { FlatPart } from '../flatPart.ts';
import { labelsUnder, linesOver } from '../gauges/lettering.ts';
import { bandOf, sliceAt } from '../gauges/slice.ts';
import { alongShift } from './base.ts';
import { closedBetween, letteredPart, type Faces } from './strip.ts';
import type { Trial, TrialShape } from './trial.ts';
import { variantWords } from './variants.ts';

/**
 * What the trial is cut from sheet by: base and wedges from the side, to be sawn from a block or a thick sheet as wide as the
 * sole, and the edge from above to trim them to. Seen square to the crest; a side view has no side, the edge has.
 */
export function wedgeTemplates(reference: string, side: Side, trial: Trial): FlatPart[] {
  const of: Owner = { side, own: `${reference} ${side.toUpperCase()}` };
  return [edgeTemplate(of, trial), baseTemplate(of, trial), ...trial.shapes.map((shape) => wedgeTemplate(of, trial, shape))];
}

/** @property own job and side as they are lettered on every part */
interface Owner { readonly side: Side; readonly own: string }

/** The base from the side: under the stiffener, in the middle of the sole. */
function baseTemplate({ side, own }: Owner, { planned: { shape, rocker: { hip: [standing] } }, base, baseRim }: Trial): FlatPart {
  const { last, line, upper, build, stiffener } = shape, across = middleOf(baseRim), { from, to } = sliceAt(baseRim, across);
  const top = (along: Mm): Point => [along, upper(...planPoint(line, along, across)) + build - stiffener];
  const alongOf = (x: Mm): Mm => alongAt(line, x, across);
  const breaks = [from, ...[last.seatLength, last.tread, last.length].map(alongOf).filter((along) => along > from + SAME_POINT && along < to - SAME_POINT), to];
  const faces: Faces = { lower: facePath(base, from, to), upper: fitArcs(top, breaks, OUTLINE_GAP), from, to, low: (along) => heightAt(base, along), high: (along) => top(along)[1] };
  return { name: `${side} trial base, side`, outline: closedBetween(faces), holes: [], marks: [], ...letteredPart(faces, standing, `${own} trial base`) };
}

function wedgeTemplate({ side, own }: Owner, { planned, base, baseRim }: Trial, { variant, sole }: TrialShape): FlatPart {
  const { rim } = sole.bodies.whole, shift = alongShift(planned, sole), below = sliceAt(rim, middleOf(rim)), above = sliceAt(baseRim, middleOf(baseRim)), [standing] = sole.rocker.hip;
  const faces: Faces = {
    lower: facePath(sole.shape.face, below.from, below.to), upper: moved(facePath(base, above.from, above.to), [shift, 0]),
    from: Math.max(below.from, above.from + shift), to: Math.min(below.to, above.to + shift), low: (along) => heightAt(sole.shape.face, along), high: (along) => heightAt(base, along - shift),
  };
  return { name: `${side} wedge ${variant.number}, side`, outline: closedBetween(faces), holes: [], marks: [], ...letteredPart(faces, standing, `${own} wedge ${variant.number}: ${variantWords(variant)}`, [`${own} ${variant.number}`, String(variant.number)]) };
}

const middleOf = (rim: Parameters<typeof bandOf>[0]): Mm => { const { inner, outer } = bandOf(rim); return (inner + outer) / 2; };

/** The edge from above, with the long axis and a line across for each apex. */
function edgeTemplate({ side, own }: Owner, { planned: { shape: { edge, last } }, shapes }: Trial): FlatPart {
  const onSide = (path: Path): Path => (side === 'left' ? path : mirroredPath(path)), apexes = [...new Map(shapes.map(({ variant: { apexBy }, sole }) => [apexBy, sole.shape.line])).entries()];
  const crest = (line: TrialShape['sole']['shape']['line']): Path => { const half = last.ballWidth * 0.3; return [{ kind: 'line', from: planPoint(line, line.apexX, -half), to: planPoint(line, line.apexX, half) }]; };
  const marks = apexes.map(([apexBy, line]) => ({ apexBy, path: onSide(crest(line)) }));
  const feet = marks.map(({ apexBy, path }) => { const [piece] = path, ends = [pointOn(piece!, 0), pointOn(piece!, 1)].sort((a, b) => a[1] - b[1]); return { text: apexWords(apexBy), foot: ends[0]! }; }), lowest = Math.min(...feet.map(({ foot }) => foot[1]));
  return {
    name: `${side} trial edge`, outline: onSide(edge), holes: [],
    marks: [{ of: 'CENTRE_LINE', path: [{ kind: 'line', from: [0.05 * last.length, 0], to: [0.95 * last.length, 0] }] }, ...marks.map(({ path }) => ({ of: 'APEX_LINE', path }))],
    letters: [...linesOver([own, 'edge, seen from above'], [0.1 * last.length, 6]), ...labelsUnder(feet.map(({ text: words, foot }) => ({ text: words, x: foot[0] })), () => lowest)],
  };
}

/** Under the foot of its line: how far the apex is moved. */
const apexWords = (apexBy: Mm): string => (apexBy === 0 ? 'apex' : `${apexBy > 0 ? '+' : ''}${Number(rounded(apexBy, 1))}`);
