// Other ways to build the same sole, to be compared with: straight from the manual of the modelling package.
import jscad from '@jscad/modeling';
import { pointAlong } from '../../dist/geometry/path.js';
import { heightAt } from '../../dist/profile/groundFace.js';

const { booleans, extrusions, geometries, primitives, transforms } = jscad;

/** Fewest steps that keep a chord within the gap on the tightest radius met. */
const stepsFor = (length, radius, gap) => Math.ceil(length / (2 * Math.sqrt(2 * radius * gap)));

/** The side profile carried across the width, cut by the outline carried upwards. */
export function booleanSole({ upper, build, face, edge, last }, gap) {
  const [from, to] = [-8, last.length + 8], steps = stepsFor(to - from, 100, gap), xs = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
  const side = primitives.polygon({ points: [...xs.map((x) => [x, heightAt(face, x)]), ...[...xs].reverse().map((x) => [x, upper(x, 0) + build])] });
  const across = transforms.rotateX(Math.PI / 2, extrusions.extrudeLinear({ height: 2 * last.ballWidth }, side));
  const round = stepsFor(2 * last.length, 30, gap), outline = primitives.polygon({ points: Array.from({ length: round }, (_, i) => [...pointAlong(edge, (i * edge.length) / round)]) });
  return booleans.intersect(transforms.translate([0, last.ballWidth, 0], across), transforms.translate([0, 0, -5], extrusions.extrudeLinear({ height: 200 }, outline)));
}

export function gridAsPolyhedron({ positions, triangles }) {
  const points = Array.from({ length: positions.length / 3 }, (_, i) => [...positions.subarray(3 * i, 3 * i + 3)]);
  return primitives.polyhedron({ points, faces: Array.from({ length: triangles.length / 3 }, (_, i) => [...triangles.subarray(3 * i, 3 * i + 3)]) });
}

/** Edges of a solid that are not shared by exactly two polygons running opposite ways. */
export function openEdgesOf(solid) {
  const edges = new Map(), key = (point) => point.map((value) => value.toFixed(6)).join(',');
  for (const { vertices } of geometries.geom3.toPolygons(solid)) {
    vertices.forEach((point, i) => { const edge = `${key(point)} ${key(vertices[(i + 1) % vertices.length])}`; edges.set(edge, (edges.get(edge) ?? 0) + 1); });
  }
  return [...edges].filter(([edge, count]) => (edges.get(edge.split(' ').reverse().join(' ')) ?? 0) !== count).length;
}
