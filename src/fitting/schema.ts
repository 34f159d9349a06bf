import * as z from 'zod';
import { date, group, line, setting, wearerMeasure, word } from './shapes.ts';
import { MAKING } from './makingShape.ts';
import { SHOE, type RawShoe } from './shoeShape.ts';
import { LEG_FINDINGS, RISKS, SCHEMA_FILE, SEXES, SHEET_VERSION, SIDES } from './words.ts';

const SHEET_ID = 'urn:rockerbench:fitting-sheet:1';

const SCHEMA_NAME = `"${SHEET_ID}", or where the file of the schema lies, ending in .schema.json`;

const REFERENCE = 'a reference of letters, digits, dots, dashes and underscores, 1 to 40 characters, a letter or digit first and no two dots together';

const job = group({
  reference: z.string({ error: REFERENCE }).regex(/^(?!.*\.\.)[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/, { error: REFERENCE })
    .meta({ description: 'Your number of the job. It becomes part of file names: letters, digits, dots, dashes and underscores.' }),
  date: date('Date the papers carry, year-month-day.'),
  maker: line(80, 'Who makes the shoes.').optional(),
  prescriber: line(80, 'Who prescribed them.').optional(),
  prescribed: date('Date of the prescription, year-month-day.').optional(),
  note: line(500, 'Anything the papers should repeat.').optional(),
}).meta({ description: 'The job, as the papers name it.' });

const legDifference = group({
  correct: setting('wearer.legDifference.correct', 'How much higher the shorter leg is to stand, as prescribed. 0 where nothing is to be corrected.'),
  shorter: word(SIDES, 'The shorter leg; take the line out where nothing is to be corrected.').optional(),
  found: word(LEG_FINDINGS, 'How the difference was found: "prescription" where it stands as the prescriber writes it, "none found" where it was looked for.'),
}).meta({ description: 'The leg-length difference to correct. It is never estimated, so it must be stated.' });

const RISK_LIST = `a list of risks, each once, at most ${RISKS.length}, or [] where none is present`;

const wearer = group({
  mass: wearerMeasure('wearer.mass', 'Body mass, dressed; scale.').optional(),
  stature: wearerMeasure('wearer.stature', 'Floor to crown, barefoot.').optional(),
  crotchHeight: wearerMeasure('wearer.crotchHeight', 'Floor to crotch, barefoot; the best stand-in for a hip height that was not taken.').optional(),
  sex: word(SEXES, 'Used only to choose between estimates.').optional(),
  risks: z.array(word(RISKS, 'A risk that was ticked.'), { error: RISK_LIST }).max(RISKS.length, { error: RISK_LIST })
    .meta({ description: `Risks that were asked about and are present, of: ${RISKS.join(', ')}. An empty list says that they were asked about and none is; left out, that nobody asked.` }).optional(),
  legDifference,
}).meta({ description: 'Who will wear the shoes.' });

const CODE = 'the code of a finding in capitals, digits and underscores, at most 40 characters';

const override = group({
  code: z.string({ error: CODE }).regex(/^[A-Z][A-Z0-9_]{0,39}$/, { error: CODE }).meta({ description: 'Code of the finding that stops the design.' }),
  side: word(SIDES, 'The shoe it is about; both where left out.').optional(),
  by: line(80, 'Who takes it on his or her name.'),
  reason: line(300, 'Why.'),
}).meta({ description: 'A stop that the maker takes on his or her own name. It stands on every paper.' });

const OVERRIDE_LIST = 'a list of at most 50 stops that are taken on a name';

const SOME_SHOE = { anyOf: [{ required: ['left'] }, { required: ['right'] }] };

/** The fitting sheet as it is written: the one definition behind reading, its types and the published schema. */
export const SHEET = group({
  $schema: z.string({ error: SCHEMA_NAME }).max(500, { error: SCHEMA_NAME }).regex(/^(urn:rockerbench:fitting-sheet:1|[^\p{Cc}]*\.schema\.json)$/u, { error: SCHEMA_NAME })
    .meta({ description: `Lets an editor find this description: its name, or where its file lies, like ./${SCHEMA_FILE}.` }).optional(),
  version: z.literal(SHEET_VERSION, { error: `${SHEET_VERSION}: sheets of version ${SHEET_VERSION} are read` }).meta({ description: 'Version of the sheet.' }),
  units: word(['mm', 'in'], 'Unit of every length on the sheet; masses are in kg and angles in degrees either way.'),
  job,
  wearer,
  left: SHOE.meta({ description: 'The left shoe.' }).optional(),
  right: SHOE.meta({ description: 'The right shoe.' }).optional(),
  making: MAKING.optional(),
  overrides: z.array(override, { error: OVERRIDE_LIST }).max(50, { error: OVERRIDE_LIST })
    .meta({ description: 'Stops that the maker takes on his or her own name.' }).optional(),
}).meta({ title: 'Fitting sheet', description: 'Measures of foot and last, and what is ordered, for a pair of shoes of which at least one rolls on a stiff sole.', ...SOME_SHOE });

export type RawSheet = z.infer<typeof SHEET>;
export type { RawShoe };

/** The published schema of the sheet (JSON Schema 2020-12), for editors and other programs. */
export function sheetJsonSchema(): object {
  const { $schema, ...schema } = z.toJSONSchema(SHEET, { target: 'draft-2020-12', io: 'input' });
  return { $schema, $id: SHEET_ID, ...schema };
}
