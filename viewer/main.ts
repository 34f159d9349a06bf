import type { Paper } from '../src/exports/drawing.ts';
import { blankSheet } from '../src/fitting/blankSheet.ts';
import { historyOf, type History } from './keep/history.ts';
import { figureDifferences, sheetDifferences } from './keep/differences.ts';
import { heldOver, type Told as Findings } from './keep/held.ts';
import { keepLengths, lengthsChosen } from './keep/choice.ts';
import { openJobs } from './keep/jobs.ts';
import { isLengthUnit, type LengthUnit } from './keep/lengths.ts';
import { freshName } from './keep/names.ts';
import { copiedAcross, mirrored, readText, referenceOf, sheetText, toeRuled, valueAt, withValue, worksIn, type Json, type Sheet } from './keep/sheet.ts';
import { heardFromOthers } from './keep/otherTabs.ts';
import { deviceStore } from './keep/store.ts';
import { thrownWords } from './keep/thrown.ts';
import { offer, openToPrint, zipOf } from './keep/zip.ts';
import { bandSwitch } from './parts/bandSwitch.ts';
import { checks } from './parts/checks.ts';
import { clientView } from './parts/client.ts';
import { differencesTable } from './parts/differencesTable.ts';
import { figuresList } from './parts/figuresList.ts';
import { filesPart } from './parts/files.ts';
import { MAKING_WORDS } from './parts/makingWords.ts';
import { measures, type Measures } from './parts/measures.ts';
import { faultWords, message } from './parts/message.ts';
import { otherTab } from './parts/otherTab.ts';
import { planView } from './parts/planView.ts';
import { sideView } from './parts/sideView.ts';
import { strip } from './parts/strip.ts';
import { whenNear } from './parts/whenNear.ts';
import { SAMPLES } from './samples.ts';
import { openDesk, type Told } from './desk/ask.ts';
import type { ExtrasAsked, FieldShown, Handle, Outcome, Shown } from './desk/protocol.ts';

const at = (id: string): HTMLElement => document.getElementById(id)!;
const root = document.documentElement;
/** The side drawing's paper: smaller where the window is narrow, so that its letters stay readable, and to be printed on A4. */
const WIDE: Paper = { width: 320, height: 172 }, NARROW: Paper = { width: 260, height: 185 };

/** The job on the bench. It is replaced as a whole, so nothing of one client passes for another's. */
interface OpenJob {
  readonly id: string;
  readonly history: History<Sheet>;
  /** The last shape of this job, and whether it is what the sheet says now, fine. */
  shown?: Shown;
  /** The last that looked at everything: the hand was at rest. */
  rested?: Shown;
  fresh: boolean;
  /** Another tab has written this job: nothing is written over it until it is said whose is to stay. */
  behind: boolean;
}

void begin().catch((error: unknown) => {
  at('drawing').append(`The bench cannot be opened here: ${thrownWords(error)}`);
  root.dataset.shown = 'failed';
});

async function begin(): Promise<void> {
  const others = heardFromOthers(await deviceStore(), new BroadcastChannel('rockerbench jobs')), { store } = others;
  const clock = (): string => new Date().toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  const jobs = await openJobs(store, Date.now, freshName, () => bar.kept(store.warning ?? `kept on this device ${clock()}`));
  const desk = openDesk(new Worker(new URL('./desk/worker.ts', import.meta.url), { type: 'module' }), told, (text) => { tell.say(`Something went wrong in the program itself: ${text}`); root.dataset.shown = 'failed'; });
  const opened = (id: string): OpenJob => ({ id, history: jobs.open(id) ?? historyOf<Sheet>({}), fresh: false, behind: false });
  let job = opened(jobs.list().find(({ removed }) => removed === undefined)?.id ?? jobs.create(parsed(await SAMPLES[0]!.load())));
  let under: { readonly sheet: Sheet; readonly shown: Shown } | undefined;
  let form: Measures | undefined, fields: readonly FieldShown[] = [], faulty: ReadonlyMap<string, string> = new Map(), chosen = lengthsChosen(), extras: ExtrasAsked = { beside: [], foot: false }, wanted: Pick<ExtrasAsked, 'walk' | 'packs'> = {};
  /** What waits until the newest sheet is shown, fine. */
  let once: 'client' | 'print' | undefined;

  const light = (of: string | undefined): void => { side.light(of); plan.light(of); list.light(of); };
  const side = sideView(at('drawing'), { move: moved, settle, back: () => { if (job.history.drop()) afterStep(); }, type: goTo, light, lengths });
  const tell = message(at('drawing'), {
    goTo, nameOf: (path) => form?.nameOf(path), leaveOut: (path) => { change(withValue(now(), path, undefined), `${path} left out`); settle(); },
    apply: ({ values }) => { change(values.reduce((sheet, { path, value }) => worksIn(sheet, path, value), now()), 'a value that works'); settle(); goTo(values[0]!.path); },
  });
  const askWhose = otherTab({ takeTheirs: () => void takeTheirs(), keepMine: () => { const mine = job.history.kept(), { id } = job; void jobs.reread(id).then(() => openJob(jobs.adopt(mine))); } });
  const plan = planView(at('plan'), light);
  const solid = import('./parts/solid/solidPart.ts').then(({ solidPart }) => solidPart(at('solid'), {
    save: (picture) => void picture.arrayBuffer().then((bytes) => offer(`${referenceOf(now())}.png`, new Uint8Array(bytes), 'image/png')),
    want: (asked) => { extras = asked; look(); },
  }));
  const rolling = whenNear(at('rolling'), () => { wants('walk'); return import('./parts/rolling/rollingPart.ts').then(({ rollingPart }) => rollingPart(at('rolling'))); });
  const spread = whenNear(at('spread'), () => import('./parts/spread/spreadPart.ts').then(({ spreadPart }) => spreadPart(at('spread'), { goTo, band: side.band, besideBand: band.box })));
  const band = bandSwitch(at('drawing'), () => { spread.want(); tellSpread(); });
  const within = whenNear(at('limits'), () => import('./parts/limits/limitsPart.ts').then(({ limitsPart }) => limitsPart(at('limits'), { goTo, put: (sheet, label) => { change(sheet, label); settle(); } })));
  const stiff = whenNear(at('stiffener'), () => { wants('packs'); return import('./parts/stiffener/stiffenerPart.ts').then(({ stiffenerPart }) => stiffenerPart(at('stiffener'), {
    goTo, sheet: now, put: (sheet, label) => { change(sheet, label); settle(); },
  })); });
  const differ = differencesTable(at('figures')), list = figuresList(at('figures'), light);
  const report = checks(at('checks'), {
    pointAt: (which, x) => { side.pointAt(which, x); at('drawing').scrollIntoView({ block: 'nearest' }); }, goTo,
    take: ({ code, side: shoe }, by, reason) => {
      const taken = valueAt(now(), 'overrides'), override = { code, ...(shoe ? { side: shoe } : {}), by, reason };
      change(withValue(now(), 'overrides', [...(Array.isArray(taken) ? taken as Json[] : []), override]), `${code} taken on a name`);
      settle();
    },
    giveBack: ({ code, side: shoe }) => {
      const taken = valueAt(now(), 'overrides'), left = Array.isArray(taken) ? (taken as readonly Sheet[]).filter((one) => one.code !== code || (one.side !== undefined && one.side !== shoe)) : [];
      change(withValue(now(), 'overrides', left.length ? left : undefined), `${code} no longer taken`);
      settle();
    },
  });
  const files = filesPart(at('files'), {
    ordered: (name) => valueAt(now(), `making.${name}`) !== undefined,
    order: (name, on) => { change(withValue(now(), `making.${name}`, on ? {} : undefined), `${MAKING_WORDS[name].title} ${on ? 'ordered' : 'no longer ordered'}`); settle(); },
    settings: (name) => goTo(`making.${name}`),
    sheet: now, make: async () => { const sheet = now(); return { reference: referenceOf(sheet), sheet, files: await desk.files(sheetText(sheet)) }; },
    saveOne: ({ name, bytes }) => offer(name, bytes, 'application/octet-stream'),
    save: ({ reference, files: made }) => offer(`${reference}.zip`, zipOf(made), 'application/zip'),
    print: openToPrint, printDrawing: () => { once = 'print'; look(); },
  });
  const bar = strip(at('strip'), {
    fromSample: (from) => openNew(parsed(from)), blank: () => openNew(blankSheet('ankle', 'left') as Sheet), openFile,
    saveFile: () => offer(`${referenceOf(now())}.json`, new TextEncoder().encode(sheetText(now())), 'application/json'),
    openJob, duplicate: () => { const copy = jobs.duplicate(job.id); if (copy) openJob(copy); },
    remove: () => { jobs.remove(job.id); openNext(); }, restore: (id) => { jobs.restore(id); openJob(id); },
    undo: () => { if (job.history.undo()) afterStep(); }, redo: () => { if (job.history.redo()) afterStep(); },
    mirror: () => { change(mirrored(now()), 'left and right swapped'); settle(); },
    layUnder: () => { under = under || !job.shown ? undefined : { sheet: now(), shown: job.shown }; side.ghost(under?.shown.side); bar.laid(under !== undefined); compare(); },
    copy: (from) => { change(copiedAcross(now(), from), `${from} copied across`); settle(); },
    client: () => { wants('walk'); if (job.fresh) showClient(); else once = 'client'; },
    lengths: (unit) => { chosen = unit; keepLengths(unit); afterChoice(); },
  });

  function now(): Sheet { return job.history.now(); }
  function goTo(path: string): void { form?.focus(path); }
  /** What the device was told, or else what the sheet is written in. */
  function lengths(): LengthUnit { const own = valueAt(now(), 'units'); return chosen ?? (isLengthUnit(own) ? own : 'mm'); }
  function afterChoice(): void { bar.lengths(lengths()); form?.show(); if (job.shown) { side.show(job.shown, true); showNumbers(job.shown); } compare(); look(); }
  function toldOf(shown: Shown): Findings { return heldOver(shown, shown === job.rested ? undefined : job.rested); }
  function showNumbers(shown: Shown): void {
    list.show(shown.shoes, lengths());
    report.show(toldOf(shown), lengths());
    void solid.then((part) => part.lengths(lengths()));
  }
  /** Which measure matters is told of what is shown, fine. */
  function tellSpread(): void {
    const { rested, fresh } = job;
    if (rested && fresh) { const look = { sheet: sheetText(now()), lengths: lengths(), places: rested.places, band: band.on() }; spread.tell((part) => part.show(look)); }
  }
  function tellStiff({ stiffeners, findings }: Shown): void { const sheet = sheetText(now()); if (stiffeners) stiff.tell((part) => part.show({ job: job.id, stiffeners, findings, sheet, lengths: lengths() })); }
  function showLimits(): void {
    const seats = Object.fromEntries((job.shown?.shoes ?? []).flatMap(({ side: shoe, figures }) => figures.filter(({ key }) => key === 'seatHeight').map(({ value }) => [shoe, value])));
    const bench = { job: job.id, sheet: now(), lengths: lengths(), faulty: root.dataset.shown === 'faults', seats };
    within.tell((part) => part.show(bench));
  }
  function showClient(): void { if (job.shown) clientView(job.shown, lengths()); }
  function marked(faults: readonly { readonly path: string; readonly text: string }[]): void { faulty = new Map(faults.map(({ path, text }) => [path, text])); form?.faults(faulty); }
  function change(sheet: Sheet, label: string, key?: string): void { job.history.edit(sheet, label, key); afterStep(); }
  function keep(): void { if (!job.behind) jobs.keep(job.id, job.history); }
  function settle(): void { job.history.settle(); keep(); bar.jobs(jobs.list(), job.id); }
  function afterStep(): void {
    form?.show();
    files.update();
    bar.lengths(lengths());
    bar.steps(job.history.undoLabel(), job.history.redoLabel());
    keep();
    look();
    showLimits();
  }
  /** From now on it is asked for how the pair walks, or for its stiffeners. */
  function wants(what: keyof typeof wanted): void { if (!wanted[what]) { wanted = { ...wanted, [what]: true }; look(); } }
  function paper(): Paper { return window.innerWidth >= 1000 && once !== 'print' ? WIDE : NARROW; }
  function look(): void {
    side.stale(true);
    job.fresh = false;
    root.dataset.shown = 'working';
    root.dataset.rested = 'false';
    void solid.then((part) => part.working(true));
    stiff.remark((part) => part.waits());
    desk.show({ job: job.id, sheet: sheetText(now()), paper: paper(), lengths: lengths(), extras: { ...extras, ...wanted } });
  }
  function moved({ path, also, label }: Handle, value: number): void {
    // A pin of another client's drawing moves nothing.
    if (!job.shown) return;
    const withOthers = Object.entries(also ?? {}).reduce((sheet, [other, word]) => withValue(sheet, other, word ?? undefined), now());
    // A measure of the body that is drawn elsewhere is no longer the one that was taken.
    const set = path.includes('.foot.') ? withValue(withOthers, path, { value, how: 'set on the drawing' }) : withValue(withOthers, path, value);
    change(set, label, `drag ${path}`);
  }
  function compare(): void {
    const { sheet, shown: before } = under ?? {}, { shown } = job;
    differ(!sheet || !before || !shown ? undefined : [
      ...sheetDifferences(sheet, now(), fields, lengths()),
      ...shown.shoes.flatMap((shoe) => figureDifferences(before.shoes.find(({ side: one }) => one === shoe.side)?.figures ?? [], shoe.figures, lengths())
        .map((row) => ({ ...row, label: `${shoe.side}: ${row.label}` }))),
    ]);
  }

  function openJob(id: string): void { job = opened(id); once = undefined; form?.forget(); bar.jobs(jobs.list(), id); afterStep(); }
  function openNew(sheet: Sheet): void { openJob(jobs.create(sheet)); }
  function openNext(): void { openJob(jobs.list().find(({ removed }) => removed === undefined)?.id ?? jobs.create(blankSheet('ankle', 'left') as Sheet)); }
  function openFile(text: string): void { const read = readText(text); if (read.ok) openNew(read.sheet); else tell.say(read.text); }
  async function takeTheirs(): Promise<void> {
    const { id } = job;
    await jobs.reread(id);
    if (jobs.list().some((one) => one.id === id && one.removed === undefined)) openJob(id); else openNext();
  }
  /** Nothing of this tab's is written over what another wrote, until it is said whose is to stay. */
  function writtenElsewhere(id: string): void {
    if (id !== job.id) return void jobs.reread(id).then(() => bar.jobs(jobs.list(), job.id));
    job.behind = true;
    jobs.leave(id);
    askWhose();
  }

  function told({ outcome, current, fine, job: of }: Told): void {
    // Another job was opened while this was worked out: nothing of the one before is shown as the new one's.
    if (of !== job.id) return;
    if (outcome.kind === 'shown') showShape(outcome.shown, current, fine); else showTrouble(outcome);
    side.stale(!current || outcome.kind !== 'shown');
    root.dataset.shown = current ? outcome.kind : 'working';
    root.dataset.rested = String(current && fine);
    void solid.then((part) => part.working(!(current && (fine || outcome.kind !== 'shown'))));
    if (current) showLimits();
    if (current && fine) { whenFine(); rolling.watch(); spread.watch(); within.watch(); stiff.watch(); }
  }
  function showShape(shown: Shown, current: boolean, fine: boolean): void {
    job.shown = shown;
    if (fine) job.rested = shown;
    job.fresh = current && fine;
    side.show(shown, current);
    if (shown.plan) plan.show(shown.plan, shown.shoes);
    showNumbers(shown);
    if (fine) { compare(); const { walking } = shown; if (walking) rolling.tell((part) => part.show(walking, lengths())); tellSpread(); if (current) tellStiff(shown); }
    if (shown.used) form?.used(shown.used);
    void solid.then((part) => part.show(shown.shoes, fine, shown.beside));
    const { findings, mouldFaults } = toldOf(shown);
    files.show(findings, mouldFaults);
    tell.clear();
    marked(mouldFaults);
  }
  /** The last shape of this job stays, grey; a job that never had one shows none. */
  function showTrouble(outcome: Exclude<Outcome, { kind: 'shown' }>): void {
    if (outcome.kind === 'faults') tell.faults(outcome.faults); else tell.troubles(outcome.troubles);
    marked(outcome.kind === 'faults' ? outcome.faults.map((fault) => ({ path: fault.path, text: faultWords(fault) })) : outcome.troubles);
    files.show(undefined, []);
    if (job.shown) return;
    side.clear();
    plan.clear();
    list.show([], lengths());
    report.clear();
    void solid.then((part) => part.show([], true, []));
    rolling.tell((part) => part.show(undefined, lengths()));
    spread.tell((part) => part.show(undefined));
    stiff.tell((part) => part.show(undefined));
    compare();
  }
  function whenFine(): void {
    const then = once;
    once = undefined;
    if (then === 'client' && job.fresh) showClient();
    if (then !== 'print') return;
    if (job.fresh) window.print();
    look();
  }

  document.addEventListener('keydown', (event) => {
    const { target } = event, typing = target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement && /^(text|date)$/.test(target.type);
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || typing || document.querySelector('dialog[open]')) return;
    event.preventDefault();
    if (event.shiftKey ? job.history.redo() : job.history.undo()) afterStep();
  });
  let wide = paper().width;
  window.addEventListener('resize', () => { if (paper().width !== wide) { wide = paper().width; afterStep(); } });
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => { event.preventDefault(); void event.dataTransfer?.files[0]?.text().then(openFile); });
  document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') void jobs.flush(); });
  window.addEventListener('pagehide', () => void jobs.flush());
  if ('serviceWorker' in navigator && location.protocol.startsWith('http')) void navigator.serviceWorker.register('./offline.js').catch(() => undefined);
  bar.jobs(jobs.list(), job.id);
  if (store.warning) bar.kept(store.warning);
  // The first design is begun before the form asks for its fields.
  afterStep();
  others.listen(writtenElsewhere);
  fields = await desk.fields();
  form = measures(at('measures'), files.wide, fields, {
    valueAt: (path) => valueAt(now(), path) ?? undefined, settle, lengths,
    set: (path, value) => change((path.endsWith('.toe.rule') ? toeRuled : withValue)(now(), path, value as Json | undefined), path, path),
    setAll: (values, label) => { change(values.reduce((sheet, [path, value]) => withValue(sheet, path, value as Json | undefined), now()), label); settle(); },
  });
  form.show();
  form.faults(faulty);
  if (job.shown?.used) form.used(job.shown.used);
  compare();
}

function parsed(text: string): Sheet {
  const read = readText(text);
  if (!read.ok) throw new Error(read.text);
  return read.sheet;
}
