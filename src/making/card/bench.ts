import { figuresOf, inWords, type FigureKey } from '../../checks/figures.ts';
import { mm } from '../../checks/say.ts';
import { stationAt } from '../../checks/stations.ts';
import type { Design } from '../../checks/design.ts';
import type { Side, WayOfMaking } from '../../fitting/words.ts';
import type { Mm } from '../../geometry/units.ts';
import { partsOf, type Shoe, type SoleParts } from '../../pair/shoe.ts';
import type { ShoeBlock, ShoeMould } from '../made.ts';
import type { Plies } from '../plies/plies.ts';
import type { SideValue, Target } from './step.ts';

/** What the steps are told from: the shoes that get a sole, how they are made, and what is ordered. */
export interface Bench {
  readonly design: Design;
  readonly way: WayOfMaking;
  readonly soles: readonly Sole[];
  readonly moulds: readonly ShoeMould[];
  readonly blocks: readonly ShoeBlock[];
  readonly plies: Plies | undefined;
}
export interface Sole { readonly shoe: Shoe; readonly parts: SoleParts }

export const solesIn = ({ shoes }: Design): Sole[] => shoes.flatMap((shoe) => { const parts = partsOf(shoe); return parts ? [{ shoe, parts }] : []; });
export const sidesOf = (soles: readonly Sole[]): Side[] => soles.map(({ shoe: { side } }) => side);

/** Soles that get a stiffener: those of rockers. */
export const stiffened = ({ soles }: Bench): readonly Sole[] => soles.filter(({ parts: { shape } }) => shape.stiffener > 0);

/** A figure of each shoe that has it, as every other paper says it. */
export function figureValues({ design: { shoes, fitting } }: Bench, key: FigureKey): SideValue[] {
  return shoes.flatMap((shoe): SideValue[] => {
    const figure = figuresOf(shoe, fitting).find((one) => one.key === key);
    return figure ? [{ side: shoe.side, text: inWords(figure) }] : [];
  });
}
export const figureTarget = (bench: Bench, what: string, key: FigureKey, within: string): Target => ({ what, values: figureValues(bench, key), within });

/** Foam under a place of the long axis, without stiffener and outsole, upright. It is as sure as the thickness of the sole there. */
export function foamTarget(bench: Bench, what: string, place: 'seat' | 'tread' | 'tip', within: string): Target {
  return { what, within, values: bench.soles.map(({ shoe, parts: { shape } }) => ({ side: shoe.side, text: `${mm(stationAt(shape, placeOn(shoe, place)).foam)}${isEstimated(bench, shoe, place) ? ' (est.)' : ''}` })) };
}

const THICKNESS = { seat: 'seatThickness', tread: 'thicknessTread', tip: 'thicknessTip' } as const satisfies Record<string, FigureKey>;
const placeOn = ({ last }: Shoe, place: keyof typeof THICKNESS): Mm => place === 'seat' ? last.seatLength / 2 : place === 'tread' ? last.tread : last.length;
const isEstimated = ({ design: { fitting } }: Bench, shoe: Shoe, place: keyof typeof THICKNESS): boolean =>
  figuresOf(shoe, fitting).find(({ key }) => key === THICKNESS[place])?.estimated ?? false;

/** A plain measure of each sole. */
export const soleTarget = (soles: readonly Sole[], what: string, value: (sole: Sole) => string, within: string): Target =>
  ({ what, within, values: soles.map((sole) => ({ side: sole.shoe.side, text: value(sole) })) });

