import { PerspectiveCamera, Spherical, Vector3, type Box3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';

/** How far a press of an arrow key turns, radians; how far it moves and comes nearer, as a share of the way to what is looked at. */
const TURN = 0.12, MOVE = 0.03, NEARER = 0.12;

type Way = readonly [number, number, number];

/** Stands the camera so that the box fills the picture, seen from the given way. */
export function frame(camera: PerspectiveCamera, controls: OrbitControls, box: Box3, from: Way): void {
  const { min, max } = box;
  fill(camera, controls, [min.x, max.x].flatMap((x) => [min.y, max.y].flatMap((y) => [min.z, max.z].map((z) => new Vector3(x, y, z)))), box.getCenter(new Vector3()), from);
}

/** The same for a box that turns about the upright: from far enough that no corner of it ever leaves the picture. */
export function frameRound(camera: PerspectiveCamera, controls: OrbitControls, box: Box3, from: Way): void {
  const middle = box.getCenter(new Vector3()), size = box.getSize(new Vector3()), far = Math.hypot(size.x, size.y) / 2;
  const rim = Array.from({ length: RIM }, (_, i) => (2 * Math.PI * i) / RIM).flatMap((angle) => [-0.5, 0.5].map((up) => new Vector3(far * Math.cos(angle), far * Math.sin(angle), up * size.z).add(middle)));
  fill(camera, controls, rim, middle, from);
}

/** Points on the way a corner takes. */
const RIM = 48;

function fill(camera: PerspectiveCamera, controls: OrbitControls, points: readonly Vector3[], middle: Vector3, from: Way): void {
  const back = new Vector3(...from).normalize(), across = new Vector3(0, 0, 1).cross(back).normalize(), up = back.clone().cross(across);
  const high = Math.tan((camera.fov * Math.PI) / 360) * 0.9, wide = high * camera.aspect;
  let away = 0;
  for (const point of points) {
    const out = point.clone().sub(middle);
    away = Math.max(away, out.dot(back) + Math.max(Math.abs(out.dot(across)) / wide, Math.abs(out.dot(up)) / high));
  }
  controls.target.copy(middle);
  camera.position.copy(middle).addScaledVector(back, away);
  controls.update();
}

/** Turns round what is looked at: across about the upright, up towards above. Radians. */
export function turnBy(camera: PerspectiveCamera, controls: OrbitControls, across: number, up: number): void {
  const { x, y, z } = camera.position.clone().sub(controls.target), at = new Spherical().setFromVector3(new Vector3(x, z, -y));
  at.theta += across;
  at.phi = Math.min(Math.PI - 0.02, Math.max(0.02, at.phi - up));
  const turned = new Vector3().setFromSpherical(at);
  camera.position.copy(controls.target).add(new Vector3(turned.x, -turned.z, turned.y));
  controls.update();
}

/** Arrow keys turn, with shift they move, plus and minus come nearer and go away. True where the key was one of them. */
export function steer(camera: PerspectiveCamera, controls: OrbitControls, { key, shiftKey, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
  if (ctrlKey || metaKey || altKey) return false;
  const [right, up] = ARROWS[key] ?? [0, 0], away = camera.position.distanceTo(controls.target);
  if (key === '+' || key === '=' || key === '-') {
    camera.position.lerp(controls.target, key === '-' ? -NEARER : NEARER);
    controls.update();
  } else if (right === 0 && up === 0) return false;
  else if (shiftKey) {
    const by = new Vector3().setFromMatrixColumn(camera.matrix, 0).multiplyScalar(-right * MOVE * away).addScaledVector(new Vector3().setFromMatrixColumn(camera.matrix, 1), -up * MOVE * away);
    camera.position.add(by);
    controls.target.add(by);
    controls.update();
  } else turnBy(camera, controls, right * TURN, up * TURN);
  return true;
}

const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
