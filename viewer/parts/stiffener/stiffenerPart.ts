import './stiffener.css';
import { SIDES } from '../../../src/fitting/words.ts';
import type { StiffenerShown } from '../../desk/protocol.ts';
import type { WaysShown } from '../../desk/waysAsk.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import type { Sheet } from '../../keep/sheet.ts';
import { el } from '../dom.ts';
import { shoeStiffener } from './shoeStiffener.ts';
import { waysFinder } from './ways.ts';

/** What is looked at: the stiffeners of a job's sheet, as its text. */
export interface StiffenerLook { readonly job: string; readonly stiffeners: readonly StiffenerShown[]; readonly sheet: string; readonly lengths: LengthUnit }

export interface StiffenerPart {
  /** Undefined where there is no shape. */
  readonly show: (look: StiffenerLook | undefined) => void;
}

export interface StiffenerMoves {
  readonly sheet: () => Sheet;
  /** Puts another sheet in place of this one, as one step. */
  readonly put: (sheet: Sheet, label: string) => void;
  readonly goTo: (path: string) => void;
}

const ABOUT = 'How the stiffener is laid and how it bends, worked out for the plies as told. It is no proof: hang a mass on the bare pack and read its droop before it goes into a shoe. How stiff it is to be is for the prescriber to say.';

/** The stiffener of each shoe that rolls. Other ways to it are sought in a worker of their own: nobody who drags waits for them. */
export function stiffenerPart(host: HTMLElement, moves: StiffenerMoves): StiffenerPart {
  let look: StiffenerLook | undefined, waits: string | undefined, found: readonly WaysShown[] | undefined;
  const shoes = SIDES.map((side) => shoeStiffener(side, moves)), none = el('p', { hidden: true }, 'No sole on this sheet rolls, so there is no stiffener to look at.');
  const seek = waysFinder((ways) => { if (waits === undefined) return; waits = undefined; found = ways; tellWays(); }, (why) => { for (const shoe of shoes) shoe.failed(why); });
  host.append(el('p', { class: 'about' }, ABOUT), none, ...shoes.map(({ box }) => box));

  function tellWays(): void { for (const shoe of shoes) shoe.ways(found?.find(({ side }) => side === shoe.side), waits !== undefined); host.dataset.sought = String(waits === undefined); }
  function lookForWays(now: StiffenerLook): void {
    waits = now.stiffeners.some(({ pack }) => pack) ? now.sheet : undefined;
    if (waits === undefined) found = undefined; else seek({ sheet: now.sheet, lengths: now.lengths });
  }
  return {
    show: (now) => {
      const before = look;
      look = now;
      none.hidden = now !== undefined && now.stiffeners.length > 0;
      if (now?.job !== before?.job) found = undefined;
      for (const shoe of shoes) shoe.show(now?.stiffeners.find(({ side }) => side === shoe.side), now?.lengths ?? 'mm');
      if (!now) waits = found = undefined; else if (now.sheet !== before?.sheet || now.lengths !== before.lengths) lookForWays(now);
      tellWays();
    },
  };
}
