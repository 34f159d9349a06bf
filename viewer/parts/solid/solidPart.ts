import type { ShoeShown } from '../../desk/protocol.ts';
import { el } from '../dom.ts';
import { solidControls } from './solidControls.ts';
import { solidView } from './solidView.ts';

export interface SolidPart { readonly show: (shoes: readonly ShoeShown[], fine: boolean) => void }

/** The solid with its controls. */
export function solidPart(host: HTMLElement, save: (picture: Blob) => void): SolidPart {
  const stage = el('div', { class: 'stage' }), controls = el('div', {}, stage);
  host.append(controls);
  const view = solidView(stage);
  solidControls(controls, view, save);
  return { show: (shoes, fine) => view.show(shoes, fine ? 'fine' : 'drag') };
}
