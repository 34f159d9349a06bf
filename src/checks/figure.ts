import type { Mm } from '../geometry/units.ts';
import type { FigureKey } from './restsOn.ts';
import { rounded } from './say.ts';

export type FigureUnit = 'mm' | 'deg' | 'g' | '%' | 'cm³' | 'times' | 'J' | '';

/** One number of a shoe as screen, paper and files show it: value in the unit named, shown with so many digits. */
export interface Figure {
  readonly key: FigureKey;
  readonly label: string;
  readonly value: number;
  readonly unit: FigureUnit;
  readonly digits: number;
  /** True when a measure it rests on was estimated or left to a default. */
  readonly estimated: boolean;
  /** x of the place from the heel, when it is one, mm. */
  readonly at?: Mm;
  /** Beyond this it is only said to be more, for what it was reckoned by does not hold there. */
  readonly most?: number;
  /** Roll angle at which it is taken, toe down positive, degrees; none at rest. */
  readonly rolled?: number;
}

const UNIT_SIGN: Record<FigureUnit, string> = { mm: ' mm', deg: '°', g: ' g', '%': ' %', 'cm³': ' cm³', times: ' times', J: ' J', '': '' };

/** "35.1 mm", "3.9°", "6.3 mm at 3.2°", "more than 30°"; " (est.)" behind what rests on an estimate. */
export const inWords = ({ value, unit, digits, estimated, rolled, most = Infinity }: Figure): string =>
  `${value > most ? `more than ${rounded(most, 0)}` : rounded(value, digits)}${UNIT_SIGN[unit]}${rolled === undefined ? '' : ` at ${rounded(rolled, 1)}°`}${estimated ? ' (est.)' : ''}`;

/** A figure before it is known whether it rests on an estimate. */
export type Plain = Omit<Figure, 'estimated'>;

const DIGITS: Record<FigureUnit, number> = { mm: 1, deg: 1, g: 0, '%': 1, 'cm³': 1, times: 2, J: 1, '': 2 };

export function plain(key: FigureKey, label: string, value: number, unit: FigureUnit, at?: Mm): Plain {
  const figure = { key, label, value, unit, digits: DIGITS[unit] };
  return at === undefined ? figure : { ...figure, at };
}
