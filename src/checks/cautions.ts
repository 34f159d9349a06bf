import type { Fitting } from '../fitting/fitting.ts';
import { SIDES, type Risk } from '../fitting/words.ts';
import type { Finding, Severity } from './finding.ts';
import { sentences } from './say.ts';
import { BALANCE, FEELING, PRACTICE } from './sources.ts';

interface Warning { readonly code: string; readonly severity: Severity; readonly text: string; readonly basis: string }

/** What each ticked risk says. The first two need a release by the prescriber. */
const RISKS: Record<Risk, Warning> = {
  'open wound': {
    code: 'OPEN_WOUND', severity: 'stop', basis: PRACTICE,
    text: 'There is an open wound: a stiff rolling shoe is not for it. Wait for the prescriber, and enter on the sheet who released it and why (overrides).',
  },
  'fusion not released': {
    code: 'FUSION_NOT_RELEASED', severity: 'stop', basis: PRACTICE,
    text: 'The fusion is not released for walking: no shoe before the prescriber releases it. Enter on the sheet who released it and why (overrides).',
  },
  'unstable knee': {
    code: 'UNSTABLE_KNEE', severity: 'warn', basis: PRACTICE,
    text: 'The knee is unstable, and a stiff rolling shoe moves load to the knee. Ask prescriber and physiotherapist before it is cut.',
  },
  'fall within a year': {
    code: 'FALL_RISK', severity: 'warn', basis: BALANCE,
    text: 'The client fell within a year. Rolling soles worsened the balance of young adults when they were pushed; in a trial with numb feet a toe-only rocker made no difference. Ask specialist and physiotherapist first.',
  },
  'reduced feeling': {
    code: 'REDUCED_FEELING', severity: 'warn', basis: FEELING,
    text: 'The foot feels less: not without a plan to look at the skin each day. Have the pressure inside the shoe checked before it is handed over.',
  },
  child: {
    code: 'GROWING_FOOT', severity: 'warn', basis: PRACTICE,
    text: 'The foot still grows: ask the prescriber when foot, last and leg difference are to be measured again.',
  },
};

/** What a sole can do about a risk, where it does not do so yet. */
const GIVE_FLAT: readonly Risk[] = ['fall within a year', 'reduced feeling'];
const lacksFlat = ({ shoes }: Fitting): boolean =>
  SIDES.some((side) => { const order = shoes[side]?.order; return order?.kind === 'rocker' && order.standingFlat === 0; });

export const riskFindings = (fitting: Fitting): Finding[] => fitting.wearer.risks.map((risk) => ({
  ...RISKS[risk], unit: '', where: 'client',
  text: sentences(RISKS[risk].text, GIVE_FLAT.includes(risk) && lacksFlat(fitting) ? 'Give the sole a standing flat (order.standingFlat)' : ''),
}));

export interface Caution { readonly text: string; readonly loud?: boolean }

/** The one caution of a sheet that has room for no more: what this client's sheet makes urgent, loud; else what rolling does to balance. */
export function cautionInShort(fitting: Fitting): Caution {
  const loud = standingCautions(fitting).filter((caution) => caution.loud === true);
  return loud.length > 0 ? { loud: true, text: loud.map(({ text }) => text).join(' ') } : balanceCaution(fitting.wearer.risks);
}

/** The cautions every paper carries, in plain words; those this client's sheet makes urgent come first. */
export function cautionsFor(fitting: Fitting): readonly string[] {
  const cautions = standingCautions(fitting);
  return [...cautions.filter(({ loud }) => loud), ...cautions.filter(({ loud }) => !loud)].map(({ text }) => text);
}

/** What rolling does to balance; loud where a risk of falling was ticked. */
export const balanceCaution = (risks: readonly Risk[]): Caution => (UNSTEADY.some((risk) => risks.includes(risk))
  ? { loud: true, text: 'Danger of falling: this client falls, feels little or has an unstable knee. No step in these shoes before specialist and physiotherapist agree; then only beside a rail, with help, on a level floor.' }
  : { text: 'Rolling soles can make standing less steady. Whoever falls, has numb feet, sees poorly or walks unsteadily asks specialist and physiotherapist first.' });
const UNSTEADY: readonly Risk[] = ['fall within a year', 'reduced feeling', 'unstable knee'];

function standingCautions({ wearer: { risks }, shoes }: Fitting): Caution[] {
  const has = (...named: readonly Risk[]): boolean => named.some((risk) => risks.includes(risk));
  const prosthetic = SIDES.some((side) => shoes[side]?.foot?.state === 'prosthetic');
  return [
    { text: 'A doctor or authorised specialist prescribes these shoes, and the leg difference is the prescriber\'s figure. What is computed here is a shape, not a treatment.' },
    { text: 'A stiff rolling sole moves load to the neighbours: knee, hip and the other foot. Stop wearing it when new pain comes, and ask the prescriber.' },
    balanceCaution(risks),
    { loud: has('open wound', 'fusion not released', 'unstable knee', 'reduced feeling'), text: 'Not for an open wound, a fusion before its release, an unstable knee, uncontrolled spasm, rapid swelling, or numb feet without a plan to look at the skin.' },
    { text: 'First wear only under supervision: beside a rail on a level floor, then a turn, then a stair with a rail, 20 to 30 minutes in all; then look at the skin.' },
    { text: 'Change shoes to drive: the pedals must be felt and the ankle must move freely. After a fusion ask the authority and the insurer.' },
    { text: 'Care on stairs down, slopes, ladders, escalators, uneven ground, wet tiles and ice.' },
    { loud: prosthetic, text: 'With a prosthetic foot never change the heel height without the prosthetist.' },
    { text: 'Never one shoe only: both or none, and the other shoe is checked at the same visit.' },
    { text: 'When heel or toe of the outsole has worn 2 mm, have it resoled with the gauge; without it the roll is lost.' },
    { text: 'Keep the shoes away from radiators and hot cars: epoxy and cement soften at about 70 °C.' },
    { text: 'In the workshop: extraction for solvents; gloves for epoxy, it sensitises for good; mask, wet sanding and vacuum for carbon dust; no breathing of foam dust or of fumes from overheated foam.' },
    ...(has('child') ? [{ loud: true, text: 'A growing foot: measure foot, last and leg difference again as often as the prescriber says.' }] : []),
  ];
}
