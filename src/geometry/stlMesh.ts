import type { Mesh } from './mesh.ts';

/** A binary STL file: a header, a count of four bytes, then so many bytes a triangle. Source: the format's published form (from memory). */
export const HEADER_BYTES = 80, TRIANGLE_BYTES = 50;

/** Why a file is no STL that can be read. */
export type NotStl = 'too short' | 'cut off' | 'not a number' | 'empty';

/** The mesh of an STL file of either form, text or binary, as its writer numbered it: no unit is known to it. */
export function stlMesh(bytes: Uint8Array): Mesh | NotStl {
  const text = asText(bytes), binary = text === undefined ? bytes : binaryOf(text);
  if (binary.length < HEADER_BYTES + 4) return 'too short';
  const count = new DataView(binary.buffer, binary.byteOffset).getUint32(HEADER_BYTES, true);
  if (count === 0) return 'empty';
  if (binary.length < HEADER_BYTES + 4 + TRIANGLE_BYTES * count) return 'cut off';
  const mesh = weldedStl(binary);
  return mesh.positions.every(Number.isFinite) ? mesh : 'not a number';
}

/** A file that begins with "solid" is text, unless its length is just that of the binary form: some headers begin so too. */
function asText(bytes: Uint8Array): string | undefined {
  const begins = new TextDecoder().decode(bytes.subarray(0, 512)).trimStart();
  if (!begins.startsWith('solid')) return undefined;
  const counted = bytes.length >= HEADER_BYTES + 4 && bytes.length === HEADER_BYTES + 4 + TRIANGLE_BYTES * new DataView(bytes.buffer, bytes.byteOffset).getUint32(HEADER_BYTES, true);
  return counted ? undefined : new TextDecoder().decode(bytes);
}

const VERTEX = /\bvertex\s+(\S+)\s+(\S+)\s+(\S+)/g;

/** The same in the binary form, its normals left nought. Corners beyond the last whole triangle are left out. */
function binaryOf(text: string): Uint8Array {
  const corners = [...text.matchAll(VERTEX)].map(([, ...numbers]) => numbers.map(Number)), count = Math.floor(corners.length / 3);
  const bytes = new Uint8Array(HEADER_BYTES + 4 + TRIANGLE_BYTES * count), view = new DataView(bytes.buffer);
  view.setUint32(HEADER_BYTES, count, true);
  corners.slice(0, count * 3).forEach((corner, i) => corner.forEach((value, k) => view.setFloat32(cornerAt(i) + 4 * k, value, true)));
  return bytes;
}

const cornerAt = (corner: number): number => HEADER_BYTES + 4 + TRIANGLE_BYTES * Math.floor(corner / 3) + 12 * (1 + (corner % 3));

/** The mesh as the next program reads it: STL has no shared vertices, so corners with the very same bits are one. */
export function weldedStl(bytes: Uint8Array): Mesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset), corners = view.getUint32(HEADER_BYTES, true) * 3;
  const triangles = new Uint32Array(corners), first = new Uint32Array(corners), positions: number[] = [];
  const slots = new Int32Array(2 ** Math.ceil(Math.log2(corners * 2 + 1))).fill(-1);
  const word = (place: number, k: number): number => view.getUint32(place + 4 * k, true);
  for (let corner = 0; corner < corners; corner++) {
    const here = cornerAt(corner), x = word(here, 0), y = word(here, 1), z = word(here, 2);
    const same = (vertex: number): boolean => { const there = first[vertex]!; return word(there, 0) === x && word(there, 1) === y && word(there, 2) === z; };
    let slot = scattered(x, y, z) & (slots.length - 1);
    while (slots[slot]! >= 0 && !same(slots[slot]!)) slot = (slot + 1) & (slots.length - 1);
    if (slots[slot]! < 0) {
      slots[slot] = positions.length / 3;
      first[slots[slot]!] = here;
      for (const k of [0, 4, 8]) positions.push(view.getFloat32(here + k, true));
    }
    triangles[corner] = slots[slot]!;
  }
  return { positions: Float64Array.from(positions), triangles };
}

/** Spreads corners over the slots of a table, by multiplying with odd numbers and folding the high bits down. */
function scattered(x: number, y: number, z: number): number {
  const mixed = Math.imul(x, 73856093) ^ Math.imul(y, 19349663) ^ Math.imul(z, 83492791);
  return mixed ^ (mixed >>> 13) ^ (mixed >>> 7);
}
