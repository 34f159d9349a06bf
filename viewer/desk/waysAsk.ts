import type { WaySets } from './waySets.ts';
import type { WayWords } from '../../src/checks/packWays.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import type { Side } from '../../src/fitting/words.ts';

/** What the page asks of the worker that looks for other ways to each stiffener of a sheet, and in what lengths they are told. */
export interface WaysAsk { readonly id: number; readonly sheet: string; readonly lengths: LengthUnit }

/** The pack itself first. @property means what each head says @property sets what each way writes into the sheet, where it can be written @property decides what decides the pack, and how sure its bend is, a paragraph each */
export interface WaysShown { readonly side: Side; readonly heads: readonly string[]; readonly means: readonly string[]; readonly ways: readonly WayWords[]; readonly sets: readonly (WaySets | undefined)[]; readonly decides: readonly string[] }

export type WaysAnswer = { readonly kind: 'found'; readonly id: number; readonly shoes: readonly WaysShown[] } | { readonly kind: 'failed'; readonly id: number; readonly text: string };
