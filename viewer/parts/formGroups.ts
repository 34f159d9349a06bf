import { capital } from '../../src/checks/say.ts';
import { MAKINGS, type MakingName } from '../../src/fitting/words.ts';
import type { SheetAccess } from './controls.ts';
import { MAKING_WORDS } from './makingWords.ts';

/** A group of the form: what it is called, the place on the sheet its fields lie under, and when there is something to fill in. */
export interface FormGroup {
  readonly title: string;
  readonly starts: string;
  readonly shown: (sheet: SheetAccess) => boolean;
  readonly open?: boolean;
  /** In the workshop's group, or in a place of its own where there is room for a table. */
  readonly within?: 'workshop' | 'wide';
}

const given = (path: string) => (sheet: SheetAccess): boolean => sheet.valueAt(path) !== undefined;
const ordered = (...names: readonly MakingName[]) => (sheet: SheetAccess): boolean => names.some((name) => given(`making.${name}`)(sheet));
const either = (...some: readonly FormGroup['shown'][]): FormGroup['shown'] => (sheet) => some.some((one) => one(sheet));
const always = (): boolean => true;

/** Whether more is told of a stiffener than a thickness. */
export const isPack = (stiffener: unknown): boolean => typeof stiffener === 'object' && stiffener !== null;
/** Of a stiffener: what stands whole on the sheet or not at all. */
const STIFFENER_PARTS = [['ownCloth', 'a cloth that is not on the list'], ['ownResin', 'a resin that is not on the list'], ['measuredPly', 'a ply that was measured'], ['ownCore', 'a core that is not on the list'], ['bench', 'the bench test']] as const;

const SHOES: readonly FormGroup[] = (['left', 'right'] as const).flatMap((side): FormGroup[] => {
  const shoe = side === 'left' ? 'Left' : 'Right', there = given(side), rolls = (sheet: SheetAccess): boolean => sheet.valueAt(`${side}.order.kind`) === 'rocker';
  return [
    { title: `${shoe} foot`, starts: `${side}.foot`, shown: (sheet) => there(sheet) && sheet.valueAt(`${side}.order.kind`) === 'rocker', open: true },
    { title: `${shoe} last`, starts: `${side}.last`, shown: there },
    { title: `${shoe} order`, starts: `${side}.order`, shown: always, open: true },
    { title: `${shoe} stiffener`, starts: `${side}.order.stiffener`, shown: rolls },
    ...STIFFENER_PARTS.map(([name, title]): FormGroup => ({ title: `${shoe} stiffener: ${title}`, starts: `${side}.order.stiffener.${name}`, shown: (sheet) => rolls(sheet) && isPack(sheet.valueAt(`${side}.order.stiffener`)) })),
    { title: `${shoe} limits`, starts: `${side}.order.targets`, shown: given(`${side}.order.targets`), open: true },
    { title: `${shoe} limits: how far it may be changed`, starts: `${side}.order.targets.spans`, shown: given(`${side}.order.targets`) },
  ];
});


/** What several things share is shown where one of them is ordered; cutter and printer always, for every sole is held against them. */
const WORKSHOP: readonly FormGroup[] = [
  { title: 'Cutter', starts: 'making.tool', shown: always },
  { title: 'Printer', starts: 'making.printBed', shown: always },
  { title: 'Board', starts: 'making.board', shown: either(ordered('jig', 'gauges', 'wedges'), given('making.board')) },
  ...MAKINGS.map((name): FormGroup => ({ title: capital(MAKING_WORDS[name].title), starts: `making.${name}`, shown: ordered(name), open: true })),
].map((group): FormGroup => ({ ...group, within: 'workshop' }));

/** Groups a maker knows, in the order of the work; each opens and closes. */
export const FORM_GROUPS: readonly FormGroup[] = [
  { title: 'The job', starts: 'job', shown: always }, { title: 'The client', starts: 'wearer', shown: always },
  ...SHOES, { title: 'Workshop', starts: 'making.chordGap', shown: always }, ...WORKSHOP,
  { title: 'Rack', starts: 'making.rack', shown: either(ordered('stack'), given('making.rack')), within: 'wide', open: true },
];

/** Whether a place on the sheet is that of a group, or in it. */
export const isUnder = (path: string, starts: string): boolean => path === starts || path.startsWith(`${starts}.`) || path.startsWith(`${starts}[`);

/** Groups that stand whole on the sheet or not at all; what takes them off again. */
export const WHOLE_GROUPS: Readonly<Record<string, string>> = { 'making.tool': 'Leave the cutter out', 'making.printBed': 'Leave the printer out', 'making.jig.bush': 'Leave the guide bush out', 'left.foot.walk.angles': 'Leave the three angles out', 'right.foot.walk.angles': 'Leave the three angles out', 'left.order.targets': 'Leave the limits out', 'right.order.targets': 'Leave the limits out',
  ...Object.fromEntries((['left', 'right'] as const).flatMap((side) => [['ownCloth', 'Leave this cloth out'], ['ownCloth.ownFibre', 'Leave this fibre out'], ['ownResin', 'Leave this resin out'], ['shank', 'Leave the steel shank out'], ['measuredPly', 'Leave this ply out'], ['ownCore', 'Leave this core out'], ['bench', 'Leave the bench test out']].map(([name, words]) => [`${side}.order.stiffener.${name}`, words]))) };
