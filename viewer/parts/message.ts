import { helpIn, type Fault } from '../../src/fitting/faults.ts';
import type { FaultShown } from '../desk/protocol.ts';
import type { TroubleWords, Works } from '../../src/checks/troubleWords.ts';
import { button, el } from './dom.ts';

export interface Message {
  readonly clear: () => void;
  readonly faults: (faults: readonly FaultShown[]) => void;
  readonly troubles: (troubles: readonly TroubleWords[]) => void;
  readonly say: (text: string) => void;
}

export interface MessageMoves {
  readonly goTo: (path: string) => void;
  readonly apply: (works: Works) => void;
  /** Takes a field or a group off the sheet. */
  readonly leaveOut: (path: string) => void;
  /** What a field is called on the page; undefined where the page has none of it. */
  readonly nameOf: (path: string) => string | undefined;
}

/** A fault of what the page has no field for is told as the sheet's reader tells it. */
function named(fault: Fault, { nameOf }: MessageMoves): string {
  const name = nameOf(fault.path);
  return name === undefined ? fault.text : faultWords(fault, name);
}

/** What keeps a sheet from becoming a shape, below the last good drawing: the measure, the rule, what came, what works. */
export function message(host: HTMLElement, moves: MessageMoves): Message {
  const box = el('div', { class: 'message', role: 'alert' });
  host.append(box);
  let told = '';
  /** Told again, the same words would be read out again. */
  const tell = (what: unknown, ...lines: readonly (Node | string)[]): void => {
    const next = JSON.stringify(what);
    if (next === told) return;
    told = next;
    box.replaceChildren(...lines);
  };
  const list = (lines: readonly HTMLElement[]): HTMLElement => el('ul', {}, ...lines);
  return {
    clear: () => tell(''),
    faults: (faults) => tell(faults, list(faults.map((fault) => el('li', { 'data-path': fault.path }, `${named(fault, moves)} `, button('Go there', () => moves.goTo(fault.path)),
      fault.leaveOut === undefined ? undefined : button(`Leave ${moves.nameOf(fault.leaveOut) ?? fault.leaveOut} out`, () => moves.leaveOut(fault.leaveOut!)))))),
    troubles: (troubles) => tell(troubles, list(troubles.map(({ path, text, works }) => el('li', {}, `${text}. `, button('Go there', () => moves.goTo(path)),
      ...works.map((one) => button(`Try ${one.text}`, () => moves.apply(one))))))),
    say: (text) => tell(text, text),
  };
}

/** In the page's own names; beside the field itself none is needed. A field nobody has filled in yet is only asked for. */
export function faultWords(fault: Fault, name?: string): string {
  const { rule, value } = fault, empty = value === 'null' || value === 'nothing';
  const said = empty ? `${name === undefined ? 'Nothing' : `${name}: nothing`} is there yet.` : `${name === undefined ? '' : `${name} `}${rule}; got ${value}.`;
  return [said, helpIn(fault)].filter(Boolean).join(' ');
}
