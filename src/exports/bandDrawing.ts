import { pointOn, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import type { Band } from '../spread/band.ts';
import { drawn, filled, polyline, stroke, type Mark } from './drawing.ts';
import type { Block } from './flow.ts';
import { sideProfile } from './sideProfile.ts';
import { onPaper, spot, type View } from './view.ts';

/** Where the ground face may lie under the last: shaded, and its two edges dashed, for shades are lost on a copy. */
export function bandMarks(band: Band, along: (x: Mm) => Mm, view: View): { readonly shade: Mark; readonly edges: readonly Mark[] } {
  const line = (of: 'low' | 'high'): Point[] => band.map((place) => spot(view, [along(place.x), place[of]])), low = line('low'), high = line('high');
  return { shade: filled(polyline([...low, ...[...high].reverse()], true), 'foam'), edges: [drawn(polyline(low), 'hidden', 'pencil'), drawn(polyline(high), 'hidden', 'pencil')] };
}

/** Room above and below the picture on a page. */
const AIR: Mm = 2;

/** The sole from the side with that band, as wide as a column: the last's underside and the ground face as drawn. */
export function bandBlock(shape: SoleShape, band: Band, width: Mm): Block {
  const profile = sideProfile(shape), { upper, ground, back, tip } = profile, ends = [back, tip].flatMap(({ from, to }) => [from[0], to[0]]);
  const from = Math.min(...ends), scale = width / (Math.max(...ends) - from);
  const heights = [...upper.flatMap((piece) => [pointOn(piece, 0)[1], pointOn(piece, 1)[1]]), ...band.map(({ low }) => low), ...band.map(({ high }) => high)];
  const top = Math.max(...heights), bottom = Math.min(0, ...heights), height = (top - bottom) * scale + 2 * AIR;
  return {
    height,
    marks: (left, y) => {
      const view: View = { zero: [left - from * scale, y + AIR + top * scale], scale }, { shade, edges } = bandMarks(band, profile.along, view);
      const lines = (path: Path): Mark => drawn(onPaper(view, path), 'visible');
      return [shade, stroke(spot(view, [from, 0]), [left + width, view.zero[1]]), ...edges, lines([...ground, tip]), lines(upper), lines([back])];
    },
  };
}

