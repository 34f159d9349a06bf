import { degrees, type Rad } from '../geometry/units.ts';

/** Roll angles ahead of standing at which the other foot lands, and at which the toe leaves the floor, of people walking freely.
 *  Source: computed from Pinzone and others 2014 and from open example gait data. */
export const ROLL_OTHER_LANDS: Rad = degrees(22), ROLL_TOE_OFF: Rad = degrees(40);

/** What a step takes with a fixed ankle, from heel contact until the other foot lands; the same sources. */
export const STEP_TURNS = { least: degrees(40), most: degrees(50) } as const;
