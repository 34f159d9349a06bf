import type { Design } from '../../src/checks/design.ts';
import type { FindBesides } from '../../src/designWith.ts';
import { MAKINGS, type MakingName, type Side } from '../../src/fitting/words.ts';
import type { SolidBeside } from '../../src/making/shown.ts';
import { readText, valueAt } from '../keep/sheet.ts';
import type { ExtrasAsked, Shown } from './protocol.ts';
import type { DrawnFoot } from './standingFoot.ts';

/** What is looked at besides the soles: solids of what is made, by shoe, the drawn foot, how the pair walks, and its stiffeners; and what finds out whether it can be made. */
export interface Extras { readonly find?: FindBesides; readonly beside?: (design: Design) => (side: Side) => readonly SolidBeside[]; readonly foot?: DrawnFoot; readonly walk?: (design: Design) => Pick<Shown, 'walking'>; readonly packs?: (design: Design) => Pick<Shown, 'stiffeners'> }

/**
 * Loads what is asked for or ordered, each once: nobody else has to wait for it.
 * @param rests a hand that drags, and who opens the page, sees the shoe before what is found of things made besides it is loaded
 */
export async function extrasFor({ beside, foot, walk, packs }: ExtrasAsked, sheet: string, rests: boolean): Promise<Extras> {
  const [find, solids, drawn, walked, bent] = await Promise.all([rests ? findingsFor(sheet) : undefined, beside.length ? besideSolids() : undefined, foot ? drawnFoot() : undefined, walk ? walking() : undefined, packs ? stiffeners() : undefined]);
  return { ...(find ? { find } : {}), ...(solids ? { beside: (design) => solids(design, beside) } : {}), ...(drawn ? { foot: drawn } : {}), ...(walked ? { walk: walked } : {}), ...(bent ? { packs: bent } : {}) };
}

/** As much of the search for trouble as what is ordered needs. */
async function findingsFor(text: string): Promise<FindBesides | undefined> {
  const read = readText(text), ordered = read.ok ? MAKINGS.filter((name) => valueAt(read.sheet, `making.${name}`) !== undefined) : [];
  return ordered.some((name) => LAID.includes(name)) ? allFindings() : ordered.length ? unlaidFindings() : undefined;
}

/** What has parts that are laid out on boards or sheets. */
const LAID: readonly MakingName[] = ['gauges', 'jig', 'stack', 'wedges'];

const once = <Loaded>(load: () => Promise<Loaded>): (() => Promise<Loaded>) => {
  let loading: Promise<Loaded> | undefined;
  // What could not be loaded is tried again the next time.
  return () => (loading ??= load().catch((error: unknown) => { loading = undefined; throw error; }));
};
const unlaidFindings = once(async (): Promise<FindBesides> => (await import('../../src/making/findingsUnlaid.ts')).findingsUnlaid);
const allFindings = once(async (): Promise<FindBesides> => (await import('../../src/making/findings.ts')).makingFindings);
const besideSolids = once(async () => (await import('./beside.ts')).loadBeside());
const drawnFoot = once(async (): Promise<DrawnFoot> => {
  const { default: drawn } = await import('../foot/left.json'), [x = 0, z = 0] = drawn.ankle;
  return { ...drawn, ankle: [x, z] };
});
const walking = once(async () => (await import('./walkShown.ts')).walkShown);
const stiffeners = once(async () => (await import('./packShown.ts')).packsShown);
