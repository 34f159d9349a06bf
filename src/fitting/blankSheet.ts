import { SCHEMA_FILE, SHEET_VERSION } from './schema.ts';
import { otherSide, type BlankFoot, type Side } from './words.ts';

/** Every foot under a rocker needs these. */
const FOOT = { stiff: { joint: null, state: null }, length: null, pivotHeight: null, hipHeight: null };
const FEET: Record<BlankFoot, object> = {
  toe: FOOT,
  ankle: { ...FOOT, pivotForward: null, heelPlates: { height: null, span: null, hipAhead: null } },
  prosthesis: { ...FOOT, stiff: { joint: 'whole foot', state: 'prosthetic' }, pivotForward: null, prosthesis: { heelRise: null } },
};

const rocker = (foot: BlankFoot): object => ({ foot: FEET[foot], last: { pitch: null, toeSpring: null }, order: { kind: 'rocker' } });
const match = { last: { length: null }, order: { kind: 'match', seatHeightNow: null, ballHeightNow: null } };

/**
 * A sheet that holds every field it cannot do without, each null where the maker has to fill it in: reading it names
 * them all at once. No measure is made up; what may be left out is left out.
 * @param foot what must not bend
 * @param rolls the shoe that gets the rocker; the other one is matched to it
 */
export function blankSheet(foot: BlankFoot, rolls: Side | 'both'): object {
  const shoeOn = (side: Side): object => (rolls === otherSide(side) ? match : rocker(foot));
  return {
    $schema: `./${SCHEMA_FILE}`, version: SHEET_VERSION, units: null,
    job: { reference: null, date: null },
    wearer: { legDifference: { correct: null, found: null } },
    left: shoeOn('left'), right: shoeOn('right'),
  };
}
