import { inFull, type Finding } from '../../src/checks/finding.ts';
import type { Fault } from '../../src/fitting/readSheet.ts';
import type { Told } from '../keep/held.ts';
import { shownLength, type LengthUnit } from '../keep/lengths.ts';
import { button, el } from './dom.ts';

export interface Checks {
  /** Nothing is checked: this job has no shape yet. */
  readonly clear: () => void;
  readonly show: (told: Told, lengths: LengthUnit) => void;
}

export interface CheckMoves {
  readonly pointAt: (side: string, x: number) => void;
  /** Takes a stop on somebody's own name. */
  readonly take: (finding: Finding, by: string, reason: string) => void;
  /** A stop that was taken stops again. */
  readonly giveBack: (finding: Finding) => void;
  readonly goTo: (path: string) => void;
}

export const SEVERITY_WORDS = { stop: 'STOP', warn: 'warning', note: 'note' } as const;

/** What a careful maker would want to know before cutting, worst first. */
export function checks(host: HTMLElement, moves: CheckMoves): Checks {
  const count = el('p', { class: 'count', role: 'status', tabindex: -1 }), list = el('ol', { class: 'findings' });
  host.append(count, list);
  let told = '', lines: ReadonlyMap<string, HTMLElement> = new Map();
  return {
    clear: () => { told = ''; lines = new Map(); count.textContent = ''; list.replaceChildren(); },
    show: ({ findings, held, mouldFaults }, lengths) => {
      const next = JSON.stringify([findings, mouldFaults, lengths, [...held].map(({ code }) => code)]);
      if (next === told) return;
      told = next;
      const counted = tally(findings, mouldFaults);
      if (count.textContent !== counted) count.textContent = counted;
      const active = document.activeElement;
      lines = kept(lines, [
        ...mouldFaults.map((fault) => [JSON.stringify(fault), () => faultLine(fault, moves)] as const),
        ...findings.map((finding) => [nameOf(finding, lengths), () => line(finding, moves, lengths)] as const),
      ]);
      for (const finding of findings) lines.get(nameOf(finding, lengths))?.classList.toggle('held', held.has(finding));
      const within = list.contains(active);
      list.replaceChildren(...lines.values());
      // What was focused goes on where it still is; where it is gone, from the head of the new lines.
      if (within && active instanceof HTMLElement) (list.contains(active) ? active : count).focus({ preventScroll: true });
    },
  };
}

const nameOf = (finding: Finding, lengths: LengthUnit): string => JSON.stringify([finding, lengths]);

/** A line whose words are the same stays as it is, with what is being written into it. */
function kept(before: ReadonlyMap<string, HTMLElement>, wanted: readonly (readonly [name: string, make: () => HTMLElement])[]): ReadonlyMap<string, HTMLElement> {
  return new Map(wanted.map(([name, make]) => [name, before.get(name) ?? make()]));
}

/** What keeps the moulds from being made stops the files too. */
function tally(findings: readonly Finding[], mouldFaults: readonly Fault[]): string {
  const of = (severity: Finding['severity']): number => findings.filter((one) => one.severity === severity && !one.overriddenBy).length;
  const said = (n: number, word: string): string => `${n === 0 ? 'no' : n} ${word}${n === 1 ? '' : 's'}`;
  const taken = findings.filter(({ overriddenBy }) => overriddenBy).length;
  return [`${said(of('stop') + mouldFaults.length, 'stop')}${taken ? ` left, ${taken} taken on a name` : ''}`, said(of('warn'), 'warning'), said(of('note'), 'note')].join(', ');
}

const faultLine = ({ path, text }: Fault, moves: CheckMoves): HTMLElement =>
  el('li', { class: 'finding stop' }, el('button', { type: 'button', class: 'tell', onclick: () => moves.goTo(path) }, el('strong', {}, SEVERITY_WORDS.stop), ` ${text}`));

function line(finding: Finding, moves: CheckMoves, lengths: LengthUnit): HTMLElement {
  const { severity, side, where, at, overriddenBy } = finding;
  const place = [side, where].filter(Boolean).join(', ');
  const press = (): void => { if (side && at !== undefined) moves.pointAt(side, at); };
  return el('li', { class: `finding ${severity}${overriddenBy ? ' taken' : ''}` },
    el('button', { type: 'button', class: 'tell', onclick: press }, el('strong', {}, SEVERITY_WORDS[severity]), ` ${place}: ${inFull(finding)}`, numbersIn(finding, lengths)),
    overriddenBy ? el('p', { class: 'by' }, `Taken by ${overriddenBy.by}: ${overriddenBy.reason} `, button('No longer taken', () => moves.giveBack(finding))) : severity === 'stop' ? takeForm(finding, moves) : undefined);
}

/** Sentences keep the units they were written in; beside one that lacks the unit shown its own numbers stand in it. */
export function numbersIn({ text, measured, limit, unit }: Finding, lengths: LengthUnit): HTMLElement | undefined {
  const speaks = (of: LengthUnit): boolean => new RegExp(`\\d ${of}\\b`).test(text);
  if (unit !== 'mm' || speaks(lengths) || !speaks(lengths === 'mm' ? 'in' : 'mm')) return undefined;
  const said = ([['here ', measured], ['limit ', limit]] as const).flatMap(([word, mm]) => (mm === undefined ? [] : [`${word}${shownLength(mm, 'mm', lengths)} ${lengths}`]));
  return said.length ? el('span', { class: 'in-unit' }, said.join(', ')) : undefined;
}

/** A stop can be taken on one's own name, with a reason; it then stands on every paper. */
function takeForm(finding: Finding, moves: CheckMoves): HTMLElement {
  const by = el('input', { type: 'text', required: true, maxlength: 80, 'aria-label': 'your name', placeholder: 'your name' });
  const reason = el('input', { type: 'text', required: true, maxlength: 300, 'aria-label': 'why', placeholder: 'why' });
  const form = el('form', { class: 'take', onsubmit: (event: Event) => { event.preventDefault(); moves.take(finding, by.value.trim(), reason.value.trim()); } },
    by, reason, el('button', { type: 'submit' }, 'Take this stop on my name'));
  return el('details', {}, el('summary', {}, 'Go on all the same'), form);
}
