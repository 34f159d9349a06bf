import type { NamesBeside } from '../../../src/making/shownNames.ts';
import type { ExtrasAsked, ShoeShown } from '../../desk/protocol.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import { partWords } from './partNames.ts';
import { solidControls } from './solidControls.ts';
import { solidView, type SolidManner } from './solidView.ts';

export interface SolidPart {
  /** @param beside what the sheet orders besides the soles and can be looked at */
  readonly show: (shoes: readonly ShoeShown[], fine: boolean, beside: readonly NamesBeside[]) => void;
  readonly lengths: (unit: LengthUnit) => void;
}

export interface SolidMoves {
  readonly save: (picture: Blob) => void;
  /** Asks for solids that are worked out only while they are looked at. */
  readonly want: (extras: ExtrasAsked) => void;
}

const MANNER: SolidManner = {
  name: (shoes, parts) => `${shoes.map(({ side }) => side).join(' and ')} shoe as a solid, ${parts.map(partWords).join(' and ') || 'no part'} shown. Drag or press the arrow keys to turn; with shift the arrow keys move it; plus and minus, and once it was touched the wheel, come nearer and go away.`,
  undrawn: 'This browser cannot draw solids (no WebGL); the drawings, checks and files are complete without them.',
};

/** The solid with its controls. */
export function solidPart(host: HTMLElement, moves: SolidMoves): SolidPart {
  const stage = el('div', { class: 'stage' }), box = el('div', {}, stage);
  host.append(box);
  const view = solidView(stage, MANNER), controls = solidControls(box, view, moves);
  let said: LengthUnit | undefined;
  return {
    lengths: (unit) => {
      // Told with every answer: what is being typed of a cut stays as it is.
      if (unit === said) return;
      said = unit;
      controls.lengths(unit);
      view.lengths(unit);
    },
    show: (shoes, fine, beside) => { controls.beside(beside); view.show(shoes, fine ? 'fine' : 'drag'); },
  };
}
