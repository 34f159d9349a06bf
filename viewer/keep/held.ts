import type { Finding } from '../../src/checks/finding.ts';
import type { Shown } from '../desk/protocol.ts';

/** The checks as they are told. Held: those that were not looked at this time, as they were when the hand last rested. */
export interface Told { readonly findings: readonly Finding[]; readonly held: ReadonlySet<Finding>; readonly mouldFaults: Shown['mouldFaults'] }

const NONE: ReadonlySet<Finding> = new Set();
const isSame = (a: Finding, b: Finding): boolean => a.code === b.code && a.side === b.side;

/**
 * While a hand drags, some checks of what is made besides the soles wait: what they found stays in its place until the hand
 * rests, so that no line comes and goes. Pure.
 * @param rested the last answer that looked at everything; undefined where this one did
 */
export function heldOver({ findings, mouldFaults }: Shown, rested: Shown | undefined): Told {
  if (!rested) return { findings, held: NONE, mouldFaults };
  const held = rested.findings.filter((one) => rested.besides.includes(one.code) && !findings.some((now) => isSame(one, now)));
  return { findings: held.reduce((list, one) => inPlace(list, one, rested.findings), findings), held: new Set(held), mouldFaults: rested.mouldFaults };
}

/** After the nearest one that it stood behind before. */
function inPlace(list: readonly Finding[], one: Finding, before: readonly Finding[]): readonly Finding[] {
  const ahead = before.slice(0, before.indexOf(one)), last = ahead.findLast((other) => list.some((now) => isSame(now, other)));
  const at = last === undefined ? 0 : list.findLastIndex((now) => isSame(now, last)) + 1;
  return [...list.slice(0, at), one, ...list.slice(at)];
}
