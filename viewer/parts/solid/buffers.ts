import { BufferAttribute, Sphere, Vector3, type BufferGeometry } from 'three';

/** How much room is left over for the next, slightly finer mesh; and how much may stand empty before it is given back. */
const SPARE = 1.25, EMPTY = 6;

/**
 * Puts numbers into a geometry, into the room it has where they fit. Room that is dropped is freed on the card too.
 * All lists of one geometry must be as long, item for item.
 */
export function fill(geometry: BufferGeometry, lists: Readonly<Record<string, readonly [values: Float32Array, size: number]>>): void {
  const fits = Object.entries(lists).every(([name, [values]]) => {
    const room = geometry.getAttribute(name)?.array.length ?? -1;
    return room >= values.length && room <= EMPTY * values.length + 1024;
  });
  if (!fits) geometry.dispose();
  for (const [name, [values, size]] of Object.entries(lists)) {
    if (!fits) geometry.setAttribute(name, new BufferAttribute(new Float32Array(size * Math.ceil((SPARE * values.length) / size)), size));
    const attribute = geometry.getAttribute(name) as BufferAttribute;
    attribute.array.set(values);
    attribute.needsUpdate = true;
  }
  const [positions] = lists.position!;
  geometry.setDrawRange(0, positions.length / 3);
  geometry.boundingSphere = sphereOf(positions);
}

/** Round the numbers in use, not round what an earlier mesh left behind them. */
function sphereOf(positions: Float32Array): Sphere {
  const least = [Infinity, Infinity, Infinity], most = [-Infinity, -Infinity, -Infinity];
  positions.forEach((value, i) => { least[i % 3] = Math.min(least[i % 3]!, value); most[i % 3] = Math.max(most[i % 3]!, value); });
  const low = new Vector3(...least), high = new Vector3(...most);
  return positions.length === 0 ? new Sphere() : new Sphere(low.clone().add(high).multiplyScalar(0.5), low.distanceTo(high) / 2);
}
