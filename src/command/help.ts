import type { Verb } from './commandLine.ts';

const CODES = `It ends with
  0    all is well
  1    a fault of rockerbench itself
  2    a command line that means nothing
  3    a sheet that must be corrected, or measures that leave no shape
  4    stops are left; nothing was made
  5    something cannot be read or written
  129, 130, 143   ended by a signal; nothing was left behind`;

const GENERAL = `rockerbench: from a fitting sheet to soles that roll, and all that is needed to
cut, cast or print them.

  rockerbench make SHEET.json [--into FOLDER] [--replace]
  rockerbench check SHEET.json [--json]
  rockerbench schema
  rockerbench samples [NAME]
  rockerbench help VERB
  rockerbench --version

To begin:  rockerbench samples baker > sheet.json
           rockerbench check sheet.json
           rockerbench make sheet.json

${CODES}
`;

const ABOUT: Record<Verb, string> = {
  make: `rockerbench make SHEET.json [--into FOLDER] [--replace]

Works out the sheet and writes solids, drawings and papers into a new folder,
./REFERENCE where none is named. The folder is there whole or not at all.

  --into FOLDER   the folder to write; the one around it must be there already
  --replace       puts the new folder in the place of an old one, which goes
                  once the new one is complete; a folder that holds anything
                  but the files of a job is never replaced

While a stop is left nothing is written. A stop can be taken on the maker's own
name under overrides on the sheet.
`,
  check: `rockerbench check SHEET.json [--json]

Prints what is worth knowing before cutting, worst first, and writes no file.
STOP: must not be made like this. WARN: look at it. note: good to know.

  --json          prints {"reference", "findings"} for machines, or {"faults"}
                  or {"troubles"} where the sheet must be corrected.
                  Lengths in mm, angles in degrees.
`,
  schema: `rockerbench schema

Prints the JSON Schema (2020-12) of the fitting sheet: every field, its unit,
its limits and how to measure it. Editors use it to help with a sheet.
`,
  samples: `rockerbench samples [NAME]

Lists the sample sheets, one line each; with a name prints that sheet:
  rockerbench samples baker > sheet.json
`,
  help: `rockerbench help [VERB]

Says how rockerbench, or one of its verbs, is used.
`,
};

export const helpText = (about: Verb | undefined): string => (about === undefined ? GENERAL : ABOUT[about]);
