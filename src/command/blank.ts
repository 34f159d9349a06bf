import { resolve } from 'node:path';
import { blankSheet } from '../fitting/blankSheet.ts';
import { SCHEMA_FILE } from '../fitting/words.ts';
import type { BlankFoot, Side } from '../fitting/words.ts';
import { EXIT, jsonText, onDisk, printable, Refusal, type Exit } from './refusal.ts';
import type { World } from './world.ts';

/** What a maker may give in the place of what waits on the sheet. */
const INSTEAD: Record<BlankFoot, string> = {
  toe: 'In place of hipHeight and pivotHeight, wearer.stature will do: they are then estimated.\n',
  ankle: 'In place of heelPlates, ankleAngle will do; never both.\n',
  prosthesis: '',
};

const MAY_GO = `In the place of risks a list of those that are present goes, [] where none is. Where no leg difference is to be
corrected, correct is 0 and the line of shorter is taken out.
`;
/** What a stiffener that is worked out needs. */
const MASS_MAY_GO = `Where order.stiffener of the rocker says what is wanted, { "wanted": "rigid" }, its plies are worked out for wearer.mass;
with a thickness alone that line may be taken out, and nothing is known of how far the sole bends.
`;
const MATCH_MAY_GO = `Of the matched shoe's last the lines of toeSpring, ballWidth and heelWidth may be taken out; they are then estimated.
`;

/** Writes a sheet that waits to be filled in. @throws Refusal where something lies there already */
export async function blank({ disk, here, out }: World, { foot, rocker, to }: { readonly foot: BlankFoot; readonly rocker: Side | 'both'; readonly to: string }): Promise<Exit> {
  const full = resolve(here, to), name = printable(to);
  if (await onDisk('written', to, () => disk.look(full, 'show')))
    throw new Refusal(EXIT.disk, `${name} is there already and stays as it is; take another name.`);
  await onDisk('written', to, () => disk.write(full, new TextEncoder().encode(jsonText(blankSheet(foot, rocker)))));
  out.write(`${name} is written. Put the client's own measures in the place of each null.
${INSTEAD[foot]}${MAY_GO}${MASS_MAY_GO}${rocker === 'both' ? '' : MATCH_MAY_GO}rockerbench check ${name} lists what is still to be filled in.
An editor helps with every field when the schema lies beside the sheet:
  rockerbench schema > ${SCHEMA_FILE}
`);
  return EXIT.good;
}
