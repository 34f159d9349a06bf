import type { Body } from './body.ts';

/** The plane of a cut: 0 stands across the sole at an x, 1 along it at a y. On it, u runs along the plane and z up. */
export type Axis = 0 | 1;

/** Where a closed body meets an upright plane: stretches of outline, u and z of both ends, four numbers to a stretch. */
export function outlineOn({ positions, triangles }: Body, axis: Axis, at: number): Float32Array {
  const along = 1 - axis, out: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = 3 * triangles[i + k]!, b = 3 * triangles[i + ((k + 1) % 3)]!, da = positions[a + axis]! - at, db = positions[b + axis]! - at;
      // A corner on the plane counts as beyond it, so every facet is met on two of its edges or on none.
      if (da < 0 === db < 0) continue;
      const t = da / (da - db);
      out.push(positions[a + along]! + t * (positions[b + along]! - positions[a + along]!), positions[a + 2]! + t * (positions[b + 2]! - positions[a + 2]!));
    }
  }
  return Float32Array.from(out);
}

const key = (u: number): number => Math.round(u * 1e4) / 1e4;

/**
 * The inside of an outline as triangles, u and z, six numbers to a triangle. It is filled in columns from corner to corner:
 * inside a column no stretch begins or ends, so what lies between the first and second from below is inside, and so on.
 */
export function fillOf(outline: Float32Array): Float32Array {
  const places = [...new Set(Array.from(outline.filter((_, i) => i % 2 === 0), key))].sort((a, b) => a - b), out: number[] = [];
  const order = new Map(places.map((place, i) => [place, i])), columns: [number, number][][] = places.map(() => []);
  for (let i = 0; i < outline.length; i += 4) {
    const forward = outline[i]! <= outline[i + 2]!, [u, z, v, w] = [outline[i + (forward ? 0 : 2)]!, outline[i + (forward ? 1 : 3)]!, outline[i + (forward ? 2 : 0)]!, outline[i + (forward ? 3 : 1)]!];
    const from = order.get(key(u))!, to = order.get(key(v))!, height = (place: number): number => z + ((place - u) / (v - u)) * (w - z);
    for (let column = from; column < to; column++) columns[column]!.push([height(places[column]!), height(places[column + 1]!)]);
  }
  columns.forEach((crossing, i) => {
    const from = places[i]!, to = places[i + 1]!;
    crossing.sort((a, b) => a[0] + a[1] - b[0] - b[1]);
    for (let k = 0; k + 1 < crossing.length; k += 2) {
      const [low, high] = [crossing[k]!, crossing[k + 1]!];
      out.push(from, low[0], to, low[1], to, high[1], from, low[0], to, high[1], from, high[0]);
    }
  });
  return Float32Array.from(out);
}

/**
 * Hatching of an outline at 45 degrees, as on a drawing: u and z of both ends, four numbers to a line.
 * @param gap from line to line, measured upright, mm
 */
export function hatchOf(outline: Float32Array, gap: number): Float32Array {
  const lines = new Map<number, number[]>(), out: number[] = [], rise = (i: number): number => (outline[i + 1]! - outline[i]!) / gap;
  for (let i = 0; i < outline.length; i += 4) {
    const a = rise(i), b = rise(i + 2);
    for (let line = Math.ceil(Math.min(a, b)); line < Math.max(a, b); line++) {
      const crossing = outline[i]! + ((line - a) / (b - a)) * (outline[i + 2]! - outline[i]!), on = lines.get(line);
      if (on) on.push(crossing); else lines.set(line, [crossing]);
    }
  }
  for (const [line, on] of lines) {
    on.sort((a, b) => a - b);
    for (let k = 0; k + 1 < on.length; k += 2) out.push(on[k]!, line * gap + on[k]!, on[k + 1]!, line * gap + on[k + 1]!);
  }
  return Float32Array.from(out);
}

/** Places on the plane of a cut, u and z, as they stand in the world, x, y and z. */
export function standing(flat: Float32Array, axis: Axis, at: number): Float32Array {
  const out = new Float32Array((flat.length / 2) * 3);
  for (let i = 0; i < flat.length / 2; i++) { out[3 * i + axis] = at; out[3 * i + 1 - axis] = flat[2 * i]!; out[3 * i + 2] = flat[2 * i + 1]!; }
  return out;
}
