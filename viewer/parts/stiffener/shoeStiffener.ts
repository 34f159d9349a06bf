import type { Finding } from '../../../src/checks/finding.ts';
import type { Side } from '../../../src/fitting/words.ts';
import type { PackShown, StiffenerShown } from '../../desk/protocol.ts';
import type { WaySets } from '../../desk/waySets.ts';
import type { WaysShown } from '../../desk/waysAsk.ts';
import { lengthWords, typedLength, type LengthUnit } from '../../keep/lengths.ts';
import { withValue, type Json } from '../../keep/sheet.ts';
import { button, el } from '../dom.ts';
import { ownLengths } from '../limits/limitsSet.ts';
import { alongPlot } from './alongPlot.ts';
import { bentView } from './bentView.ts';
import { judgedList } from './judgedList.ts';
import { layupPicture } from './layupPicture.ts';
import { legendOf } from './legend.ts';
import type { StiffenerMoves } from './stiffenerPart.ts';
import { waysTable, type WaysTable } from './waysTable.ts';

export type Going = 'sought' | 'waiting';
const GOING: Readonly<Record<Going, string>> = { sought: 'Looking for other ways to it…', waiting: 'Other ways are looked for once nothing is being changed.' };

export interface ShoeStiffener {
  readonly side: Side;
  readonly box: HTMLElement;
  /** Undefined where the shoe does not roll. @param findings of the whole pair */
  readonly show: (shown: StiffenerShown | undefined, findings: readonly Finding[], lengths: LengthUnit) => void;
  /** Other ways, as far as they are known. @param going newer ones are sought, or wait until the sheet is shown again */
  readonly ways: (ways: WaysShown | undefined, going: Going | undefined) => void;
  readonly failed: (why: string) => void;
}

/** A thickness taken over from a pack is written to a tenth, as it is measured. */
const TENTH = 10;

/** The stiffener of one shoe: how it is laid, how it bends and other ways to it; or that nothing is known of it but its thickness. */
export function shoeStiffener(side: Side, { sheet, put, goTo }: StiffenerMoves): ShoeStiffener {
  const shoe = `${side} shoe`, path = `${side}.order.stiffener`, title = el('h3', { tabindex: -1 }), words = el('p', { class: 'laid' }), grade = el('p');
  let shown: StiffenerShown | undefined, told = '', toldWays: string | undefined, shownWays: WaysTable | undefined;
  const set = (value: Json, label: string): void => put(withValue(sheet(), path, value), `${label}, ${side}`);
  const rigid = button('Have a rigid one worked out', () => {
    const known = shown?.massKnown;
    set({ wanted: 'rigid' }, 'stiffener worked out');
    if (known) change.focus(); else goTo('wearer.mass');
  }, { class: 'take-it', 'aria-label': `Have a rigid one worked out, ${shoe}` });
  const change = button('What is wanted of it', () => goTo(`${path}.wanted`), { 'aria-label': `What is wanted of it, ${shoe}` });
  const alone = button('Go by its thickness alone', () => {
    if (!shown) return;
    set(typedLength(Math.round(shown.thickness * TENTH) / TENTH, 'mm', ownLengths(sheet())), 'stiffener by its thickness');
    rigid.focus();
  }, { 'aria-label': `Go by its thickness alone, ${shoe}` });
  const nothing = el('p'), mass = el('p', {}, 'What the client weighs is not on the sheet yet; a stiffener is worked out for it, so it will be asked for.');
  const layup = el('figure', { class: 'picture-box' }), along = el('figure', { class: 'picture-box' }), strain = el('figure', { class: 'picture-box' }), bent = bentView(side), judged = judgedList(side), status = el('p', { class: 'waits', role: 'status' }), table = el('div', { class: 'ways' });
  const unknown = el('div', {}, nothing, mass, el('div', { class: 'tools' }, rigid)), known = el('div', {}, words, grade, judged.box, el('div', { class: 'tools' }, change, alone), bent.loads, el('div', { class: 'pictures' }, layup, bent.box, along, strain), status, table);
  const box = el('section', { 'aria-label': `stiffener of the ${shoe}`, hidden: true }, title, unknown, known);

  function take(sets: WaySets): void {
    put(sets.reduce((now, [field, value]) => withValue(now, `${path}.${field}`, value), sheet()), `another way to the stiffener, ${side}`);
    title.focus();
  }
  function draw(pack: PackShown, lengths: LengthUnit): void {
    title.textContent = `${side === 'left' ? 'Left' : 'Right'} shoe, ${pack.by}`;
    words.textContent = `${pack.laid}; ${pack.thick} together.`;
    grade.textContent = pack.grade;
    layup.replaceChildren(el('figcaption', {}, 'Cut through, from the last down. Thicknesses true to each other, widths not; strokes show how the fibres run, toe to the right.', pack.layers.some(({ turned = 0 }) => turned % 90 !== 0) && side === 'right' ? ' Angles and strokes are as on the sheet, of a left shoe: on this right one they lie mirrored.' : ''), layupPicture(pack));
    bent.show(pack);
    along.replaceChildren(alongPlot(pack, 'stiffness', lengths));
    strain.replaceChildren(alongPlot(pack, 'strain', lengths));
  }
  return {
    side, box,
    show: (now, findings, lengths) => {
      shown = now;
      box.hidden = now === undefined;
      if (!now) return;
      judged.show(findings, lengths);
      const next = JSON.stringify([now, lengths]), { pack } = now;
      if (next === told) return;
      told = next;
      unknown.hidden = pack !== undefined;
      known.hidden = pack === undefined;
      mass.hidden = now.massKnown;
      if (pack) return draw(pack, lengths);
      title.textContent = `${side === 'left' ? 'Left' : 'Right'} shoe`;
      nothing.textContent = `Only a thickness is told of it, ${lengthWords(now.thickness, lengths)}, so nothing is known of how far it bends.`;
    },
    ways: (ways, going) => {
      const said = going === undefined ? '' : GOING[going];
      if (status.textContent !== said) status.textContent = said;
      table.classList.toggle('outdated', going !== undefined);
      const decides = ways ? ways.decides.map((text) => el('p', {}, text)) : [], next = JSON.stringify(ways);
      if (next === toldWays) return shownWays?.refresh(going === undefined);
      toldWays = next;
      shownWays = ways && waysTable(ways, shoe, take);
      shownWays?.refresh(going === undefined);
      table.replaceChildren(...(ways && shownWays ? [el('h4', {}, 'Other ways to it'), shownWays.box, ways.ways.length === 1 && el('p', {}, 'The sheet tells each ply, so no other way is sought. Undo, or leave the plies out, to see others.'), legendOf(ways.heads, ways.means)].filter((one) => one !== false) : []), ...decides);
    },
    failed: (why) => { status.textContent = `Other ways could not be looked for: ${why}`; },
  };
}
