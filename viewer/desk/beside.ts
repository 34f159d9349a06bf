import type { Design } from '../../src/checks/design.ts';
import type { MakingName, Side } from '../../src/fitting/words.ts';
import { loadBooleans } from '../../src/making/booleans.ts';
import { madeFor } from '../../src/making/made.ts';
import { onlyOrdering, solidsBeside, type SolidBeside } from '../../src/making/shown.ts';

/** Works out what is asked for of what a design orders; moulds only if the soles come free of them. */
export type Beside = (design: Design, asked: readonly MakingName[]) => (side: Side) => readonly SolidBeside[];

/** With the kernel that drills and splits. Large, so it is loaded only where somebody looks. */
export async function loadBeside(): Promise<Beside> {
  const booleans = await loadBooleans();
  return (design, asked) => {
    const things = asked.filter((name) => design.fitting.making[name] !== undefined && !(name === 'mould' && design.mouldFaults.length));
    if (things.length === 0) return () => [];
    const made = madeFor(onlyOrdering(design, things), booleans);
    return (side) => solidsBeside(made, side);
  };
}
