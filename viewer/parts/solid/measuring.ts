import { BufferGeometry, LineBasicMaterial, LineSegments, Raycaster, Vector2, type Camera, type Material, type Mesh, type Object3D, type Vector3 } from 'three';
import { fill } from './buffers.ts';
import { wayWords } from './wayWords.ts';

export interface Measuring { readonly line: Object3D; readonly set: (on: boolean) => void; readonly forget: () => void; readonly dispose: () => void }

/** A hand that shakes less than this while pressing means a place, not a turn. Pixels. */
const SHAKE = 5;
/** Half the size of the cross at each end, mm. */
const CROSS = 2.5;

/**
 * Two places pressed on the solid, and the way between them.
 * @param faces what can be pressed now
 */
export function measuring(canvas: HTMLCanvasElement, camera: Camera, colour: string, faces: () => readonly Mesh[], tell: (words: string) => void, changed: () => void): Measuring {
  const line = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ color: colour, depthTest: false })), ray = new Raycaster();
  line.visible = line.frustumCulled = false;
  line.renderOrder = 1;
  let on = false, first: Vector3 | undefined, down: readonly [number, number] = [0, 0];
  const draw = (...places: readonly Vector3[]): void => {
    const ends = places.flatMap(({ x, y, z }) => [x - CROSS, y, z, x + CROSS, y, z, x, y - CROSS, z, x, y + CROSS, z, x, y, z - CROSS, x, y, z + CROSS]);
    line.visible = places.length > 0;
    if (line.visible) fill(line.geometry, { position: [Float32Array.from([...ends, ...(places.length === 2 ? places.flatMap((place) => place.toArray()) : [])]), 3] });
    changed();
  };
  const forget = (): void => { first = undefined; draw(); tell(on ? 'Press two places on the solid.' : ''); };
  const placeAt = ({ clientX, clientY }: PointerEvent): Vector3 | undefined => {
    const box = canvas.getBoundingClientRect();
    ray.setFromCamera(new Vector2(((clientX - box.left) / box.width) * 2 - 1, 1 - ((clientY - box.top) / box.height) * 2), camera);
    return ray.intersectObjects<Mesh>([...faces()], false).find(({ object, point }) => !cutAway(object, point))?.point;
  };
  const press = ({ clientX, clientY }: PointerEvent): void => { down = [clientX, clientY]; };
  const lift = (event: PointerEvent): void => {
    if (!on || event.button !== 0 || Math.hypot(event.clientX - down[0], event.clientY - down[1]) > SHAKE) return;
    const place = placeAt(event);
    if (!place) { tell(first ? 'There is no solid there. Press the other place.' : 'There is no solid there. Press two places on the solid.'); return; }
    if (!first) { first = place; draw(place); tell('Now press the other place.'); return; }
    draw(first, place);
    tell(wayWords(first.toArray(), place.toArray()));
    first = undefined;
  };
  canvas.addEventListener('pointerdown', press);
  canvas.addEventListener('pointerup', lift);
  return {
    line, forget, set: (is) => { on = is; canvas.style.cursor = is ? 'crosshair' : ''; forget(); },
    dispose: () => { canvas.removeEventListener('pointerdown', press); canvas.removeEventListener('pointerup', lift); line.geometry.dispose(); line.material.dispose(); },
  };
}

/** A ray still meets what a cut no longer shows. */
const cutAway = ({ material }: Mesh, place: Vector3): boolean => (material as Material).clippingPlanes?.some((plane) => plane.distanceToPoint(place) < 0) ?? false;
