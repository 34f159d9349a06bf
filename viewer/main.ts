import type { Paper } from '../src/exports/drawing.ts';
import { blankSheet } from '../src/fitting/blankSheet.ts';
import { historyOf, type History } from './keep/history.ts';
import { figureDifferences, sheetDifferences } from './keep/differences.ts';
import { keepLengths, lengthsChosen } from './keep/choice.ts';
import { openJobs } from './keep/jobs.ts';
import { isLengthUnit, type LengthUnit } from './keep/lengths.ts';
import { copiedAcross, mirrored, readText, sheetText, valueAt, withValue, type Json, type Sheet } from './keep/sheet.ts';
import { toldToOthers } from './keep/otherTabs.ts';
import { deviceStore } from './keep/store.ts';
import { offer, zipOf } from './keep/zip.ts';
import { checks } from './parts/checks.ts';
import { clientView } from './parts/client.ts';
import { differencesTable } from './parts/differencesTable.ts';
import { figuresList } from './parts/figuresList.ts';
import { filesPart } from './parts/files.ts';
import { measures, type Measures } from './parts/measures.ts';
import { message } from './parts/message.ts';
import { otherTab } from './parts/otherTab.ts';
import { planView } from './parts/planView.ts';
import { sideView } from './parts/sideView.ts';
import { strip } from './parts/strip.ts';
import { SAMPLES } from './samples.ts';
import { openDesk, type Told } from './desk/ask.ts';
import type { ExtrasAsked, FieldShown, Handle, Shown } from './desk/protocol.ts';

const at = (id: string): HTMLElement => document.getElementById(id)!;
/** The side drawing's paper: smaller where the window is narrow, so that its letters stay readable. */
const paper = (): Paper => (window.innerWidth >= 1000 ? { width: 320, height: 172 } : { width: 260, height: 185 });

void begin();

async function begin(): Promise<void> {
  const worker = new Worker(new URL('./desk/worker.ts', import.meta.url), { type: 'module' });
  const store = toldToOthers(await deviceStore(), new BroadcastChannel('rockerbench jobs'), (id) => writtenElsewhere(id));
  const clock = (): string => new Date().toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  const jobs = await openJobs(store, Date.now, () => crypto.randomUUID(), () => bar.kept(store.warning ?? `kept on this device ${clock()}`));
  const desk = openDesk(worker, told, (text) => { tell.say(`Something went wrong in the program itself: ${text}`); document.documentElement.dataset.shown = 'failed'; });
  let job = jobs.list().find(({ removed }) => removed === undefined)?.id ?? jobs.create(parsed(await SAMPLES[0]!.load()));
  let history: History<Sheet> = jobs.open(job)!, shown: Shown | undefined, under: { readonly sheet: Sheet; readonly shown: Shown } | undefined;

  let form: Measures | undefined, fields: readonly FieldShown[] = [], faulty: ReadonlyMap<string, string> = new Map(), chosen = lengthsChosen(), behind = false, extras: ExtrasAsked = { moulds: false, foot: false };

  const light = (of: string | undefined): void => { side.light(of); plan.light(of); list.light(of); };
  const side = sideView(at('drawing'), { move: (handle, value) => moved(handle, value), settle: () => settle(), back: () => { if (history.drop()) afterStep(); }, type: (path) => form?.focus(path), light, lengths });
  const tell = message(at('drawing'), { goTo: (path) => form?.focus(path), apply: ({ values }) => { change(values.reduce((sheet, { path, value }) => put(sheet, path, value), history.now()), 'a value that works'); settle(); } });
  const askWhose = otherTab({
    takeTheirs: () => { behind = false; void jobs.reread(job).then(() => openJob(job)); },
    keepMine: () => { const mine = history.now(), theirs = job; behind = false; void jobs.reread(theirs).then(() => openNew(mine)); },
  });
  const plan = planView(at('plan'), light);
  const solid = import('./parts/solid/solidPart.ts').then(({ solidPart }) => solidPart(at('solid'), {
    save: (picture) => void picture.arrayBuffer().then((bytes) => offer(`${reference()}.png`, new Uint8Array(bytes), 'image/png')),
    want: (asked) => { extras = asked; look(); },
  }));
  const differ = differencesTable(at('figures'));
  const list = figuresList(at('figures'), light);
  const report = checks(at('checks'), {
    pointAt: side.pointAt, goTo: (path) => form?.focus(path),
    take: ({ code, side: shoe }, by, reason) => {
      const now = valueAt(history.now(), 'overrides'), override = { code, ...(shoe ? { side: shoe } : {}), by, reason };
      change(withValue(history.now(), 'overrides', [...(Array.isArray(now) ? now as Json[] : []), override]), `${code} taken on a name`);
      settle();
    },
  });
  const files = filesPart(at('files'), {
    make: () => desk.files(text()),
    save: (made) => offer(`${reference()}.zip`, zipOf(made), 'application/zip'),
    print: ({ bytes }) => { window.open(URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }))); },
  });
  const bar = strip(at('strip'), {
    fromSample: (from) => openNew(parsed(from)), blank: () => openNew(blankSheet('ankle', 'left') as Sheet),
    openFile: (from) => { const read = readText(from); if (read.ok) openNew(read.sheet); else tell.say(read.text); },
    saveFile: () => offer(`${reference()}.json`, new TextEncoder().encode(text()), 'application/json'),
    openJob: (id) => openJob(id), duplicate: () => { const copy = jobs.duplicate(job); if (copy) openJob(copy); },
    remove: () => { jobs.remove(job); const next = jobs.list().find(({ removed }) => removed === undefined); openJob(next?.id ?? jobs.create(blankSheet('ankle', 'left') as Sheet)); },
    restore: (id) => { jobs.restore(id); openJob(id); },
    undo: () => { if (history.undo()) afterStep(); }, redo: () => { if (history.redo()) afterStep(); },
    mirror: () => { change(mirrored(history.now()), 'left and right swapped'); settle(); },
    layUnder: () => { under = under || !shown ? undefined : { sheet: history.now(), shown }; side.ghost(under?.shown.side); bar.laid(under !== undefined); compare(); },
    copy: (from) => { change(copiedAcross(history.now(), from), `${from} copied across`); settle(); },
    client: () => { if (shown) clientView(shown, lengths()); },
    lengths: (unit) => { chosen = unit; keepLengths(unit); afterChoice(); },
  });

  /** What the device was told, or else what the sheet is written in. */
  function lengths(): LengthUnit { const own = valueAt(history.now(), 'units'); return chosen ?? (isLengthUnit(own) ? own : 'mm'); }
  function afterChoice(): void { bar.lengths(lengths()); form?.show(); if (shown) { side.show(shown, true); showNumbers(shown); } compare(); look(); }
  function showNumbers(now: Shown): void { list.show(now.shoes, lengths()); report.show(now.findings, now.mouldFaults, lengths()); void solid.then((part) => part.lengths(lengths())); }
  function marked(faults: ReadonlyMap<string, string>): void { faulty = faults; form?.faults(faults); }
  function text(): string { return sheetText(history.now()); }
  function reference(): string { return String(valueAt(history.now(), 'job.reference') ?? 'sheet').replace(/[^A-Za-z0-9._-]/g, '_'); }
  function change(sheet: Sheet, label: string, key?: string): void { history.edit(sheet, label, key); afterStep(); }
  function keep(): void { if (!behind) jobs.keep(job, history); }
  function settle(): void { history.settle(); keep(); bar.jobs(jobs.list(), job); }
  function afterStep(): void {
    form?.show();
    bar.lengths(lengths());
    bar.steps(history.undoLabel(), history.redoLabel());
    keep();
    look();
  }
  function look(): void {
    side.stale(true);
    document.documentElement.dataset.shown = 'working';
    desk.show({ sheet: text(), paper: paper(), lengths: lengths(), extras });
  }
  function moved({ path, also, label }: Handle, value: number): void {
    const withOthers = Object.entries(also ?? {}).reduce((sheet, [other, word]) => withValue(sheet, other, word ?? undefined), history.now());
    change(put(withOthers, path, value), label, `drag ${path}`);
  }
  function compare(): void {
    const { sheet, shown: before } = under ?? {}, now = shown;
    differ(!sheet || !before || !now ? undefined : [
      ...sheetDifferences(sheet, history.now(), fields, lengths()),
      ...now.shoes.flatMap((shoe) => figureDifferences(before.shoes.find(({ side: one }) => one === shoe.side)?.figures ?? [], shoe.figures, lengths())
        .map((row) => ({ ...row, label: `${shoe.side}: ${row.label}` }))),
    ]);
  }
  function openJob(id: string): void { job = id; history = jobs.open(id) ?? historyOf<Sheet>({}); form?.forget(); bar.jobs(jobs.list(), id); afterStep(); }
  /** Nothing of this tab's is written over what another wrote, until it is said whose is to stay. */
  function writtenElsewhere(id: string): void {
    if (id !== job) return void jobs.reread(id).then(() => bar.jobs(jobs.list(), job));
    behind = true;
    jobs.leave(id);
    askWhose();
  }
  function openNew(sheet: Sheet): void { openJob(jobs.create(sheet)); }

  function told({ outcome, current, fine }: Told): void {
    if (outcome.kind === 'shown') {
      ({ shown } = outcome);
      side.show(shown, current);
      if (shown.plan) plan.show(shown.plan, shown.shoes);
      showNumbers(shown);
      if (fine) compare();
      void solid.then((part) => part.show(outcome.shown.shoes, fine, valueAt(history.now(), 'making.mould') !== undefined));
      files.show(shown.findings, shown.mouldFaults);
      tell.clear();
      marked(new Map(shown.mouldFaults.map(({ path, text: said }) => [path, said])));
    } else if (outcome.kind === 'faults') {
      tell.faults(outcome.faults);
      marked(new Map(outcome.faults.map(({ path, text: said }) => [path, said])));
      files.show(undefined, []);
    } else {
      tell.troubles(outcome.troubles);
      marked(new Map(outcome.troubles.map(({ path, text: said }) => [path, said])));
      files.show(undefined, []);
    }
    side.stale(!current || outcome.kind !== 'shown');
    document.documentElement.dataset.shown = current ? outcome.kind : 'working';
  }

  document.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || event.target instanceof HTMLInputElement) return;
    event.preventDefault();
    if (event.shiftKey ? history.redo() : history.undo()) afterStep();
  });
  let wide = paper().width;
  window.addEventListener('resize', () => { if (paper().width !== wide) { wide = paper().width; afterStep(); } });
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', async (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) { const read = readText(await file.text()); if (read.ok) openNew(read.sheet); else tell.say(read.text); }
  });
  document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') void jobs.flush(); });
  window.addEventListener('pagehide', () => void jobs.flush());
  if ('serviceWorker' in navigator && location.protocol.startsWith('http')) void navigator.serviceWorker.register('./offline.js').catch(() => undefined);
  bar.jobs(jobs.list(), job);
  if (store.warning) bar.kept(store.warning);
  // The first design is begun before the form asks for its fields.
  afterStep();
  void desk.fields().then((known) => {
    fields = known;
    form = measures(at('measures'), fields, {
      valueAt: (path) => valueAt(history.now(), path) ?? undefined,
      set: (path, value) => change(withValue(history.now(), path, value as Json | undefined), path, path), settle: () => settle(), lengths,
    });
    form.show();
    form.faults(faulty);
    compare();
  });
}

function parsed(text: string): Sheet {
  const read = readText(text);
  if (!read.ok) throw new Error(read.text);
  return read.sheet;
}

/** A value that works for a group of walls caps each of them; all else is put where it says. */
function put(sheet: Sheet, path: string, value: number): Sheet {
  const now = valueAt(sheet, path);
  if (!path.endsWith('.taper') || typeof now !== 'object' || now === null) return withValue(sheet, path, value);
  return withValue(sheet, path, Object.fromEntries(Object.entries(now).map(([wall, lean]) => [wall, Math.min(Number(lean), value)])));
}
