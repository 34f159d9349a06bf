import {
  AmbientLight, BufferAttribute, BufferGeometry, Color, DirectionalLight, DoubleSide, EdgesGeometry, Group, LineBasicMaterial, LineSegments, Mesh,
  MeshBasicMaterial, MeshLambertMaterial, PerspectiveCamera, Plane, Raycaster, Scene, Spherical, Vector2, Vector3, WebGLRenderer, type Material, type Object3D,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { PartName, ShoeShown, SolidShown } from '../../work/protocol.ts';
import { shadeFor } from './shades.ts';
import { capOn, thicknesses } from './slices.ts';

export type ViewName = 'corner' | 'inner side' | 'outer side' | 'above' | 'below' | 'heel' | 'toe';
export type Shading = 'material' | 'thickness';

export interface SolidView {
  readonly show: (shoes: readonly ShoeShown[], fine: boolean) => void;
  readonly parts: (shown: ReadonlySet<PartName>) => void;
  readonly view: (name: ViewName) => void;
  readonly section: (axis: 'x' | 'y' | undefined, at: number) => void;
  readonly shade: (kind: Shading) => void;
  readonly measure: (on: boolean, tell: (words: string) => void) => void;
  readonly picture: () => Promise<Blob>;
  /** Turns the shoes slowly, for whoever looks on; still where motion is not wanted. */
  readonly turn: (on: boolean) => void;
  readonly dispose: () => void;
}

const COLOURS: Readonly<Record<PartName, string>> = { 'whole sole': '#CDB98F', foam: '#D9C7A3', outsole: '#4A4640' };
const INK = '#22303C', SHEET = '#FBF7EC', CUT = '#8C2F2B', CREASE = 32;
/** How far each shoe's long axis stands from the middle, mm. */
const ASIDE = 62;
const DIRECTIONS: Readonly<Record<ViewName, readonly [number, number, number]>> = {
  corner: [0.75, -1, 0.7], 'inner side': [0, -1, 0.12], 'outer side': [0, 1, 0.12], above: [0, -0.001, 1], below: [0, -0.001, -1], heel: [-1, 0, 0.15], toe: [1, 0, 0.15],
};

/**
 * Both shoes as solids. Drawn only when something has changed; what it drops it also frees.
 * @throws Error where the browser has no WebGL
 */
export function solidView(host: HTMLElement): SolidView {
  const renderer = new WebGLRenderer({ antialias: true, preserveDrawingBuffer: false });
  renderer.localClippingEnabled = true;
  renderer.setClearColor(SHEET);
  const canvas = renderer.domElement, scene = new Scene(), camera = new PerspectiveCamera(32, 1, 10, 5000), controls = new OrbitControls(camera, canvas);
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'img');
  camera.up.set(0, 0, 1);
  const sun = new DirectionalLight('#FFFFFF', 1.9);
  camera.add(sun);
  sun.position.set(60, 120, 40);
  scene.add(camera, new AmbientLight('#FFFFFF', 1.5));
  const pair = new Group(), marks = new Group();
  scene.add(pair, marks);
  let shoes: readonly ShoeShown[] = [], fine = false, on: ReadonlySet<PartName> = new Set<PartName>(['whole sole']), shading: Shading = 'material';
  let cut: { readonly axis: 'x' | 'y'; readonly at: number } | undefined, dirty = false, spinning = 0, framed = false;

  const draw = (): void => { dirty = false; renderer.render(scene, camera); canvas.dataset.drawn = String(Number(canvas.dataset.drawn ?? 0) + 1); };
  const changed = (): void => { if (!dirty) { dirty = true; requestAnimationFrame(draw); } };
  controls.addEventListener('change', changed);
  const fit = (): void => {
    const width = Math.max(host.clientWidth, 50), height = Math.max(220, Math.min(width * 0.62, window.innerHeight * 0.62));
    renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    renderer.setSize(width, height);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    changed();
  };
  const size = new ResizeObserver(fit);
  host.append(canvas);
  size.observe(host);

  const emptied = (group: Object3D): void => {
    for (const child of [...group.children]) {
      emptied(child);
      if (child instanceof Mesh || child instanceof LineSegments) { child.geometry.dispose(); for (const one of ([] as Material[]).concat(child.material as Material)) one.dispose(); }
      group.remove(child);
    }
  };
  const middle = (): Vector3 => {
    const longest = Math.max(0, ...shoes.flatMap(({ solids }) => solids.map(({ positions }) => greatest(positions, 0))));
    return new Vector3(longest / 2, 0, 18);
  };
  const look = (name: ViewName): void => {
    const [x, y, z] = DIRECTIONS[name], away = 300 / Math.tan((camera.fov * Math.PI) / 360) / Math.min(1, camera.aspect / 1.2);
    controls.target.copy(middle());
    camera.position.copy(controls.target).addScaledVector(new Vector3(x, y, z).normalize(), away * 0.5);
    controls.update();
    changed();
  };

  const build = (): void => {
    emptied(pair);
    for (const shoe of shoes) {
      const group = new Group(), aside = shoe.side === 'left' ? ASIDE : -ASIDE, planes = planesFor(cut, aside);
      group.position.y = aside;
      for (const solid of shoe.solids) if (on.has(solid.part)) group.add(...bodyOf(solid, shading, planes, fine), ...(cut ? [capMesh(solid, cut)] : []));
      pair.add(group);
    }
    canvas.setAttribute('aria-label', `${shoes.map(({ side }) => side).join(' and ')} shoe as a solid, ${[...on].join(', ')}. Drag to turn; arrow keys turn, with shift they move, plus and minus come nearer and go away.`);
    changed();
  };

  const turnBy = (across: number, up: number): void => {
    const offset = camera.position.clone().sub(controls.target), turned = new Vector3(offset.x, offset.z, -offset.y), at = new Spherical().setFromVector3(turned);
    at.theta += across;
    at.phi = Math.min(Math.PI - 0.02, Math.max(0.02, at.phi + up));
    const back = new Vector3().setFromSpherical(at);
    camera.position.copy(controls.target).add(new Vector3(back.x, -back.z, back.y));
    controls.update();
    changed();
  };
  const keys: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-0.12, 0], ArrowRight: [0.12, 0], ArrowUp: [0, -0.12], ArrowDown: [0, 0.12] };
  const onKey = (event: KeyboardEvent): void => {
    const step = keys[event.key];
    if (step && event.shiftKey) {
      const sideways = new Vector3().setFromMatrixColumn(camera.matrix, 0).multiplyScalar(-step[0] * 80).addScaledVector(new Vector3().setFromMatrixColumn(camera.matrix, 1), step[1] * 80);
      camera.position.add(sideways); controls.target.add(sideways); controls.update(); changed();
    } else if (step) turnBy(...step);
    else if (event.key === '+' || event.key === '-') { camera.position.lerp(controls.target, event.key === '+' ? 0.12 : -0.14); controls.update(); changed(); }
    else return;
    event.preventDefault();
  };
  canvas.addEventListener('keydown', onKey);

  const pick = measuring(canvas, camera, pair, marks, changed);
  const spin = (): void => { if (!spinning) return; turnBy(0.006, 0); spinning = requestAnimationFrame(spin); };
  return {
    show: (next, isFine) => { shoes = next; fine = isFine; build(); if (!framed && next.length) { framed = true; look('corner'); } },
    parts: (shown) => { on = shown; build(); },
    view: look,
    section: (axis, at) => { cut = axis ? { axis, at } : undefined; build(); },
    shade: (kind) => { shading = kind; build(); },
    measure: pick.set,
    picture: () => {
      const ratio = renderer.getPixelRatio();
      renderer.setPixelRatio(2 * ratio);
      renderer.render(scene, camera);
      return new Promise((done, not) => canvas.toBlob((blob) => { renderer.setPixelRatio(ratio); draw(); if (blob) done(blob); else not(new Error('the browser gave no picture')); }, 'image/png'));
    },
    turn: (is) => {
      cancelAnimationFrame(spinning);
      spinning = is && !window.matchMedia('(prefers-reduced-motion: reduce)').matches ? requestAnimationFrame(spin) : 0;
    },
    dispose: () => { cancelAnimationFrame(spinning); size.disconnect(); pick.set(false, () => undefined); emptied(pair); emptied(marks); controls.dispose(); renderer.dispose(); canvas.remove(); },
  };
}

const greatest = (positions: Float32Array, axis: number): number => { let most = -Infinity; for (let i = axis; i < positions.length; i += 3) most = Math.max(most, positions[i]!); return most; };

function planesFor(cut: { readonly axis: 'x' | 'y'; readonly at: number } | undefined, aside: number): Plane[] {
  if (!cut) return [];
  return [cut.axis === 'x' ? new Plane(new Vector3(-1, 0, 0), cut.at) : new Plane(new Vector3(0, 1, 0), -(cut.at + aside))];
}

/** A body, and at rest its creases as thin ink lines. */
function bodyOf(solid: SolidShown, shading: Shading, clippingPlanes: Plane[], fine: boolean): Object3D[] {
  const geometry = new BufferGeometry(), byThickness = shading === 'thickness' && solid.part === 'whole sole';
  geometry.setAttribute('position', new BufferAttribute(solid.positions, 3));
  geometry.setIndex(new BufferAttribute(solid.triangles, 1));
  if (byThickness) geometry.setAttribute('color', new BufferAttribute(coloursOf(solid), 3));
  const body = new Mesh(geometry, new MeshLambertMaterial({ color: byThickness ? '#FFFFFF' : COLOURS[solid.part], vertexColors: byThickness, flatShading: true, side: DoubleSide, clippingPlanes }));
  if (!fine) return [body];
  return [body, new LineSegments(new EdgesGeometry(geometry, CREASE), new LineBasicMaterial({ color: INK, clippingPlanes }))];
}

function coloursOf(solid: SolidShown): Float32Array {
  const out = new Float32Array(solid.positions.length), colour = new Color();
  thicknesses(solid).forEach((thickness, i) => { colour.set(shadeFor(thickness)); out.set([colour.r, colour.g, colour.b], 3 * i); });
  return out;
}

function capMesh(solid: SolidShown, { axis, at }: { readonly axis: 'x' | 'y'; readonly at: number }): Mesh {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(capOn(solid, axis === 'x' ? 0 : 1, at), 3));
  return new Mesh(geometry, new MeshBasicMaterial({ color: CUT, side: DoubleSide, opacity: 0.9, transparent: true }));
}

/** Two places picked on the solid: the way between them. */
function measuring(canvas: HTMLCanvasElement, camera: PerspectiveCamera, on: Object3D, marks: Group, changed: () => void): { readonly set: (on: boolean, tell: (words: string) => void) => void } {
  let first: Vector3 | undefined, tell: ((words: string) => void) | undefined;
  const ray = new Raycaster();
  const clear = (): void => { for (const mark of [...marks.children] as LineSegments[]) { mark.geometry.dispose(); (mark.material as Material).dispose(); marks.remove(mark); } };
  const press = (event: MouseEvent): void => {
    const box = canvas.getBoundingClientRect();
    ray.setFromCamera(new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2), camera);
    const [hit] = ray.intersectObject(on, true).filter(({ object }) => object instanceof Mesh);
    if (!hit || !tell) return;
    if (!first) { first = hit.point.clone(); tell('Now the other place.'); return; }
    const way = hit.point.clone().sub(first), said = (name: string, value: number): string => `${name} ${Math.abs(value).toFixed(1)}`;
    clear();
    const geometry = new BufferGeometry().setFromPoints([first, hit.point]);
    marks.add(new LineSegments(geometry, new LineBasicMaterial({ color: CUT, depthTest: false })));
    tell(`${way.length().toFixed(1)} mm (${said('along', way.x)}, ${said('across', way.y)}, ${said('up', way.z)})`);
    first = undefined;
    changed();
  };
  return {
    set: (is, say) => {
      canvas.removeEventListener('click', press);
      clear();
      first = undefined;
      tell = is ? say : undefined;
      if (is) { canvas.addEventListener('click', press); say('Press two places on the solid.'); }
      changed();
    },
  };
}
