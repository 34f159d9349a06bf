import type { Verb } from './commandLine.ts';

const CODES = `It ends with
  0    all is well
  1    a fault of rockerbench itself
  2    words after rockerbench that it does not know
  3    a sheet that must be corrected, measures or limits that leave no shape,
       or a solid that does not lie where the planned sole does
  4    stops are left; nothing was made
  5    something cannot be read or written
  129, 130, 143   ended by a signal; nothing was left behind`;

const GENERAL = `rockerbench: from a fitting sheet to soles that roll, and all that is needed to
cut, cast or print them.

  rockerbench make SHEET.json [--with THINGS] [--into FOLDER] [--replace]
  rockerbench check SHEET.json [--with THINGS] [--spread] [--stiffener] [--json]
  rockerbench seek SHEET.json [--curve] [--take INTO.json] [--json]
  rockerbench roll SHEET.json SOLID.stl [--side left|right] [--json]
  rockerbench blank toe|ankle|prosthesis --rocker left|right|both --to FILE
  rockerbench schema
  rockerbench samples [NAME]
  rockerbench help VERB
  rockerbench --version

To begin:  rockerbench blank ankle --rocker left --to sheet.json
           rockerbench check sheet.json
           rockerbench make sheet.json
To look:   rockerbench samples baker > baker.json
           rockerbench make baker.json

${CODES}
`;

const ABOUT: Record<Verb, string> = {
  make: `rockerbench make SHEET.json [--with THINGS] [--into FOLDER] [--replace]

Works out the sheet and writes solids, drawings and papers into a new folder,
./REFERENCE where none is named. The folder is there whole or not at all.
Every warning, and every stop that was taken on a name, is printed at the end.

  --with THINGS   what is made besides, as is usual where the sheet does not say
                  more: names with commas between them, of mould, block, print,
                  jig, gauges, stack, plies, templates, wedges, card; or all
  --into FOLDER   the folder to write; the one around it must be there already
  --replace       puts the new folder in the place of an old one, which goes
                  once the new one is complete; a folder that holds anything
                  but the files of a job is never replaced

While a stop is left nothing is written. The maker can take a stop on his or her
own name: rockerbench check says what to write on the sheet for that.
`,
  check: `rockerbench check SHEET.json [--with THINGS] [--spread] [--stiffener]
                   [--json]

Prints what is worth knowing before cutting, worst first, and writes no file.
STOP: must not be made like this. WARN: look at it. note: good to know.

  --with THINGS   checks what would be made besides, see rockerbench help make
  --spread        how sure the shoes are: which measure decides them, and so
                  which to take again; takes a few seconds
  --stiffener     how the stiffener is laid, where the sheet says more of it
                  than a thickness, beside other ways to it
  --json          prints one JSON text for machines, whatever comes of it:
                  {"reference", "findings"}, "spread", "stiffeners" where
                  asked for;
                  {"faults"} or {"troubles"} where the sheet must be corrected;
                  {"problem"} for all else.
                  Lengths in mm, angles in degrees.
`,
  seek: `rockerbench seek SHEET.json [--curve] [--take INTO.json] [--json]

Works backwards from the limits on the sheet (order.targets of a rocker): prints
the best rocker that keeps to them, and what it loses against the order. Where
none does: which limit is to blame, and the nearest value of it that works.
The order itself stays as it is.

  --curve         what each height allowed leaves of the toe-off angle, too
  --take INTO     writes a new sheet with the values taken, once every shoe
                  with targets keeps to its limits; a file that is there
                  already stays as it is
  --json          prints one JSON text for machines, whatever comes of it:
                  {"reference", "shoes"}; {"faults"} or {"problem"} else.
                  Lengths in mm, angles in degrees, values to take as they
                  are typed into the sheet.

It ends with 3 where no rocker keeps to the limits.
`,
  roll: `rockerbench roll SHEET.json SOLID.stl [--side left|right] [--json]

Rolls a solid, the sole as exported or one that was made and scanned, on the
hull of its outline, and prints how it differs from the sole as planned:
standing point, how far ankle and hip rise and drop, how far the sole carries
past the ball, and where it does not touch the floor. Writes no file.

SOLID.stl is in mm and lies as the exported sole lies: the rearmost point of the
last's bottom at 0, forward from there, the floor at 0. Text or binary STL.

  --side SIDE     which shoe it is, where both are rockers
  --json          prints one JSON text for machines, whatever comes of it:
                  {"reference", "side", "figures", "strays", "gaps"};
                  {"faults"}, {"troubles"} or {"problem"} else.
                  Lengths in mm, angles in degrees.
`,
  blank: `rockerbench blank toe|ankle|prosthesis --rocker left|right|both --to FILE

Writes a new sheet with every field that has to be asked about, each null until
the client's own measure stands there. rockerbench check lists what still waits.
A file that is there already stays as it is.

  toe             a toe joint or the midfoot must not bend; the ankle is free
  ankle           the ankle or the whole foot must not bend
  prosthesis      a prosthetic foot
  --rocker SIDE   the shoe that gets the rocker; the other is matched to it
  --to FILE       the file to write
`,
  schema: `rockerbench schema

Prints what an editor needs to help with a sheet (a JSON Schema, 2020-12): every
field, its unit, its limits and how to measure it. Lay it beside the sheets:
  rockerbench schema > fitting-sheet.schema.json
`,
  samples: `rockerbench samples [NAME]

Lists the sample sheets, one line each; with a name prints that sheet:
  rockerbench samples baker > baker.json
The measures on a sample are those of its invented client. For a client of your
own begin with rockerbench blank.
`,
  help: `rockerbench help [VERB]

Says how rockerbench, or one of its verbs, is used.
`,
};

export const helpText = (about: Verb | undefined): string => (about === undefined ? GENERAL : ABOUT[about]);
