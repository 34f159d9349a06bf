import { PerspectiveCamera, Spherical, Vector3, type Box3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';

/** How far a press of an arrow key turns, radians; how far it moves and comes nearer, as a share of the way to what is looked at. */
const TURN = 0.12, MOVE = 0.03, NEARER = 0.12;

/** Stands the camera so that the box fills the picture, seen from the given way. */
export function frame(camera: PerspectiveCamera, controls: OrbitControls, box: Box3, from: readonly [number, number, number]): void {
  const back = new Vector3(...from).normalize(), across = new Vector3(0, 0, 1).cross(back).normalize(), up = back.clone().cross(across);
  const middle = box.getCenter(new Vector3()), high = Math.tan((camera.fov * Math.PI) / 360) * 0.9, wide = high * camera.aspect;
  let away = 0;
  for (let i = 0; i < 8; i++) {
    const corner = new Vector3(i & 1 ? box.max.x : box.min.x, i & 2 ? box.max.y : box.min.y, i & 4 ? box.max.z : box.min.z).sub(middle);
    away = Math.max(away, corner.dot(back) + Math.max(Math.abs(corner.dot(across)) / wide, Math.abs(corner.dot(up)) / high));
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
