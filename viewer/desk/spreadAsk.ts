import type { SpreadShown, TriedShown } from './spreadShown.ts';

/** What the page asks of the worker that finds out which measure matters. A newer number makes older ones stale; another sheet stops what is tried. */
export type SpreadAsk =
  | { readonly kind: 'look'; readonly id: number; readonly sheet: string }
  | { readonly kind: 'try'; readonly id: number }
  | { readonly kind: 'stop' };

export type SpreadAnswer =
  /** No shoes where the sheet has no shape. */
  | { readonly kind: 'looked'; readonly id: number; readonly shoes: readonly SpreadShown[] }
  | { readonly kind: 'progress'; readonly id: number; readonly done: number; readonly of: number }
  | { readonly kind: 'tried'; readonly id: number; readonly shoes: readonly TriedShown[] }
  | { readonly kind: 'failed'; readonly id: number; readonly text: string };
