import { cornerAt, type Body, type Point3 } from './body.ts';

/** Facets that meet at less than this, in radians, are drawn as one smooth face; more is an edge and gets an ink line. */
export const CREASE = Math.PI / 6;

/** The outward normal of each facet, length 1; nought where a facet has no area. */
export function facetNormals(body: Body): Float32Array {
  const { triangles } = body, out = new Float32Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) out.set(normalOf(cornerAt(body, triangles[i]!), cornerAt(body, triangles[i + 1]!), cornerAt(body, triangles[i + 2]!)), i);
  return out;
}

function normalOf(a: Point3, b: Point3, c: Point3): Point3 {
  const u = minus(b, a), v = minus(c, a), n: Point3 = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const size = Math.hypot(...n);
  return size === 0 ? [0, 0, 0] : [n[0] / size, n[1] / size, n[2] / size];
}

const minus = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Each facet with corners of its own, so that a corner on an edge can have a normal for each side: x, y, z, nine to a facet. */
export function spread({ positions, triangles }: Body): Float32Array {
  const out = new Float32Array(3 * triangles.length);
  triangles.forEach((corner, i) => { for (let k = 0; k < 3; k++) out[3 * i + k] = positions[3 * corner + k]!; });
  return out;
}

/** The facet's own normal at each of its corners, nine numbers to a facet. */
export function flatNormals(normals: Float32Array): Float32Array {
  const out = new Float32Array(3 * normals.length);
  for (let i = 0; i < out.length; i++) out[i] = normals[3 * Math.floor(i / 9) + (i % 3)]!;
  return out;
}

/**
 * Normals at the corners of each facet, nine numbers to a facet: facets round the corner that meet this one at less than
 * the crease are averaged, each by its angle there, so that a long sliver counts no more than it should.
 */
export function smoothNormals(body: Body, normals: Float32Array, crease = CREASE): Float32Array {
  const { triangles } = body, { first, facets } = round(body), least = Math.cos(crease), out = new Float32Array(3 * triangles.length);
  const angles = Float32Array.from(triangles, (_, i) => angleAt(body, i));
  for (let i = 0; i < triangles.length; i++) {
    const corner = triangles[i]!, own = 3 * Math.floor(i / 3);
    let x = 0, y = 0, z = 0;
    for (let k = first[corner]!; k < first[corner + 1]!; k++) {
      const at = facets[k]!, other = 3 * Math.floor(at / 3), [nx, ny, nz] = [normals[other]!, normals[other + 1]!, normals[other + 2]!];
      if (normals[own]! * nx + normals[own + 1]! * ny + normals[own + 2]! * nz < least && other !== own) continue;
      x += nx * angles[at]!; y += ny * angles[at]!; z += nz * angles[at]!;
    }
    const size = Math.hypot(x, y, z) || 1;
    out.set([x / size, y / size, z / size], 3 * i);
  }
  return out;
}

/** For each corner, the places in the list of triangles that name it. */
function round({ positions, triangles }: Body): { readonly first: Uint32Array; readonly facets: Uint32Array } {
  const first = new Uint32Array(positions.length / 3 + 1), facets = new Uint32Array(triangles.length);
  for (const corner of triangles) first[corner + 1]!++;
  for (let i = 1; i < first.length; i++) first[i]! += first[i - 1]!;
  const next = first.slice();
  triangles.forEach((corner, i) => { facets[next[corner]!++] = i; });
  return { first, facets };
}

function angleAt(body: Body, i: number): number {
  const { triangles } = body, start = i - (i % 3), at = cornerAt(body, triangles[i]!);
  const u = minus(cornerAt(body, triangles[start + ((i + 1) % 3)]!), at), v = minus(cornerAt(body, triangles[start + ((i + 2) % 3)]!), at);
  const size = Math.hypot(...u) * Math.hypot(...v);
  return size === 0 ? 0 : Math.acos(Math.min(1, Math.max(-1, (u[0] * v[0] + u[1] * v[1] + u[2] * v[2]) / size)));
}

/** Edges where two facets meet at more than the crease: x, y, z of both ends, six numbers to an edge. */
export function creases(body: Body, normals: Float32Array, crease = CREASE): Float32Array {
  const { positions, triangles } = body, corners = positions.length / 3, least = Math.cos(crease), seen = new Map<number, number>(), out: number[] = [];
  for (let i = 0; i < triangles.length; i++) {
    const facet = i - (i % 3), a = triangles[i]!, b = triangles[facet + ((i + 1) % 3)]!, edge = Math.min(a, b) * corners + Math.max(a, b), other = seen.get(edge);
    if (other === undefined) { seen.set(edge, facet); continue; }
    const together = normals[facet]! * normals[other]! + normals[facet + 1]! * normals[other + 1]! + normals[facet + 2]! * normals[other + 2]!;
    if (together < least) out.push(...cornerAt(body, a), ...cornerAt(body, b));
  }
  return Float32Array.from(out);
}
