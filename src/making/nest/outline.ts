import { FillRule, ramerDouglasPeucker, union, type Path64 } from 'clipper2-ts';
import { lengthOf, pointOn, type Path, type PathArc } from '../../geometry/path.ts';
import type { Mm } from '../../geometry/units.ts';
import { largest } from './noFit.ts';

/** Polygons are judged in whole thousandths of a millimetre, where a crossing is exact. */
export const PER_MM = 1000;

/** How far a chord may lie off its arc, and how much more may be lost where points are spared. */
const OFF_ARC: Mm = 0.02, OFF_CHORDS: Mm = 0.12;
/** No point of a polygon lies further than this off the true outline, nor a point of the outline off the polygon; rounding counted in. */
export const NEAR: Mm = OFF_ARC + OFF_CHORDS + 0.003;

/** A polygon near a closed path, in whole thousandths, counter-clockwise as the path is. */
export function polygonNear(path: Path): Path64 {
  const points = path.flatMap((piece) => {
    const count = piece.kind === 'arc' ? chords(piece) : 1;
    return lengthOf(piece) > 0 ? Array.from({ length: count }, (_, i) => pointOn(piece, i / count)) : [];
  });
  const whole = points.map(([x, y]) => ({ x: Math.round(x * PER_MM), y: Math.round(y * PER_MM) }));
  // A slot narrower than the chords can tell closes.
  return largest(union([sparing(whole)], FillRule.NonZero));
}

function chords({ radius, sweep }: PathArc): number {
  const off = Math.min(OFF_ARC, radius / 4);
  return Math.max(1, Math.ceil((Math.abs(sweep) / 2) * Math.sqrt(radius / (2 * off))));
}

/** Spares points as long as the line stays near; both halves of the line keep their ends, so the polygon cannot collapse. */
function sparing(points: Path64): Path64 {
  const middle = points.length >> 1, first = points.slice(0, middle + 1), second = [...points.slice(middle), points[0]!];
  return [first, second].flatMap((half) => ramerDouglasPeucker(half, OFF_CHORDS * PER_MM).slice(0, -1));
}
