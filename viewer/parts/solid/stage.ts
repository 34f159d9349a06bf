import { AmbientLight, DirectionalLight, PerspectiveCamera, Scene, WebGLRenderer } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { el } from '../dom.ts';
import { steer } from './camera.ts';
import type { Palette } from './palette.ts';

export interface Stage {
  readonly canvas: HTMLCanvasElement;
  readonly camera: PerspectiveCamera;
  readonly controls: OrbitControls;
  readonly scene: Scene;
  /** One frame is drawn soon; asked twice it is still one. */
  readonly changed: () => void;
  readonly picture: () => Promise<Blob>;
  readonly dispose: () => void;
}

/** How high the picture is for its width, and at most for the window. */
const HIGH = 0.62, LEAST_HIGH = 220;

/** Camera, light and canvas, as high as the host where it is to be filled; undefined where the browser cannot draw solids. */
export function stage(host: HTMLElement, palette: Palette, filled: boolean): Stage | undefined {
  const renderer = rendererOrNone();
  if (!renderer) return undefined;
  renderer.localClippingEnabled = true;
  renderer.setClearColor(palette.card);
  const canvas = renderer.domElement, scene = new Scene(), camera = new PerspectiveCamera(28, 1, 10, 6000), sun = new DirectionalLight('#FFFFFF', 1.9);
  canvas.tabIndex = 0;
  // Before the controls are made: they keep turning about what was up then.
  camera.up.set(0, 0, 1);
  const controls = new OrbitControls(camera, canvas);
  controls.minDistance = 60;
  controls.maxDistance = 3000;
  // Somebody who scrolls down the page past the solid does not mean it; who has touched it does.
  const meant = (is: boolean) => (): void => { controls.enableZoom = is; };
  const touched = meant(true), left = meant(false);
  left();
  sun.position.set(-90, 140, 60);
  camera.add(sun);
  scene.add(camera, new AmbientLight('#FFFFFF', 1.4));

  let asked = 0;
  const draw = (): void => {
    cancelAnimationFrame(asked);
    asked = 0;
    renderer.render(scene, camera);
    canvas.dataset.drawn = String(Number(canvas.dataset.drawn ?? 0) + 1);
  };
  const changed = (): void => { if (asked === 0) asked = requestAnimationFrame(draw); };
  const fit = (): void => {
    const width = Math.max(host.clientWidth, 50), height = Math.max(LEAST_HIGH, filled ? host.clientHeight : HIGH * Math.min(width, window.innerHeight));
    renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    renderer.setSize(width, height);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    // At once, for a canvas that changes its size is empty.
    draw();
  };
  const onKey = (event: KeyboardEvent): void => { if (steer(camera, controls, event)) { event.preventDefault(); changed(); } };
  const sized = new ResizeObserver(fit);
  controls.addEventListener('change', changed);
  canvas.addEventListener('keydown', onKey);
  canvas.addEventListener('pointerdown', touched, { capture: true });
  canvas.addEventListener('focus', touched);
  canvas.addEventListener('blur', left);
  canvas.addEventListener('webglcontextrestored', changed);
  const picture = el('div', { class: 'picture' }, canvas);
  host.append(picture);
  fit();
  sized.observe(host);
  return {
    canvas, camera, controls, scene, changed,
    picture: () => {
      const ratio = renderer.getPixelRatio();
      renderer.setPixelRatio(2 * ratio);
      renderer.render(scene, camera);
      const taken = new Promise<Blob>((done, not) => canvas.toBlob((blob) => { if (blob) done(blob); else not(new Error('the browser gave no picture')); }, 'image/png'));
      renderer.setPixelRatio(ratio);
      draw();
      return taken;
    },
    dispose: () => {
      cancelAnimationFrame(asked);
      sized.disconnect();
      controls.removeEventListener('change', changed);
      controls.dispose();
      canvas.removeEventListener('keydown', onKey);
      canvas.removeEventListener('pointerdown', touched, { capture: true });
      canvas.removeEventListener('focus', touched);
      canvas.removeEventListener('blur', left);
      canvas.removeEventListener('webglcontextrestored', changed);
      renderer.dispose();
      renderer.forceContextLoss();
      picture.remove();
    },
  };
}

function rendererOrNone(): WebGLRenderer | undefined {
  // Tried on a canvas of its own first, for the renderer would complain on the console.
  if (!document.createElement('canvas').getContext('webgl2')) return undefined;
  try { return new WebGLRenderer({ antialias: true }); } catch { return undefined; }
}
