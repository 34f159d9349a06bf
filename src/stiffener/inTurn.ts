/** How two things that hang on each other are worked out in turn: a shoe S over its pack P, with what goes wrong T. */
export interface Turn<S, P, T> {
  /** The pack a shoe asks for; none where it asks for none. */
  readonly packOn: (shoe: S) => P | undefined;
  /** Whether a shoe was worked out over that very pack. */
  readonly isCounted: (shoe: S, pack: P) => boolean;
  readonly isAlike: (one: P, other: P) => boolean;
  readonly stifferOf: (one: P, other: P) => P;
  readonly over: (shoe: S, pack: P) => { readonly ok: true; readonly shoe: S } | { readonly ok: false; readonly trouble: T };
}

/** Rounds before whatever pack stands then is taken. */
const ROUNDS = 8;

/**
 * A pack is part of the stack, and what of the shoe is left may ask for another pack: both are worked out in turn until the pack
 * repeats. Where packs take turns, each asking for the next, the stiffest of them is kept, though the shoe over it asks for another.
 * @returns the shoe, and the pack that is kept where it is not the one the shoe asks for
 */
export function inTurn<S, P, T>(first: S, { packOn, isCounted, isAlike, stifferOf, over }: Turn<S, P, T>): { readonly ok: true; readonly shoe: S; readonly kept?: P } | { readonly ok: false; readonly trouble: T } {
  const seen: P[] = [];
  let shoe = first;
  for (let pack = packOn(shoe); pack !== undefined && !isCounted(shoe, pack); pack = packOn(shoe)) {
    const asked: P = pack, before = seen.findIndex((one) => isAlike(one, asked)), ends = before >= 0 || seen.length === ROUNDS;
    const taken = ends ? seen.slice(Math.max(before, 0)).reduce(stifferOf, asked) : asked, next = over(shoe, taken);
    if (!next.ok) return next;
    shoe = next.shoe;
    if (ends) return { ok: true, shoe, kept: taken };
    seen.push(asked);
  }
  return { ok: true, shoe };
}
