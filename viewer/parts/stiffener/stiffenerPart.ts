import './stiffener.css';
import { SIDES } from '../../../src/fitting/words.ts';
import type { Finding } from '../../../src/checks/finding.ts';
import type { StiffenerShown } from '../../desk/protocol.ts';
import type { WaysShown } from '../../desk/waysAsk.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import type { Sheet } from '../../keep/sheet.ts';
import { el } from '../dom.ts';
import { shoeStiffener, type Going } from './shoeStiffener.ts';
import { waysFinder } from './ways.ts';

/** What is looked at: the stiffeners of a job's sheet, as its text. */
export interface StiffenerLook { readonly job: string; readonly stiffeners: readonly StiffenerShown[]; /** Of the whole pair. */ readonly findings: readonly Finding[]; readonly sheet: string; readonly lengths: LengthUnit }

export interface StiffenerPart {
  /** Undefined where there is no shape. */
  readonly show: (look: StiffenerLook | undefined) => void;
  /** The sheet is being changed: nothing is sought until it is shown again. */
  readonly waits: () => void;
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
  let look: StiffenerLook | undefined, waits = false, moved = false, found: readonly WaysShown[] | undefined, job: string | undefined;
  const shoes = SIDES.map((side) => shoeStiffener(side, moves)), none = el('p', { hidden: true }, 'No sole on this sheet rolls, so there is no stiffener to look at.');
  const seek = waysFinder((ways) => { waits = false; found = ways; tellWays(); }, (why) => { waits = false; tellWays(); for (const shoe of shoes) shoe.failed(why); });
  host.append(el('p', { class: 'about' }, ABOUT), none, ...shoes.map(({ box }) => box));

  function going(): Going | undefined { return moved ? 'waiting' : waits ? 'sought' : undefined; }
  function tellWays(): void { for (const shoe of shoes) shoe.ways(found?.find(({ side }) => side === shoe.side), going()); host.dataset.sought = String(!waits); }
  function lookForWays({ stiffeners, sheet, lengths }: StiffenerLook): void {
    waits = stiffeners.some(({ pack }) => pack);
    if (waits) seek.ask({ sheet, lengths }); else { seek.stop(); found = undefined; }
  }
  return {
    // What was found stays, grey, and is sought anew when the hand rests.
    waits: () => {
      seek.stop();
      if (waits) look = undefined;
      if (moved || !found) return;
      moved = true;
      tellWays();
    },
    show: (now) => {
      const before = look;
      look = now;
      moved = false;
      none.hidden = now !== undefined && now.stiffeners.length > 0;
      const another = now?.job !== job;
      if (another) found = undefined;
      job = now?.job;
      for (const shoe of shoes) shoe.show(now?.stiffeners.find(({ side }) => side === shoe.side), now?.findings ?? [], now?.lengths ?? 'mm');
      if (!now) { seek.stop(); waits = false; found = undefined; } else if (another || now.sheet !== before?.sheet || now.lengths !== before.lengths) lookForWays(now);
      tellWays();
    },
  };
}
