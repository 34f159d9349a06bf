import type { Booleans } from '../../src/making/booleans.ts';
import type { MakingName } from '../../src/fitting/words.ts';
import type { ExtrasAsked } from './protocol.ts';
import type { DrawnFoot } from './standingFoot.ts';

/** What is looked at besides the soles, and what that needs: the kernel that drills and splits, and the drawn foot. */
export interface Extras { readonly beside?: readonly MakingName[]; readonly booleans?: Booleans; readonly foot?: DrawnFoot }

/** Loads what is asked for, each once. */
export async function extrasFor({ beside, foot }: ExtrasAsked): Promise<Extras> {
  const [booleans, drawn] = await Promise.all([beside.length ? kernel() : undefined, foot ? drawnFoot() : undefined]);
  return { beside, ...(booleans ? { booleans } : {}), ...(drawn ? { foot: drawn } : {}) };
}

const once = <Loaded>(load: () => Promise<Loaded>): (() => Promise<Loaded>) => {
  let loading: Promise<Loaded> | undefined;
  // What could not be loaded is tried again the next time.
  return () => (loading ??= load().catch((error: unknown) => { loading = undefined; throw error; }));
};
const kernel = once(async () => (await import('../../src/making/booleans.ts')).loadBooleans());
const drawnFoot = once(async (): Promise<DrawnFoot> => {
  const { default: drawn } = await import('../foot/left.json'), [x = 0, z = 0] = drawn.ankle;
  return { ...drawn, ankle: [x, z] };
});
