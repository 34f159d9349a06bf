import { describe, expect, test } from 'vitest';
import { stlBytes } from '../../src/exports/stl.ts';
import { faultsOf, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import { stlMesh } from '../../src/geometry/stlMesh.ts';

/** A corner of a cube: 10 mm along each axis, 10 × 10 × 10 / 6 mm³. */
const corner: Mesh = { positions: Float64Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10]), triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]) };

/** The text form as it is published: facet, outer loop, three vertices (from memory). */
const textOf = ({ positions: p, triangles }: Mesh): string => `solid corner\n${Array.from({ length: triangles.length / 3 }, (_, i) => `  facet normal 0 0 0
    outer loop
${[0, 1, 2].map((k) => { const at = triangles[3 * i + k]! * 3; return `      vertex ${p[at]!.toExponential(6)} ${p[at + 1]!.toExponential(6)} ${p[at + 2]!.toExponential(6)}`; }).join('\n')}
    endloop
  endfacet`).join('\n')}\nendsolid corner\n`;
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const read = (bytes: Uint8Array): Mesh => { const mesh = stlMesh(bytes); if (typeof mesh === 'string') throw new Error(mesh); return mesh; };

describe('an STL file', () => {
  test('is the same mesh from its text and its binary form', () => {
    for (const bytes of [stlBytes(corner, 'corner'), bytesOf(textOf(corner)), bytesOf(textOf(corner).replace(/\n/g, '\r\n'))]) {
      const mesh = read(bytes);
      expect([mesh.positions.length, mesh.triangles.length, faultsOf(mesh)]).toEqual([12, 12, []]);
      expect(volumeOf(mesh)).toBeCloseTo(1000 / 6, 9);
    }
  });

  test('whose header begins with "solid" is still binary where its length says so', () => {
    const bytes = stlBytes(corner, 'corner');
    bytes.set(bytesOf('solid as some programs write it'));
    expect(volumeOf(read(bytes))).toBeCloseTo(1000 / 6, 9);
  });

  test('that lies within a larger buffer is read from its own beginning', () => {
    const bytes = stlBytes(corner, 'corner'), wide = new Uint8Array(bytes.length + 13);
    wide.set(bytes, 13);
    expect(volumeOf(read(wide.subarray(13)))).toBeCloseTo(1000 / 6, 9);
  });

  test('that is none says why', () => {
    const good = stlBytes(corner, 'corner'), bad = stlBytes(corner, 'corner');
    new DataView(bad.buffer).setFloat32(84 + 12, NaN, true);
    expect([good.subarray(0, 60), good.subarray(0, 250), bad, bytesOf('solid nothing\nendsolid nothing\n'), bytesOf(textOf(corner).replace('1.000000e+1', 'ten'))].map((bytes) => stlMesh(bytes)))
      .toEqual(['too short', 'cut off', 'not a number', 'empty', 'not a number']);
  });
});
