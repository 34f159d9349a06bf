import type { MakingName } from '../../../src/fitting/words.ts';
import type { NamesBeside } from '../../../src/making/shownNames.ts';
import type { ExtrasAsked, ShoeShown } from '../../desk/protocol.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import { MAKING_WORDS } from '../makingWords.ts';
import { partWords, thingOf } from './partNames.ts';
import { solidControls } from './solidControls.ts';
import { solidView, type SolidManner } from './solidView.ts';

export interface SolidPart {
  /** @param beside what the sheet orders besides the soles and can be looked at; as it was where left out */
  readonly show: (shoes: readonly ShoeShown[], fine: boolean, beside?: readonly NamesBeside[]) => void;
  /** Whether what is asked for is still being worked out. */
  readonly working: (on: boolean) => void;
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
  const waits = el('p', { class: 'waits', role: 'status' }), stage = el('div', { class: 'stage' }), box = el('div', {}, stage);
  host.append(box);
  const view = solidView(stage, MANNER), controls = solidControls(box, view, moves);
  stage.append(waits);
  let said: LengthUnit | undefined, on = true, seen: readonly ShoeShown[] = [];
  const say = (): void => { const words = on ? waitWords(controls.asked(), seen) : ''; if (waits.textContent !== words) waits.textContent = words; };
  say();
  return {
    lengths: (unit) => {
      // Told with every answer: what is being typed of a cut stays as it is.
      if (unit === said) return;
      said = unit;
      controls.lengths(unit);
      view.lengths(unit);
    },
    working: (now) => { on = now; say(); },
    show: (shoes, fine, beside) => { if (beside) controls.beside(beside); view.show(shoes, fine ? 'fine' : 'drag'); seen = shoes; say(); },
  };
}

/** What is not there yet of what somebody wants to see. Working it out can take half a minute on a slow device. */
function waitWords(asked: readonly MakingName[], seen: readonly ShoeShown[]): string {
  if (seen.length === 0) return 'The soles are being worked out.';
  const there = new Set(seen.flatMap(({ solids }) => solids.map(({ part }) => thingOf(part)))), missing = asked.filter((name) => !there.has(name)).map((name) => MAKING_WORDS[name].title);
  return missing.length ? `Being worked out: ${missing.join(', ')}.` : '';
}
