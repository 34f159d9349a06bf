import type { Design } from '../../src/checks/design.ts';
import type { Side } from '../../src/fitting/words.ts';
import type { SolidBeside } from '../../src/making/shown.ts';
import type { ExtrasAsked } from './protocol.ts';
import type { DrawnFoot } from './standingFoot.ts';

/** What is looked at besides the soles: solids of what is made, by shoe, and the drawn foot. */
export interface Extras { readonly beside?: (design: Design) => (side: Side) => readonly SolidBeside[]; readonly foot?: DrawnFoot }

/** Loads what is asked for, each once: nobody else has to wait for it. */
export async function extrasFor({ beside, foot }: ExtrasAsked): Promise<Extras> {
  const [solids, drawn] = await Promise.all([beside.length ? besideSolids() : undefined, foot ? drawnFoot() : undefined]);
  return { ...(solids ? { beside: (design) => solids(design, beside) } : {}), ...(drawn ? { foot: drawn } : {}) };
}

const once = <Loaded>(load: () => Promise<Loaded>): (() => Promise<Loaded>) => {
  let loading: Promise<Loaded> | undefined;
  // What could not be loaded is tried again the next time.
  return () => (loading ??= load().catch((error: unknown) => { loading = undefined; throw error; }));
};
const besideSolids = once(async () => (await import('./beside.ts')).loadBeside());
const drawnFoot = once(async (): Promise<DrawnFoot> => {
  const { default: drawn } = await import('../foot/left.json'), [x = 0, z = 0] = drawn.ankle;
  return { ...drawn, ankle: [x, z] };
});
