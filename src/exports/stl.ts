import { faultsOf, type Mesh } from '../geometry/mesh.ts';
import type { Point3 } from '../geometry/point.ts';
import { HEADER_BYTES, TRIANGLE_BYTES, weldedStl } from '../geometry/stlMesh.ts';
import { WRITTEN } from '../geometry/tolerances.ts';

/**
 * A closed mesh as a binary STL file in millimetres. Nothing moves by more than the step all numbers are rounded to and
 * what the format's short numbers cannot hold (0.00002 mm at 300 mm).
 * Source: the format's two published forms, 80 bytes of header, a count, then 50 bytes a triangle (from memory).
 * @param name job, side and part; the header names them and the unit, which the format itself does not know
 * @throws Error when what would be read back is no longer one closed skin, which is a fault of this program
 */
export function stlBytes(mesh: Mesh, name: string): Uint8Array {
  const corners = writtenCorners(mesh), count = corners.length / 9;
  const bytes = new Uint8Array(HEADER_BYTES + 4 + TRIANGLE_BYTES * count), view = new DataView(bytes.buffer);
  bytes.set(header(name));
  view.setUint32(HEADER_BYTES, count, true);
  for (let i = 0; i < count; i++) {
    const at = HEADER_BYTES + 4 + TRIANGLE_BYTES * i;
    normalOf(corners, i * 9).forEach((value, k) => view.setFloat32(at + 4 * k, value, true));
    for (let k = 0; k < 9; k++) view.setFloat32(at + 12 + 4 * k, corners[i * 9 + k]!, true);
  }
  const faults = faultsOf(weldedStl(bytes));
  if (faults.length) throw new Error(`the solid ${name} would not be closed in its STL file (${faults.join('; ')}); this is a fault of the program, please report it`);
  return bytes;
}

/** Readers take a file that begins with "solid" for text, so the unit comes first. */
function header(name: string): Uint8Array {
  const letters = `mm ${name}`.replace(/[^ -~]/g, '?').slice(0, HEADER_BYTES).padEnd(HEADER_BYTES, ' ');
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}

/**
 * Nine numbers a triangle, as the file will hold them; no minus nought, which would not equal nought bit for bit.
 * A triangle two corners of which have become one falls away: so does its neighbour across that edge, and the skin stays closed.
 */
function writtenCorners({ positions, triangles }: Mesh): Float32Array {
  const rounded = Float32Array.from(positions, (value) => Math.round(value / WRITTEN) * WRITTEN + 0), corners = new Float32Array(triangles.length * 3);
  const same = (a: number, b: number): boolean => rounded[a] === rounded[b] && rounded[a + 1] === rounded[b + 1] && rounded[a + 2] === rounded[b + 2];
  let length = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i]! * 3, b = triangles[i + 1]! * 3, c = triangles[i + 2]! * 3;
    if (same(a, b) || same(b, c) || same(c, a)) continue;
    for (const from of [a, b, c]) { corners.set(rounded.subarray(from, from + 3), length); length += 3; }
  }
  return corners.subarray(0, length);
}

/** Outward direction of the triangle whose nine numbers begin at `at`; nought where it has no area. */
function normalOf(corners: Float32Array, at: number): Point3 {
  const from = (k: number): number => corners[at + k]! - corners[at + (k % 3)]!;
  const [ux, uy, uz, vx, vy, vz] = [from(3), from(4), from(5), from(6), from(7), from(8)];
  const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx, size = Math.hypot(nx, ny, nz) || 1;
  return [nx / size, ny / size, nz / size];
}
