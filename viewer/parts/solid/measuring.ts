import { BufferGeometry, LineBasicMaterial, LineSegments, Raycaster, Vector2, type Camera, type Material, type Mesh, type Object3D, type Vector3 } from 'three';
import type { LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import { fill } from './buffers.ts';
import { wayWords } from './wayWords.ts';

export interface Measuring {
  readonly line: Object3D;
  readonly set: (on: boolean) => void;
  readonly lengths: (unit: LengthUnit) => void;
  readonly forget: () => void;
  readonly dispose: () => void;
}

/** A hand that shakes less than this while pressing means a place, not a turn. Pixels. */
const SHAKE = 5;
/** Half the size of the cross at each end, mm. */
const CROSS = 2.5;

const FIRST = 'Press two places on the solid. With keys: turn and move it until a place lies under the cross in the middle, and press Enter.';

/**
 * Two places pressed on the solid, or brought under the cross in the middle, and the way between them.
 * @param faces what can be pressed now
 */
export function measuring(canvas: HTMLCanvasElement, camera: Camera, colour: string, faces: () => readonly Mesh[], tell: (words: string) => void, changed: () => void): Measuring {
  const line = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ color: colour, depthTest: false })), ray = new Raycaster();
  line.visible = line.frustumCulled = false;
  line.renderOrder = 1;
  let on = false, first: Vector3 | undefined, measured: readonly [Vector3, Vector3] | undefined, unit: LengthUnit = 'mm', down: readonly [number, number] = [0, 0];
  const cross = el('span', { class: 'aim', hidden: true, 'aria-hidden': 'true' });
  canvas.after(cross);
  const draw = (...places: readonly Vector3[]): void => {
    const ends = places.flatMap(({ x, y, z }) => [x - CROSS, y, z, x + CROSS, y, z, x, y - CROSS, z, x, y + CROSS, z, x, y, z - CROSS, x, y, z + CROSS]);
    line.visible = places.length > 0;
    if (line.visible) fill(line.geometry, { position: [Float32Array.from([...ends, ...(places.length === 2 ? places.flatMap((place) => place.toArray()) : [])]), 3] });
    changed();
  };
  const forget = (): void => { first = measured = undefined; draw(); tell(on ? FIRST : ''); };
  /** @param x, y from the middle of the picture to its edges: -1 to 1 */
  const placeAt = (x: number, y: number): Vector3 | undefined => {
    // It may have turned since the last frame was drawn.
    camera.updateMatrixWorld();
    ray.setFromCamera(new Vector2(x, y), camera);
    return ray.intersectObjects<Mesh>([...faces()], false).find(({ object, point }) => !cutAway(object, point))?.point;
  };
  const take = (place: Vector3 | undefined): void => {
    if (!place) return tell(first ? 'There is no solid there. Now the other place.' : `There is no solid there. ${FIRST}`);
    if (!first) { first = place; measured = undefined; draw(place); return tell('Now the other place.'); }
    measured = [first, place];
    first = undefined;
    draw(...measured);
    say();
  };
  const say = (): void => { if (measured) tell(wayWords(measured[0].toArray(), measured[1].toArray(), unit)); };
  const press = ({ clientX, clientY }: PointerEvent): void => { down = [clientX, clientY]; };
  const lift = (event: PointerEvent): void => {
    if (!on || event.button !== 0 || Math.hypot(event.clientX - down[0], event.clientY - down[1]) > SHAKE) return;
    const box = canvas.getBoundingClientRect();
    take(placeAt(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2));
  };
  const key = (event: KeyboardEvent): void => {
    if (!on || event.key !== 'Enter') return;
    event.preventDefault();
    take(placeAt(0, 0));
  };
  canvas.addEventListener('pointerdown', press);
  canvas.addEventListener('pointerup', lift);
  canvas.addEventListener('keydown', key);
  return {
    line, forget, set: (is) => { on = is; cross.hidden = !is; canvas.style.cursor = is ? 'crosshair' : ''; forget(); },
    lengths: (shown) => { unit = shown; say(); },
    dispose: () => { canvas.removeEventListener('keydown', key); cross.remove(); canvas.removeEventListener('pointerdown', press); canvas.removeEventListener('pointerup', lift); line.geometry.dispose(); line.material.dispose(); },
  };
}

/** A ray still meets what a cut no longer shows. */
const cutAway = ({ material }: Mesh, place: Vector3): boolean => (material as Material).clippingPlanes?.some((plane) => plane.distanceToPoint(place) < 0) ?? false;
