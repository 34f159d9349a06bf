import jscad from '@jscad/modeling';
import type { Mesh } from '../geometry/mesh.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';

/**
 * A flat shape with holes, raised to a thickness: closed, its outside out, underside at z = 0.
 * @param rings the outline counter-clockwise, holes clockwise, none touching another; the last point is not the first again
 */
export function extruded(rings: readonly (readonly Point[])[], thickness: Mm): Mesh {
  const { geometries: { geom2, geom3 }, extrusions } = jscad;
  const sides = rings.flatMap((ring) => ring.map(([x, y], i): [[number, number], [number, number]] => { const [nx, ny] = ring[(i + 1) % ring.length]!; return [[x, y], [nx, ny]]; }));
  const faces = geom3.toPolygons(extrusions.extrudeLinear({ height: thickness }, geom2.create(sides)));
  return welded(faces.map(({ vertices }) => vertices as [number, number, number][]));
}

/** Corners in one place are one corner; faces with more than three are fanned out. */
function welded(faces: readonly (readonly (readonly [number, number, number])[])[]): Mesh {
  const numbers = new Map<string, number>(), positions: number[] = [];
  const number = (corner: readonly [number, number, number]): number => {
    const key = corner.join(), known = numbers.get(key) ?? numbers.size;
    if (known === numbers.size) { numbers.set(key, known); positions.push(...corner); }
    return known;
  };
  const triangles = faces.flatMap((face) => {
    const corners = face.map(number);
    return corners.slice(2).flatMap((corner, i) => [corners[0]!, corners[i + 1]!, corner]);
  });
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}
