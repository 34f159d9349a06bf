import { pointAlong } from '../../src/geometry/path.ts';
import type { Surface, SoleShape } from '../../src/solid/soleShape.ts';
import { wallLine, wallPoint } from '../../src/solid/wall.ts';

/**
 * Slow judge of a body's volume: level slices a fraction of a millimetre thick. The outline of a slice is the wall's own
 * contour at that height; of it only what lies below the upper face and above the lower one counts, cell by cell.
 * It knows the faces and the wall lines, nothing of rows, columns or triangles.
 * @param slice height of a slice, mm; @param cell side of a cell, mm
 */
export function volumeBySlices(shape: SoleShape, upper: Surface, lower: Surface, slice: number, cell: number): number {
  const walls = Array.from({ length: 1200 }, (_, i) => wallLine(shape, (i * shape.edge.length) / 1200));
  const tops = Array.from({ length: 400 }, (_, i) => pointAlong(shape.edge, (i * shape.edge.length) / 400)).map(([x, y]) => upper(x, y));
  const highest = Math.max(...tops) + 5;
  let sum = 0;
  for (let z = slice / 2; z < highest; z += slice) {
    const contour = walls.map((wall) => wallPoint(wall, wall.top[2] - z));
    const left = Math.min(...contour.map(([x]) => x)), right = Math.max(...contour.map(([x]) => x));
    for (let x = left + cell / 2; x < right; x += cell) {
      const cuts = crossingsAt(contour, x);
      for (let i = 0; i + 1 < cuts.length; i += 2) {
        const from = cuts[i]!, to = cuts[i + 1]!, n = Math.max(1, Math.ceil((to - from) / cell)), dy = (to - from) / n;
        for (let k = 0; k < n; k++) {
          const y = from + (k + 0.5) * dy;
          const share = Math.min(z + slice / 2, upper(x, y)) - Math.max(z - slice / 2, lower(x, y));
          if (share > 0) sum += share * cell * dy;
        }
      }
    }
  }
  return sum;
}

/** Where the line at x crosses a closed polygon, rising. */
function crossingsAt(contour: ReadonlyArray<readonly [number, number, number]>, x: number): number[] {
  return contour.flatMap(([x0, y0], i) => {
    const [x1, y1] = contour[(i + 1) % contour.length]!;
    return x0 < x !== x1 < x ? [y0 + ((x - x0) * (y1 - y0)) / (x1 - x0)] : [];
  }).sort((a, b) => a - b);
}
