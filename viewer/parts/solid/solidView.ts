import type { LengthUnit } from '../../keep/lengths.ts';
import type { PartName, ShoeShown } from '../../desk/protocol.ts';
import { el } from '../dom.ts';
import { frame, frameRound, turnBy } from './camera.ts';
import { ground } from './ground.ts';
import { legendOf } from './legend.ts';
import { measuring } from './measuring.ts';
import { pairShown, type PartsOn } from './pairShown.ts';
import { thingOf } from './partNames.ts';
import { paletteOf } from './palette.ts';
import { stage, type Stage } from './stage.ts';
import { tags, type TagWords } from './tags.ts';

export const VIEWS = ['corner', 'inner side', 'outer side', 'above', 'below', 'heel', 'toe'] as const;
export type ViewName = (typeof VIEWS)[number];
export type Shading = 'material' | 'thickness';
/** Coarse while a hand drags; at rest smooth, with its edges in ink.  */
export type Fineness = 'drag' | 'fine';

/** How the picture is spoken of and how large it is, which is up to whoever puts it on the page. */
export interface SolidManner {
  /** What is seen and how it is turned, for somebody who does not see it. */
  readonly name: (shoes: readonly ShoeShown[], parts: readonly PartName[]) => string;
  /** What stands in its place where the browser cannot draw solids. */
  readonly undrawn: string;
  /** As high as its host is, rather than as its width asks for. */
  readonly filled?: boolean;
}

export interface SolidView {
  /** False where the browser cannot draw solids: the host says so, and every verb does nothing. */
  readonly drawn: boolean;
  /** Shows these shoes in the place of what was shown; how they are looked at, cut and shaded stays. */
  readonly show: (shoes: readonly ShoeShown[], fineness: Fineness) => void;
  readonly parts: (on: Partial<Record<PartName, boolean>>) => void;
  /** The sides are those of the shoe that rolls. From its inner side it stands alone, for the other would be in the way. */
  readonly view: (name: ViewName) => void;
  /** From the corner, so far back that both soles stay in the picture as it turns. */
  readonly allRound: () => void;
  /** Takes away what is before x, or to the right of y, and fills the cut. Each shoe is measured from its own heel and long axis, mm. */
  readonly section: (axis: 'x' | 'y' | undefined, at: number) => void;
  readonly shade: (kind: Shading) => void;
  readonly measure: (on: boolean) => void;
  /** What lengths are said in. */
  readonly lengths: (unit: LengthUnit) => void;
  /** What is seen now as PNG, at twice the size. */
  readonly picture: () => Promise<Blob>;
  /** Turns the shoes slowly, for whoever looks on; still where motion is not wanted. */
  readonly turn: (on: boolean) => void;
  /** A twelfth of the way round, at once. */
  readonly turnOnce: () => void;
  /** Lays a word or two on each shoe. */
  readonly tag: (words: TagWords) => void;
  readonly dispose: () => void;
}

/** What is seen at first: the two parts, which together are the whole sole. */
export const FIRST_PARTS: PartsOn = { foam: true, outsole: true, 'whole sole': false, foot: false };
/** From which way a view looks. */
const FROM: Readonly<Record<Exclude<ViewName, 'inner side' | 'outer side'>, readonly [number, number, number]>> = {
  corner: [0.7, -1, 0.75], above: [0, -0.001, 1], below: [0, -0.001, -1], heel: [-1, 0, 0.12], toe: [1, 0, 0.12],
};
/** Radians a second; after a pause it goes on from where it stood, as if so many seconds had gone by at most. */
const SLOWLY = 0.36, PAUSE = 0.1;
/** Radians. */
const ONCE = Math.PI / 6;
/** How far the ground goes on round the shoes, mm. */
const ROUND = 30;

/** Both shoes as solids beside each other, in a picture that is drawn anew only when something has changed. */
export function solidView(host: HTMLElement, manner: SolidManner): SolidView {
  const on = stage(host, paletteOf(host), manner.filled === true);
  return on ? viewOn(on, host, manner) : noView(host, manner);
}

function noView(host: HTMLElement, { undrawn }: SolidManner): SolidView {
  const said = el('p', {}, undrawn), nothing = (): void => undefined;
  host.append(said);
  return {
    drawn: false, show: nothing, parts: nothing, view: nothing, allRound: nothing, section: nothing, shade: nothing, measure: nothing, lengths: nothing, turn: nothing, turnOnce: nothing, tag: nothing,
    picture: () => Promise.reject(new Error('this browser cannot draw solids')), dispose: () => said.remove(),
  };
}

function viewOn(stand: Stage, host: HTMLElement, manner: SolidManner): SolidView {
  const { canvas, camera, controls, scene, changed } = stand, palette = paletteOf(host), pair = pairShown(palette, FIRST_PARTS), floor = ground(palette.line);
  const legend = legendOf(), told = el('p', { class: 'measured', role: 'status' });
  const pick = measuring(canvas, camera, palette.measure, pair.faces, (way) => { if (told.textContent !== way) told.textContent = way; }, changed);
  const labels = tags(host, canvas, camera, pair.onTop);
  let shoes: readonly ShoeShown[] = [], on = FIRST_PARTS, framed = false, spinning = 0, awaited: PartName | undefined;
  scene.add(pair.group, floor.lines, pick.line);
  host.append(legend.box, told);
  canvas.setAttribute('role', 'application');
  scene.onAfterRender = labels.follow;

  const name = (): void => canvas.setAttribute('aria-label', manner.name(shoes, partsOn(on)));
  const lengths = (unit: LengthUnit): void => { legend.lengths(unit); pick.lengths(unit); };
  lengths('mm');
  const look = (view: ViewName): void => {
    const subject = shoes.find(({ kind }) => kind === 'rocker') ?? shoes[0], inner = view === 'inner side', outwards = subject?.side === 'left' ? 1 : -1;
    pair.alone(inner ? subject?.side : undefined);
    const box = pair.box();
    if (!box.isEmpty()) frame(camera, controls, box, view === 'inner side' || view === 'outer side' ? [0, inner ? -outwards : outwards, 0.08] : FROM[view]);
    pick.forget();
  };
  /** What was worked out only now is larger than the soles: from the same side, but so that all of it is seen. */
  const stepBack = (): void => { const { x, y, z } = camera.position.clone().sub(controls.target); frame(camera, controls, pair.box(), [x, y, z]); };
  const spin = (before: number) => (now: number): void => {
    turnBy(camera, controls, SLOWLY * Math.min((now - before) / 1000, PAUSE), 0);
    spinning = requestAnimationFrame(spin(now));
  };
  return {
    drawn: true,
    show: (next, fineness) => {
      const same = sameSolids(shoes, next);
      shoes = next;
      pair.show(next, fineness === 'fine');
      const box = pair.box();
      floor.lines.visible = !box.isEmpty();
      if (!box.isEmpty()) floor.under(box.min.x - ROUND, box.max.x + ROUND, Math.max(-box.min.y, box.max.y) + ROUND);
      if (!framed && !box.isEmpty()) { framed = true; look('corner'); }
      if (awaited && isThere(awaited, next)) { awaited = undefined; stepBack(); }
      name();
      if (!same) pick.forget();
    },
    parts: (which) => {
      on = { ...on, ...which };
      pair.parts(on);
      const larger = partsOn(which).find((part) => part === 'foot' || thingOf(part) !== undefined), there = larger !== undefined && isThere(larger, shoes);
      awaited = there ? undefined : larger;
      if (there) stepBack();
      name();
      pick.forget();
    },
    view: look,
    allRound: () => {
      pair.alone(undefined);
      const box = pair.box();
      if (!box.isEmpty()) frameRound(camera, controls, box, FROM.corner);
      pick.forget();
    },
    section: (axis, at) => { pair.cut(axis && { axis, at }); pick.forget(); },
    shade: (kind) => { legend.show(kind === 'thickness'); pair.shade(kind); changed(); },
    measure: pick.set,
    lengths,
    picture: stand.picture,
    turn: (is) => {
      cancelAnimationFrame(spinning);
      spinning = is && !window.matchMedia('(prefers-reduced-motion: reduce)').matches ? requestAnimationFrame(spin(performance.now())) : 0;
    },
    turnOnce: () => turnBy(camera, controls, ONCE, 0),
    tag: labels.say,
    dispose: () => {
      cancelAnimationFrame(spinning);
      for (const one of [pick, pair, floor, labels, stand]) one.dispose();
      legend.box.remove();
      told.remove();
    },
  };
}

const isThere = (part: PartName, shoes: readonly ShoeShown[]): boolean => shoes.some(({ solids }) => solids.some((one) => one.part === part));
const partsOn = (on: PartsOn): PartName[] => (Object.keys(on) as PartName[]).filter((part) => on[part]);

/** Whether nothing of it has changed but how it is spoken of: a way that was measured is still true. */
const sameSolids = (before: readonly ShoeShown[], now: readonly ShoeShown[]): boolean => before.length === now.length && now.every(({ side, solids }, i) =>
  side === before[i]!.side && solids.length === before[i]!.solids.length && solids.every(({ positions }, k) => isSame(positions, before[i]!.solids[k]!.positions)));

const isSame = (a: Float32Array, b: Float32Array): boolean => a.length === b.length && a.every((value, i) => value === b[i]);
