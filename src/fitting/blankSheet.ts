import { otherSide, SCHEMA_FILE, SHEET_VERSION, type BlankFoot, type Side } from './words.ts';

/** Every foot under a rocker needs these. */
const FOOT = { stiff: { joint: null, state: null }, length: null, pivotHeight: null, hipHeight: null };
const FEET: Record<BlankFoot, object> = {
  toe: FOOT,
  ankle: { ...FOOT, pivotForward: null, heelPlates: { height: null, span: null, hipAhead: null } },
  prosthesis: { ...FOOT, stiff: { joint: 'whole foot', state: 'prosthetic' }, pivotForward: null, prosthesis: { heelRise: null } },
};

/** What decides a sole's outline is asked for: it may be estimated, and its line taken out, but a guessed sole seldom fits. */
const OUTLINE = { length: null, ballWidth: null, heelWidth: null };
const rocker = (foot: BlankFoot): object => ({ foot: FEET[foot], last: { ...OUTLINE, pitch: null, toeSpring: null }, order: { kind: 'rocker' } });
const match = { last: { ...OUTLINE, toeSpring: null }, order: { kind: 'match', seatHeightNow: null, ballHeightNow: null } };

/**
 * A sheet that holds every field that has to be asked about, each null where the maker has to fill it in: reading it names
 * them all at once. No measure is made up; of what may be left out, only what is often forgotten is asked for.
 * @param foot what must not bend
 * @param rolls the shoe that gets the rocker; the other one is matched to it
 */
export function blankSheet(foot: BlankFoot, rolls: Side | 'both'): object {
  const shoeOn = (side: Side): object => (rolls === otherSide(side) ? match : rocker(foot));
  return {
    $schema: `./${SCHEMA_FILE}`, version: SHEET_VERSION, units: null,
    job: { reference: null, date: null, prescriber: null, prescribed: null },
    wearer: { mass: null, risks: null, legDifference: { correct: null, shorter: null, found: null } },
    left: shoeOn('left'), right: shoeOn('right'),
  };
}
