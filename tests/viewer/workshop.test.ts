import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/finding.ts';
import { design } from '../../src/design.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { MAKINGS } from '../../src/fitting/words.ts';
import { boundsOf, type Box } from '../../src/geometry/mesh.ts';
import { loadBooleans } from '../../src/making/booleans.ts';
import { madeFor } from '../../src/making/made.ts';
import { onlyOrdering, solidsBeside } from '../../src/making/shown.ts';
import { namesBeside } from '../../src/making/shownNames.ts';
import { isTrial, trialFor } from '../../src/making/wedges/trial.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import { outcomeOf } from '../../viewer/desk/outcome.ts';
import type { Shown } from '../../viewer/desk/protocol.ts';
import { grouped, kindOf, sizeWords } from '../../viewer/keep/fileKinds.ts';
import { heldOver } from '../../viewer/keep/held.ts';
import { sheetText, valueAt, withValue, type Sheet } from '../../viewer/keep/sheet.ts';
import { FORM_GROUPS } from '../../viewer/parts/formGroups.ts';

const ferry: Sheet = { ...(JSON.parse(readFileSync('samples/ferry-pilot/sheet.json', 'utf8')) as Sheet), making: { chordGap: 0.5, tool: { diameter: 12, reach: 75 } } };
const ordering = (names: readonly string[]): Sheet => names.reduce((sheet, name) => withValue(sheet, `making.${name}`, {}), withValue(ferry, 'making.mould', undefined));
const groupsOf = (sheet: Sheet): string[] => FORM_GROUPS.filter(({ starts, shown }) => starts.startsWith('making.') && shown({ valueAt: (path) => valueAt(sheet, path), set: () => undefined, setAll: () => undefined, settle: () => undefined, lengths: () => 'mm' })).map(({ title }) => title);

describe('the workshop\'s fields', () => {
  test('each stands in one group of the form', () => {
    for (const { path } of fieldsOfSheet().filter((one) => one.path.startsWith('making.'))) expect([path, FORM_GROUPS.filter(({ starts }) => path === starts || path.startsWith(`${starts}.`)).length]).toEqual([path, 1]);
  });
  test('are shown where they are needed: board for what is cut from it, rack for the stack', () => {
    expect(groupsOf(ordering([]))).toEqual(['Workshop', 'Cutter', 'Printer']);
    expect(groupsOf(ordering(['jig']))).toEqual(['Workshop', 'Cutter', 'Printer', 'Board', 'Build-up jig']);
    expect(groupsOf(ordering(['stack', 'card']))).toEqual(['Workshop', 'Cutter', 'Printer', 'Stack of sheets', 'Job card', 'Rack']);
    expect(groupsOf(withValue(ordering([]), 'making.board.kerf', 1))).toContain('Board');
  });
  test('each has a unit that is one, and what is usual stands in it where something is', () => {
    const fields = fieldsOfSheet().filter(({ path }) => path.startsWith('making.')), { outcome } = outcomeOf({ sheet: sheetText(ordering(MAKINGS)), paper: { width: 320, height: 172 }, chordGap: 0 });
    if (outcome.kind !== 'shown') throw new Error('all may be ordered together');
    for (const { path, unit, kind } of fields) expect([path, kind, ['', 'length', '°', '%', 'g/cm³'].includes(unit)]).toEqual([path, expect.stringMatching(/number|word|yes|text|list/), true]);
    // What the help of a field says it is where it is left out.
    const said = fields.filter(({ path }) => path !== 'making.chordGap').flatMap(({ path, help, words = [], kind }) => {
      const usual = /(?:^|[,;] )(\d[\d.]*)(?: mm)? where left out/.exec(help)?.[1], word = (kind === 'yes' ? ['true', 'false'] : words).find((one) => help.includes(`${one} where left out`));
      return usual !== undefined ? [[path, expect.closeTo(Number(usual), 6)]] : word !== undefined ? [[path, word.replace('true', 'yes').replace('false', 'no')]] : [];
    });
    expect(said.length).toBeGreaterThan(35);
    for (const [path, usual] of said) expect([path, outcome.shown.used![path]]).toEqual([path, usual]);
    expect(outcome.shown.used!['making.mould.shrink.height']).toBeCloseTo(1, 6);
    expect([outcome.shown.used!['making.block.tabWidth'], outcome.shown.used!['making.rack[1].name'], outcome.shown.used!['making.print.split']]).toEqual([7, 'EVA 6', 'no']);
  });
});

test('a file is known by its name: its shoe, what it is of, and its format', () => {
  const of = (name: string): unknown[] => { const { side, of: thing, format, words } = kindOf(name, 'K_1'); return [side, thing, format, words]; };
  expect(of('K_1_left_sole.stl')).toEqual(['left', 'sole', 'STL', 'left sole']);
  expect(of('K_1_right_mould-cavity.stl')).toEqual(['right', 'mould', 'STL', 'right mould cavity']);
  expect(of('K_1_right_mould_set-up.pdf')).toEqual(['right', 'mould', 'PDF', 'right mould set up']);
  expect(of('K_1_job-sheet.pdf')).toEqual([undefined, 'job', 'PDF', 'job sheet']);
  expect(of('K_1_all-figures.pdf')).toEqual([undefined, 'job', 'PDF', 'all figures']);
  expect(of('K_1_job-card.pdf')).toEqual([undefined, 'card', 'PDF', 'job card']);
  const ofs = ['left_height-gauge.stl', 'left_toe-spring-wedge.stl', 'left_repair-card.pdf', 'left_jig-board-1.dxf', 'left_templates.pdf', 'left_trial-wedge-2.stl', 'print.3mf', 'left_block-1.stl', 'stack.pdf'].map((name) => of(`K_1_${name}`)[1]);
  expect(ofs).toEqual(['gauges', 'gauges', 'gauges', 'jig', 'templates', 'wedges', 'print', 'block', 'stack']);
});

test('files stand by shoe and thing, what is of no one shoe last, and none is lost', () => {
  const names = ['right_mould-lid.stl', 'design.json', 'left_sole.stl', 'right_sole.stl', 'print.3mf', 'left_foam.stl', 'job-sheet.pdf'], files = names.map((name, i) => ({ name: `K-2_${name}`, bytes: new Uint8Array(1000 * (i + 1)) }));
  expect(grouped(files, 'K-2').map(({ side, of, files: own, bytes }) => [side, of, own.length, bytes])).toEqual([
    ['left', 'sole', 2, 9000], ['right', 'sole', 1, 4000], ['right', 'mould', 1, 1000], [undefined, 'print', 1, 5000], [undefined, 'job', 2, 9000],
  ]);
  expect([sizeWords(400), sizeWords(840_000), sizeWords(12_340_000)]).toEqual(['1 kB', '840 kB', '12.3 MB']);
});

describe('what is looked at beside the sole', () => {
  // The flat as planned is none of those tried: it gets a wedge of its own.
  const order = withValue(withValue(ordering(['block', 'card']), 'making.print', { split: true }), 'making.wedges', { flat: 20 }), reading = readSheet(sheetText(order));
  if (!reading.ok) throw new Error('the sample is read');
  const designing = design(reading.fitting);
  if (!designing.ok) throw new Error('the sample is made');
  const { design: made } = designing;

  test('has the names that were told before, and stands where the sole does', async () => {
    const solids = solidsBeside(madeFor(onlyOrdering(made, ['block', 'wedges', 'print']), await loadBooleans()), 'right'), named = (name: string): Box => boundsOf(solids.find((one) => one.name === name)!.mesh);
    expect(namesBeside(made.fitting.making, made)).toEqual(['block', 'print', 'wedges'].map((of) => ({ of, names: solids.filter((one) => one.of === of).map(({ name }) => name) })));
    expect(solids.map(({ name }) => name)).toEqual(expect.arrayContaining(['block, both faces cut', 'heel part', 'trial base', 'trial wedge 7']));
    const foam = boundsOf(partsOf(made.shoes.find(({ side }) => side === 'right')!)!.solids.foam), first = named('block, upper face cut'), second = named('block, both faces cut');
    for (const axis of [0, 1, 2] as const) {
      expect([first.least[axis], first.most[axis]]).toEqual([expect.closeTo(second.least[axis], 4), expect.closeTo(second.most[axis], 4)]);
      expect([first.least[axis] < foam.least[axis], first.most[axis] > foam.most[axis]]).toEqual([true, true]);
    }
    expect([named('heel part').least[0], named('forepart').most[0]]).toEqual([expect.closeTo(foam.least[0], 4), expect.closeTo(foam.most[0], 4)]);
    expect(named('trial wedge 7').least[2]).toBeCloseTo(0, 1);
  });
  test('names no trial wedge that is left out', () => {
    const sample = JSON.parse(readFileSync('samples/baker/sheet.json', 'utf8')) as Record<string, unknown>, read = readSheet(JSON.stringify({ ...sample, right: undefined, making: { wedges: {} } }));
    if (!read.ok) throw new Error('the sample is read');
    const worked = design(read.fitting);
    if (!worked.ok) throw new Error('the sample is made');
    const trials = worked.design.shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [trialFor(shoe, read.fitting.making.wedges!)] : [])).flatMap((one) => (isTrial(one) ? [one] : [])), numbers = new Set(trials.flatMap(({ shapes }) => shapes.map(({ variant: { number } }) => number)));
    expect([trials.length, numbers.has(3)]).toEqual([1, false]);
    expect(namesBeside(read.fitting.making, worked.design)).toEqual([{ of: 'wedges', names: ['trial base', ...[...numbers].sort().map((number) => `trial wedge ${number}`)] }]);
  });
  test('is worked out only where it is asked for', () => {
    expect(solidsBeside(madeFor(onlyOrdering(made, []), undefined), 'left')).toEqual([]);
    expect(onlyOrdering(made, ['card']).fitting.making).toMatchObject({ card: {}, chordGap: 0.5, board: { thickness: 6 } });
    expect(onlyOrdering(made, ['card']).fitting.making.block).toBeUndefined();
  });
});

test('what was not looked at while a hand drags stays in its place until the hand rests', () => {
  const one = (code: string, more: Partial<Finding> = {}): Finding => ({ code, severity: 'note', side: 'left', unit: '', where: 'sole', text: code, basis: 'common practice', ...more });
  const shown = (findings: readonly Finding[], besides: readonly string[]): Shown => ({ findings, besides, mouldFaults: [] } as unknown as Shown);
  const jig = one('JIG'), rested = shown([one('A'), jig, one('B'), one('JIG', { side: 'right' })], ['JIG']);
  const told = heldOver(shown([one('A', { text: 'now' }), one('C')], []), rested);
  expect(told.findings.map(({ code, side, text }) => [code, side, text])).toEqual([['A', 'left', 'now'], ['JIG', 'left', 'JIG'], ['JIG', 'right', 'JIG'], ['C', 'left', 'C']]);
  expect([...told.held]).toEqual([jig, rested.findings[3]]);
  // One that was looked at all the same is as it is now; what is no such finding is gone at once.
  expect(heldOver(shown([one('JIG', { text: 'now' })], ['JIG']), rested).findings.map(({ side, text }) => [side, text])).toEqual([['left', 'now'], ['right', 'JIG']]);
  expect(heldOver(rested, undefined)).toMatchObject({ findings: rested.findings, held: new Set() });
});
