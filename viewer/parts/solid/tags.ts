import type { PerspectiveCamera, Vector3 } from 'three';
import type { Side } from '../../../src/fitting/words.ts';
import { el } from '../dom.ts';

export type TagWords = Partial<Readonly<Record<Side, string>>>;

/** Words that stand on the shoes and go with them as the picture turns. They repeat what is said elsewhere, so they are not read out. */
export interface Tags {
  readonly say: (words: TagWords) => void;
  /** To where the shoes are now; asked after each frame. */
  readonly follow: () => void;
  readonly dispose: () => void;
}

export function tags(host: HTMLElement, canvas: HTMLCanvasElement, camera: PerspectiveCamera, placeOf: (side: Side) => Vector3 | undefined): Tags {
  const sides = ['left', 'right'] as const, worn = { left: el('span', { class: 'tag', 'aria-hidden': 'true', hidden: true }), right: el('span', { class: 'tag', 'aria-hidden': 'true', hidden: true }) };
  host.append(worn.left, worn.right);
  const follow = (): void => {
    for (const side of sides) {
      const tag = worn[side], at = tag.textContent ? placeOf(side)?.project(camera) : undefined;
      tag.hidden = at === undefined;
      if (at) tag.style.translate = `calc(${canvas.offsetLeft + ((1 + at.x) / 2) * canvas.clientWidth}px - 50%) calc(${canvas.offsetTop + ((1 - at.y) / 2) * canvas.clientHeight}px - 50%)`;
    }
  };
  return {
    say: (words) => { for (const side of sides) worn[side].textContent = words[side] ?? ''; follow(); },
    follow,
    dispose: () => { for (const side of sides) worn[side].remove(); },
  };
}
