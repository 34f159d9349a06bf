import { inDegrees } from '../geometry/units.ts';
import { slipQuestion } from '../fitting/convert.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import { isEstimated } from '../fitting/measure.ts';
import { isRangeName } from '../fitting/ranges.ts';
import { SURVEY_SOURCE } from '../fitting/survey.ts';
import { unusualMeasures } from '../fitting/unusual.ts';
import { SIDES, type Side } from '../fitting/words.ts';
import type { Finding } from './finding.ts';
import { inputOf, takenOnFoot, type InputField } from './inputs.ts';
import { deg, mm, sentences } from './say.ts';
import type { Seen } from './seen.ts';
import { PRACTICE, TAPE } from './sources.ts';

const SHEET = 'fitting sheet';

/** What is outside the usual is worth a second reading. */
export function takenTwice(fitting: Fitting): Finding[] {
  return unusualMeasures(fitting).map(({ path, value, least, most, unit, text }) => ({
    code: 'TAKEN_TWICE', severity: 'warn', ...sideOf(path), measured: value, limit: value > most ? most : least, unit, where: SHEET,
    ...restingOn(sentences(text, slipAt(path, value, fitting.units))),
  }));
}

/** Asks whether a measure was typed in another unit, where that would explain it; empty otherwise. */
function slipAt(path: string, value: number, units: Fitting['units']): string {
  const name = path.replace(/^(left|right)\./, '');
  return isRangeName(name) ? slipQuestion(name, value, units) : '';
}

function sideOf(path: string): { readonly side?: Side } {
  const side = SIDES.find((one) => path.startsWith(`${one}.`));
  return side ? { side } : {};
}

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
    text: 'The leg difference was found with a tape. A tape named the wrong leg as short in 7 of 20 people, blocks in 1 of 20: take it again with blocks under the shorter leg until the pelvis is level (wearer.legDifference).', basis: TAPE,
  }];
}

/** Differences finer than this are below what any way of finding them tells apart, mm. Common practice of the trade. */
const LEG_FINEST = 3;

/** Nobody finds a leg difference that fine: most often it was typed in another unit. */
export function legDifferenceFine({ units, wearer: { legDifference: { correct } } }: Fitting): Finding[] {
  if (!(correct > 0 && correct < LEG_FINEST)) return [];
  const inCm = units === 'mm' ? `Was it in centimetres? ${Number(correct.toFixed(3))} cm would be ${Number((correct * 10).toFixed(2))} mm` : '';
  return [{
    code: 'LEG_DIFFERENCE_FINE', severity: 'warn', measured: correct, limit: LEG_FINEST, unit: 'mm', where: SHEET,
    text: sentences(`The leg difference to correct is ${mm(correct)} (wearer.legDifference.correct); less than ${LEG_FINEST} mm is finer than any way of finding it`, inCm), basis: PRACTICE,
  }];
}

/** An empty list says that there are none; no list says that nobody asked. */
export function risksAsked({ wearer: { risksAsked: asked } }: Fitting): Finding[] {
  if (asked) return [];
  return [{
    code: 'RISKS_NOT_ASKED', severity: 'warn', unit: '', where: SHEET,
    text: 'The sheet does not say whether risks were asked about. Ask the client and the prescriber, and enter what is there (wearer.risks; [] for none).', basis: PRACTICE,
  }];
}

export function prescription({ job: { prescriber, prescribed }, wearer: { legDifference } }: Fitting): Finding[] {
  const missing = [...(prescriber === undefined ? [['who prescribed the shoes', 'job.prescriber']] : []), ...(prescribed === undefined ? [['when they were prescribed', 'job.prescribed']] : [])];
  if (missing.length === 0) return [];
  const what = legDifference.correct > 0 ? 'A rocker and a leg difference are' : 'A rocker is';
  return [{
    code: 'PRESCRIPTION_MISSING', severity: 'warn', unit: '', where: SHEET,
    text: `The sheet does not say ${missing.map(([said]) => said).join(' and ')}. ${what} prescribed: enter it before cutting (${missing.map(([, field]) => field).join(', ')}).`, basis: PRACTICE,
  }];
}

const OUTLINE = ['last.length', 'last.ballWidth', 'last.heelWidth'] as const satisfies readonly InputField[];

/** A sole under a guessed outline seldom fits the last the shoe is made on. */
export function guessedOutline({ shoe: { side, fitting } }: Seen): Finding[] {
  const guessed = OUTLINE.filter((field) => { const measure = inputOf(field).of(fitting); return measure !== undefined && isEstimated(measure); });
  if (guessed.length === 0) return [];
  return [{
    code: 'OUTLINE_GUESSED', severity: 'warn', side, unit: '', where: 'outline',
    text: `The outline of the ${side} sole is partly a guess: ${guessed.map((field) => inputOf(field).label).join(', ')} ${guessed.length === 1 ? 'was' : 'were'} not measured. Measure the last the shoe is made on before the sole is cut (${guessed.join(', ')}).`, basis: PRACTICE,
  }];
}
