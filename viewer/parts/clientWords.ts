import type { Finding } from '../../src/checks/finding.ts';
import type { FigureKey } from '../../src/checks/figures.ts';
import { otherSide } from '../../src/fitting/words.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { ShoeShown, WalkShown } from '../desk/protocol.ts';
import { inUnit, type LengthUnit } from '../keep/lengths.ts';
import type { Lane } from './rolling/strideView.ts';
import type { TagWords } from './solid/tags.ts';

/** One picture a client is shown: what stands in it, the line under it, and the words on each sole. */
export interface Seen {
  readonly shoes: readonly ShoeShown[];
  /** For somebody who does not see it. */
  readonly name: string;
  readonly line: string;
  readonly tags: TagWords;
}

/** What a client is to mind: what was found of this one first. */
export function mindWords(findings: readonly Finding[]): readonly string[] {
  const found = (code: string): boolean => findings.some((finding) => finding.code === code), stops = findings.filter(({ severity }) => severity === 'stop');
  return [
    ...(stops.some(({ overriddenBy }) => overriddenBy === undefined) ? ['Not to be worn yet: your doctor or specialist has a question to answer first.'] : []),
    ...(stops.some(({ code, overriddenBy }) => overriddenBy !== undefined && RELEASED.has(code)) ? ['Wear them only as far as your doctor has allowed.'] : []),
    ...OWN.flatMap(([code, words]) => (found(code) ? [words] : [])), ...MIND,
  ];
}

/** Stops that a doctor releases. */
const RELEASED: ReadonlySet<string> = new Set(['OPEN_WOUND', 'FUSION_NOT_RELEASED']);
const OWN = [
  ['FALL_RISK', 'You have fallen lately: somebody walks beside you until you are both sure.'],
  ['REDUCED_FEELING', 'You may not feel a sore place: look at your feet every day.'],
  ['UNSTABLE_KNEE', 'If your knee gives way, stop, and tell us.'],
  ['GROWING_FOOT', 'The foot still grows: we measure again soon.'],
] as const;

const MIND = [
  'The first steps are made beside a rail, with somebody there.',
  'Stop wearing them when new pain comes, and tell us.',
  'Look at your skin after each of the first walks.',
  'Care on stairs down, slopes and wet floors. Ask before you drive.',
];

/** What the sole does, how high it is and how heavy. */
export function sentence(shoe: ShoeShown, lengths: LengthUnit): string {
  const side = shoe.side === 'left' ? 'Left' : 'Right', heavy = valueOf(shoe, 'soleWeight'), high = seatOf(shoe);
  if (high === undefined) return `${side}: nothing is put under this shoe.`;
  const weighs = heavy === undefined ? '' : ` and weighs ${Math.round(heavy)}\u00A0g`;
  return shoe.kind === 'rocker' ? `${side}: the sole rolls for the joint that must not bend. It is ${inWords(high, lengths)} high under the heel${weighs}.`
    : `${side}: ${inWords(high, lengths)} are added under your own shoe, so that both feet stand as they should. What is added${weighs.replace(' and', '')}.`;
}

export function ownSoles(shoes: readonly ShoeShown[], lengths: LengthUnit): Seen {
  const worn = shoes.filter((shoe) => seatOf(shoe) !== undefined), only = worn.length === 1 ? worn[0] : undefined;
  return {
    shoes, tags: Object.fromEntries(worn.map((shoe) => [shoe.side, `${shoe.side}\n${shoe.kind === 'match' ? '+ ' : ''}${inWords(seatOf(shoe)!, lengths)}`])),
    name: only ? `Your ${only.side} sole.` : 'Your left and your right sole.',
    line: only ? `Your ${only.side} sole, as it stands on the floor.` : 'Both soles, as they stand on the floor.',
  };
}

/** The sole that rolls, and in the place of the other shoe an ordinary one of the same outline. */
export function besideOrdinary(shoes: readonly ShoeShown[], lengths: LengthUnit): Seen | undefined {
  const own = shoes.find(({ ordinary }) => ordinary !== undefined), high = own && seatOf(own);
  if (!own?.ordinary || high === undefined) return undefined;
  const { side, figures, ordinary } = own, other = otherSide(side);
  return {
    shoes: [{ side: other, kind: 'match', figures, stiffener: 0, solids: ordinary.solids }, own],
    tags: { [side]: `yours\n${inWords(high, lengths)}`, [other]: `ordinary\n${inWords(ordinary.seatHeight, lengths)}` },
    name: `Your ${side} sole, and an ordinary sole beside it.`,
    line: `Your ${side} sole beside an ordinary one of the same outline: ${difference(high, ordinary.seatHeight, lengths)} under the heel.`,
  };
}

/** How the client's soles roll; where only one does, with an ordinary shoe in its place below. Nothing where none rolls. */
export function ownRolling({ walking: { shoes } }: WalkShown): { readonly line: string; readonly lanes: readonly Lane[] } | undefined {
  const rolling = shoes.filter(({ kind }) => kind === 'rocker'), [only] = rolling, own: Lane = { which: 'own', words: 'yours' };
  if (!only) return undefined;
  if (rolling.length > 1) return { lanes: [own], line: 'Both soles roll from heel to toe, shown slowly.' };
  return { lanes: [own, { which: 'ordinary', words: 'ordinary' }], line: `Your ${only.side} sole rolls from heel to toe; below, an ordinary shoe in its place. Shown slowly.` };
}

const valueOf = (shoe: ShoeShown, key: FigureKey): number | undefined => shoe.figures.find((one) => one.key === key)?.value;

/** Undefined where nothing is put under the shoe. */
function seatOf(shoe: ShoeShown): Mm | undefined {
  const high = valueOf(shoe, 'seatHeight');
  return high === undefined || Math.round(high) === 0 ? undefined : high;
}

const rounded = (size: Mm, lengths: LengthUnit): number => Number(inUnit(size, lengths).toFixed(lengths === 'in' ? 1 : 0));
const written = (size: number, lengths: LengthUnit): string => (lengths === 'in' ? `${size.toFixed(1)}\u00A0inches` : `${size}\u00A0mm`);
const inWords = (size: Mm, lengths: LengthUnit): string => written(rounded(size, lengths), lengths);

/** Between the heights as they are said, so that the three numbers agree. */
function difference(own: Mm, ordinary: Mm, lengths: LengthUnit): string {
  const more = rounded(own, lengths) - rounded(ordinary, lengths), size = written(Math.abs(more), lengths);
  if (more === 0) return 'both are equally high';
  return more > 0 ? `yours is ${size} higher` : `yours is ${size} lower`;
}
