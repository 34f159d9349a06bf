import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { LastMeasures, Targets } from './fitting.ts';
import type { Freedom } from './words.ts';

/** Rules between the fields of targets. A value that could not be read is NaN here, and no comparison with it complains. */

/** What each span is of. */
export const SPAN_OF = {
  apex: 'apex', 'toe radius': 'toeRadius', 'standing flat': 'standingFlat', 'strike angle': 'strikeAngle', pitch: 'pitch', 'last spring': 'lastSpring',
} as const satisfies Record<Freedom, keyof Targets['spans']>;
const FREEDOM_NAMES = Object.keys(SPAN_OF) as readonly Freedom[];

/** Fields that ask for something; what may be changed is for their sake. */
const ASKING = ['seatHeightAtMost', 'ballHeightAtMost', 'ballThicknessAtMost', 'tipAtMost', 'tipWanted', 'toeSpringAtLeast', 'toeSpringAtMost', 'weightAtMost', 'seatDifferenceAtMost'] as const satisfies readonly (keyof Targets)[];

/** Where targets stand, and the last they are for. */
interface Place { readonly last: LastMeasures; readonly at: Path; readonly complain: Complain }

export function targetRules(targets: Targets, { last, at, complain }: Place): void {
  const { toeSpringAtLeast, toeSpringAtMost, free, spans } = targets;
  if (ASKING.every((name) => targets[name] === undefined)) complain(at, `must ask for something: ${ASKING.join(', ')}`);
  if (toeSpringAtLeast! > toeSpringAtMost!) complain([...at, 'toeSpringAtMost'], 'must not be less than toeSpringAtLeast');
  for (const name of FREEDOM_NAMES) {
    const field = SPAN_OF[name], span = spans[field], place = [...at, 'spans', field];
    if (span && free.length > 0 && !free.includes(name)) complain(place, `${LEAVE_OUT}, or "${name}" be named in free`);
    if (span && span.least! > span.most!) complain([...place, 'most'], 'must not be less than least');
  }
  for (const name of ['pitch', 'last spring'] as const)
    if (last.heights && free.includes(name)) complain([...at, 'free'], `must not name "${name}" where the underside was measured: the sole follows last.heights`);
}
