import { inDegrees } from '../geometry/units.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import { SURVEY_SOURCE } from '../fitting/survey.ts';
import { unusualMeasures } from '../fitting/unusual.ts';
import { SIDES, type Side } from '../fitting/words.ts';
import type { Finding } from './finding.ts';
import { inputOf, type InputField } from './inputs.ts';
import { deg, mm, sentences } from './say.ts';
import type { Seen } from './seen.ts';
import { PRACTICE, TAPE } from './sources.ts';

const SHEET = 'fitting sheet';

/** What is outside the usual is worth a second reading. */
export function takenTwice(fitting: Fitting): Finding[] {
  return unusualMeasures(fitting).map(({ path, value, least, most, unit, text }) => ({
    code: 'TAKEN_TWICE', severity: 'warn', ...sideOf(path), measured: value, limit: value > most ? most : least, unit, where: SHEET, ...restingOn(text),
  }));
}

function sideOf(path: string): { readonly side?: Side } {
  const side = SIDES.find((one) => path.startsWith(`${one}.`));
  return side ? { side } : {};
}

/** Ball joints on the last are carried over from the foot. */
const takenOnFoot = (field: InputField, { foot }: ShoeFitting): InputField =>
  foot && field === 'last.innerBall' ? 'foot.ballInner' : foot && field === 'last.outerBall' ? 'foot.ballOuter' : field;

/** One note for each measure that was not taken and that a figure rests on. An estimated hip has a note of its own. */
export function estimated({ shoe, estimates }: Seen): Finding[] {
  return estimates.filter((field) => field !== 'foot.hipAhead').flatMap((field) => estimatedField(shoe.fitting, takenOnFoot(field, shoe.fitting)));
}

function estimatedField(shoe: ShoeFitting, field: InputField): Finding[] {
  const { label, unit, of } = inputOf(field), measure = of(shoe);
  if (!measure) return [];
  const { value, rule, error } = measure, inUnit = (x: number): number => (unit === 'deg' ? inDegrees(x) : x);
  const say = (x: number): string => (unit === 'deg' ? deg : mm)(inUnit(x));
  return [{
    code: 'ESTIMATED', severity: 'note', side: shoe.side, measured: inUnit(value), unit, where: SHEET,
    ...restingOn(sentences(`The ${label} was not measured`, `Taken as ${say(value)}${error === undefined ? '' : ` ± ${say(error)}`}${rule === undefined ? '' : `: ${rule}`}`)),
  }];
}

/** What a rule rests on stands apart from the words; where it names the survey, the words keep all they say. */
function restingOn(text: string): Pick<Finding, 'text' | 'basis'> {
  if (text.includes(SURVEY_SOURCE)) return { text, basis: SURVEY_SOURCE };
  return { text: text.replaceAll(` (${PRACTICE})`, '').replace(new RegExp(`${PRACTICE}[;,] `, 'g'), ''), basis: PRACTICE };
}

export function legByTape({ wearer: { legDifference: { found, correct } } }: Fitting): Finding[] {
  if (found !== 'tape') return [];
  return [{
    code: 'LEG_BY_TAPE', severity: 'warn', measured: correct, unit: 'mm', where: SHEET,
    text: 'The leg difference was found with a tape. A tape named the wrong leg as short in 7 of 20 people, blocks in 1 of 20: take it again with blocks under the shorter leg until the pelvis is level.', basis: TAPE,
  }];
}

export function prescription({ job: { prescriber, prescribed } }: Fitting): Finding[] {
  const missing = (code: string, what: string): Finding =>
    ({ code, severity: 'warn', unit: '', where: SHEET, text: `The sheet does not say ${what}. A rocker and a leg difference are prescribed: enter it before cutting.`, basis: PRACTICE });
  return [
    ...(prescriber === undefined ? [missing('PRESCRIBER_MISSING', 'who prescribed the shoes')] : []),
    ...(prescribed === undefined ? [missing('PRESCRIPTION_DATE_MISSING', 'when the shoes were prescribed')] : []),
  ];
}
