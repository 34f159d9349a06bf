import { degrees, inDegrees } from '../geometry/units.ts';
import { LEAVE_OUT, type Complain, type Path } from './faults.ts';
import type { Walk, Wearer } from './fitting.ts';
import type { RawFoot } from './readStance.ts';
import { stanceTable } from './stanceTable.ts';
import { taken } from './taken.ts';
import type { Readable } from './checkShape.ts';

type RawWalk = NonNullable<RawFoot['walk']>;

/** How this leg was seen to walk, where it was; complains of a table that cannot be read and of angles that do not rise. */
export function readWalk({ walk }: RawFoot, { mass }: Wearer, at: Path, complain: Complain): Walk | undefined {
  if (walk === undefined) return undefined;
  const { angles, table } = walk, here = [...at, 'walk'];
  if (angles !== undefined && table !== undefined) complain([...here, 'table'], `${LEAVE_OUT} where angles are given: two readings of one walk may differ`, 'Give angles or table, not both.');
  if (angles === undefined && table === undefined) complain([...here, 'angles'], 'must be given, or table: else leave walk out, and the mean of seven people stands for it');
  return angles ? readAngles(angles, [...here, 'angles'], complain) : readTable(table ?? '', mass?.value, [...here, 'table'], complain);
}

function readTable(text: string, mass: number | undefined, at: Path, complain: Complain): Walk | undefined {
  if (text === '') return undefined;
  const reading = stanceTable(text, Number.isFinite(mass) ? mass : undefined);
  if (reading.ok) return { kind: 'table', rows: reading.rows };
  reading.rules.forEach((rule) => complain(at, rule));
  return undefined;
}

/** Nearer to each other than this, degrees, two readings from a video are one. */
const APART = 1;

function readAngles({ contact = NaN, midStance = NaN, toeOff = NaN }: Readable<NonNullable<RawWalk['angles']>>, at: Path, complain: Complain): Walk {
  const walk = { kind: 'angles', contact: taken(contact), midStance: taken(midStance), toeOff: taken(toeOff) } as const;
  const rising = (name: 'midStance' | 'toeOff', before: number): void => {
    if (walk[name].value < before + degrees(APART))
      complain([...at, name], `must be at least ${APART} ° more than the angle before it: over the standing foot the shank turns forward`, '', Number(inDegrees(walk[name].value).toFixed(1)));
  };
  rising('midStance', walk.contact.value);
  rising('toeOff', walk.midStance.value);
  return walk;
}
