import type { Design } from '../../src/checks/design.ts';
import type { FindBesides } from '../../src/designWith.ts';
import { MAKINGS, type Side } from '../../src/fitting/words.ts';
import type { SolidBeside } from '../../src/making/shown.ts';
import { readText, valueAt } from '../keep/sheet.ts';
import type { ExtrasAsked } from './protocol.ts';
import type { DrawnFoot } from './standingFoot.ts';

/** What is looked at besides the soles: solids of what is made, by shoe, and the drawn foot; and what finds out whether it can be made. */
export interface Extras { readonly find?: FindBesides; readonly beside?: (design: Design) => (side: Side) => readonly SolidBeside[]; readonly foot?: DrawnFoot }

/** Loads what is asked for or ordered, each once: nobody else has to wait for it. */
export async function extrasFor({ beside, foot }: ExtrasAsked, sheet: string): Promise<Extras> {
  const [find, solids, drawn] = await Promise.all([findingsFor(sheet), beside.length ? besideSolids() : undefined, foot ? drawnFoot() : undefined]);
  return { ...(find ? { find } : {}), ...(solids ? { beside: (design) => solids(design, beside) } : {}), ...(drawn ? { foot: drawn } : {}) };
}

/** As much of the search for trouble as what is ordered needs. */
async function findingsFor(text: string): Promise<FindBesides | undefined> {
  const read = readText(text), ordered = read.ok ? MAKINGS.filter((name) => valueAt(read.sheet, `making.${name}`) !== undefined) : [];
  return ordered.includes('stack') ? allFindings() : ordered.length ? findings() : undefined;
}

const once = <Loaded>(load: () => Promise<Loaded>): (() => Promise<Loaded>) => {
  let loading: Promise<Loaded> | undefined;
  // What could not be loaded is tried again the next time.
  return () => (loading ??= load().catch((error: unknown) => { loading = undefined; throw error; }));
};
const findings = once(async (): Promise<FindBesides> => (await import('../../src/making/findingsButStack.ts')).findingsButStack);
const allFindings = once(async (): Promise<FindBesides> => (await import('../../src/making/findings.ts')).makingFindings);
const besideSolids = once(async () => (await import('./beside.ts')).loadBeside());
const drawnFoot = once(async (): Promise<DrawnFoot> => {
  const { default: drawn } = await import('../foot/left.json'), [x = 0, z = 0] = drawn.ankle;
  return { ...drawn, ankle: [x, z] };
});
