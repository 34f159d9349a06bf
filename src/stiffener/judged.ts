import { inDegrees } from '../geometry/units.ts';
import { BENCH_MOMENT, WALKING_RANGE } from './loads.ts';
import type { Asked, Assessed, Case, Strained } from './assess.ts';
import { BEND_MOST, bendTold, limitOf, WALKING_RESERVE, WALKING_STRAIN } from './grades.ts';
import { lesser, type Placed } from './strained.ts';

/** What is unwise about a stiffener, numbers apart from words; `checks` makes a finding of it. `at` is mm from the heel. */
export interface Judgement {
  readonly code: 'STIFFENER_BENDS' | 'STIFFENER_STRAINED' | 'STIFFENER_STUMBLE' | 'STIFFENER_WALKING' | 'STIFFENER_WRINKLES' | 'STIFFENER_CORE_SHEAR' | 'STIFFENER_YIELDS' | 'STIFFENER_DISHED' | 'STIFFENER_WAIST' | 'STIFFENER_LOAD';
  readonly severity: 'stop' | 'warn' | 'note';
  readonly measured: number;
  readonly limit: number;
  readonly unit: 'deg' | '%' | 'times' | 'N·m/kg';
  readonly at?: number;
  readonly text: string;
  readonly basis: string;
}

const PRACTICE = 'common practice', digits = (value: number): string => value.toFixed(1);
type Found = Pick<Assessed, 'bench' | 'walking' | 'stumble' | 'ifDished' | 'grade' | 'waist'>;

/**
 * All of them; none when the stiffener is what was wanted and lasts. What bends too much does not do what was ordered, what a
 * stumble breaks does not come back, and plies or a core that daily walking breaks leave a loose sole after weeks: those stop.
 * Strain that tires, a face that may wrinkle and a core that a stumble may shear are counted with loads and strengths of
 * common practice that hardly a pack of the trade keeps to: those warn.
 */
export function judged(found: Found, asked: Asked): Judgement[] {
  return [...bends(found, asked), ...strains(found), ...dished(found), ...waist(found.waist), ...unusual(found.walking, asked)];
}

function strains({ walking, stumble }: Strained): Judgement[] {
  return [
    ...strained(walking),
    ...below(stumble.firstPly, 'STIFFENER_STUMBLE', 'stop', (times, at) => `A stumble on the tip breaks a ply first ${at} (${stumble.firstPly.name}); it bears ${times} times that load.`),
    ...below(walking.firstPly, 'STIFFENER_WALKING', 'stop', (times, at) => `Daily walking comes too near to breaking a ply ${at} (${walking.firstPly.name}): it bears ${times} times that load, and ${WALKING_RESERVE} times are wanted.`, WALKING_RESERVE),
    ...below(lesser(walking.wrinkling, stumble.wrinkling), 'STIFFENER_WRINKLES', 'warn', (times, at) => `The pressed plies wrinkle on their core ${at} at ${times} times the load: take a stiffer core, or more plies on that side.`),
    ...coreSheared(walking.coreShear, stumble.coreShear),
    ...below(lesser(walking.yields, stumble.yields), 'STIFFENER_YIELDS', 'stop', (times, at) => `The strip of metal yields ${at} at ${times} times the load.`),
  ];
}

/** Sheared in walking the sole comes loose; what a stumble does is told with strengths known from tables only. */
function coreSheared(walking: Placed, stumble: Placed): Judgement[] {
  const words = (load: string) => (times: string, at: string): string => `The core is sheared through ${at} at ${times} times the load of ${load}: take a stronger or a thicker core.`;
  const walked = below(walking, 'STIFFENER_CORE_SHEAR', 'stop', words('daily walking'));
  return walked.length > 0 ? walked : below(stumble, 'STIFFENER_CORE_SHEAR', 'warn', words('a stumble'));
}

function bends({ bench, grade }: Found, asked: Asked): Judgement[] {
  const { wanted, mass, bendAtMost } = asked, limit = limitOf(asked), measured = inDegrees(bench.bend);
  if (bench.bend <= limit) return [];
  const load = `${digits(BENCH_MOMENT * mass)} N·m (${BENCH_MOMENT} N·m for each kg)`;
  return [{
    code: 'STIFFENER_BENDS', severity: 'stop', measured: Math.min(measured, inDegrees(BEND_MOST)), limit: inDegrees(limit), unit: 'deg',
    text: `The sole bends ${bendTold(bench.bend, 1)} at the ball under ${load}; ${bendAtMost === undefined ? wanted : 'what is wanted'} is at most ${digits(inDegrees(limit))}°.${grade === 'flexible' ? ' So flexible it is no sole for a rocker.' : ''}`, basis: PRACTICE,
  }];
}

function strained({ strain, strainAt }: Case): Judgement[] {
  const measured = Math.abs(strain) * 100, limit = WALKING_STRAIN * 100;
  return measured <= limit ? [] : [{
    code: 'STIFFENER_STRAINED', severity: 'warn', measured, limit, unit: '%', at: strainAt,
    text: `Walking strains the plies by ${measured.toFixed(2)} % at ${Math.round(strainAt)} mm from the heel; more than ${limit} % tires them.`, basis: PRACTICE,
  }];
}

function below({ times, at }: Placed, code: Judgement['code'], severity: Judgement['severity'], words: (times: string, at: string) => string, limit = 1): Judgement[] {
  return times >= limit ? [] : [{ code, severity, measured: times, limit, unit: 'times', at, text: words(times.toFixed(2), `at ${Math.round(at)} mm from the heel`), basis: PRACTICE }];
}

/** Of a bottom whose camber nobody measured: what it no longer bears if it is dished as most are. */
function dished({ ifDished, walking, stumble }: Found): Judgement[] {
  if (!ifDished) return [];
  const told = new Set(strains({ walking, stumble }).map(({ code }) => code)), more = strains(ifDished).filter(({ code }) => !told.has(code)), [first] = more;
  if (!first) return [];
  return [{ ...first, code: 'STIFFENER_DISHED', severity: 'warn', text: `The last's camber was not measured (last.camber). If its bottom is dished as most are, plies are strained more: ${more.map(({ text }) => text).join(' ')}${more.some(({ severity }) => severity === 'stop') ? ' Measured so, that would stop: measure it before anything is laid.' : ''}` }];
}

/** The foot bears all along the waist, not at heel and ball alone: what is told is more than there is. */
function waist(found: Case | undefined): Judgement[] {
  if (!found || Math.abs(found.strain) <= WALKING_STRAIN) return [];
  const measured = Math.abs(found.strain) * 100;
  return [{
    code: 'STIFFENER_WAIST', severity: 'note', measured, limit: WALKING_STRAIN * 100, unit: '%', at: found.strainAt,
    text: `Rolling over the waist strains the plies by up to ${measured.toFixed(2)} % at ${Math.round(found.strainAt)} mm from the heel, if the foot bore at heel and ball alone.`, basis: 'mechanics; an upper bound',
  }];
}

/** A roll that asks more or less of the ball than people were measured to: a wrong mass, or a tread line in the wrong place. */
function unusual({ load: { moment } }: Case, { mass }: Asked): Judgement[] {
  const measured = moment / 1000 / mass, [low, high] = WALKING_RANGE, limit = measured < low ? low : high;
  return measured >= low && measured <= high ? [] : [{
    code: 'STIFFENER_LOAD', severity: 'note', measured, limit, unit: 'N·m/kg',
    text: `Walking bends the ball by ${measured.toFixed(2)} N·m for each kg; ${low} to ${high} is usual: see to the tread line and the mass.`, basis: `${PRACTICE}; Miyazaki and Yamamoto 1993, 0.24 to 0.42 barefoot`,
  }];
}
