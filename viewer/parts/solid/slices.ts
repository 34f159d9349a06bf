import type { SolidShown } from '../../work/protocol.ts';

type Point3 = readonly [number, number, number];
type Body = Pick<SolidShown, 'positions' | 'triangles'>;

/**
 * The cut face of a closed body on an upright plane, as triangles: the outline is gathered from the facets the plane
 * goes through and filled in columns, for every column of a sole is one stretch from underside to upper face.
 * @param axis 0: the plane stands across at an x; 1: along at a y
 * @returns corners x, y, z, three for each triangle
 */
export function capOn({ positions, triangles }: Body, axis: 0 | 1, at: number): Float32Array {
  const along = axis === 0 ? 1 : 0, segments = segmentsAt(positions, triangles, axis, at);
  const places = [...new Set(segments.flatMap(([a, b]) => [key(a[along]), key(b[along])]))].sort((a, b) => a - b);
  const corners: number[] = [], put = (u: number, z: number): void => { corners.push(axis === 0 ? at : u, axis === 0 ? u : at, z); };
  for (let i = 0; i + 1 < places.length; i++) {
    const from = places[i]!, to = places[i + 1]!, low = heightsAt(segments, along, from + 1e-4 * (to - from)), high = heightsAt(segments, along, to - 1e-4 * (to - from));
    for (let k = 0; k + 1 < low.length && k + 1 < high.length; k += 2) {
      put(from, low[k]!); put(to, high[k]!); put(to, high[k + 1]!);
      put(from, low[k]!); put(to, high[k + 1]!); put(from, low[k + 1]!);
    }
  }
  return Float32Array.from(corners);
}

const key = (value: number): number => Math.round(value * 1e4) / 1e4;

function segmentsAt(positions: Float32Array, triangles: Uint32Array, axis: 0 | 1, at: number): (readonly [Point3, Point3])[] {
  const corner = (i: number): Point3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
  const segments: (readonly [Point3, Point3])[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const face = [corner(triangles[i]!), corner(triangles[i + 1]!), corner(triangles[i + 2]!)], cuts: Point3[] = [];
    for (let k = 0; k < 3; k++) {
      const a = face[k]!, b = face[(k + 1) % 3]!, da = a[axis] - at, db = b[axis] - at;
      if (da < 0 === db < 0) continue;
      const t = da / (da - db);
      cuts.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]);
    }
    if (cuts.length === 2) segments.push([cuts[0]!, cuts[1]!]);
  }
  return segments;
}

/** Heights at which the outline stands over a place, rising. */
function heightsAt(segments: readonly (readonly [Point3, Point3])[], along: 0 | 1, place: number): number[] {
  return segments.flatMap(([a, b]) => {
    const u = a[along], v = b[along];
    return u < place !== v < place ? [a[2] + ((place - u) / (v - u)) * (b[2] - a[2])] : [];
  }).sort((a, b) => a - b);
}

/**
 * Thickness of a sole under each of its corners, measured upright: from the highest to the lowest facet over the place.
 * Corners on the wall count what lies over them.
 */
export function thicknesses({ positions, triangles }: Body, cell = 4): Float32Array {
  const grid = new Map<string, number[]>(), name = (x: number, y: number): string => `${Math.floor(x / cell)} ${Math.floor(y / cell)}`;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]! * 3, triangles[i + 1]! * 3, triangles[i + 2]! * 3];
    const xs = [positions[a]!, positions[b]!, positions[c]!], ys = [positions[a + 1]!, positions[b + 1]!, positions[c + 1]!];
    for (let x = Math.floor(Math.min(...xs) / cell); x <= Math.floor(Math.max(...xs) / cell); x++) {
      for (let y = Math.floor(Math.min(...ys) / cell); y <= Math.floor(Math.max(...ys) / cell); y++) {
        const place = `${x} ${y}`, list = grid.get(place);
        if (list) list.push(i); else grid.set(place, [i]);
      }
    }
  }
  const out = new Float32Array(positions.length / 3);
  for (let i = 0; i < out.length; i++) {
    const x = positions[3 * i]!, y = positions[3 * i + 1]!, z = positions[3 * i + 2]!;
    let low = z, high = z;
    for (const t of grid.get(name(x, y)) ?? []) {
      const over = heightOver(positions, triangles[t]!, triangles[t + 1]!, triangles[t + 2]!, x, y);
      if (over !== undefined) { low = Math.min(low, over); high = Math.max(high, over); }
    }
    out[i] = high - low;
  }
  return out;
}

/** Height of a facet over a place in plan; undefined beside it, or where it stands upright. */
function heightOver(p: Float32Array, a: number, b: number, c: number, x: number, y: number): number | undefined {
  const [ax, ay, az, bx, by, bz, cx, cy, cz] = [p[3 * a]!, p[3 * a + 1]!, p[3 * a + 2]!, p[3 * b]!, p[3 * b + 1]!, p[3 * b + 2]!, p[3 * c]!, p[3 * c + 1]!, p[3 * c + 2]!];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (Math.abs(area) < 1e-9) return undefined;
  const u = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / area, v = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / area;
  return u < -1e-3 || v < -1e-3 || u + v > 1.001 ? undefined : az + u * (bz - az) + v * (cz - az);
}
