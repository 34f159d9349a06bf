import type { Side } from '../../src/fitting/words.ts';
import left from './MUN104L.csv?raw';
import right from './MUN104R.csv?raw';
import licence from './LICENSE.txt?raw';
import { readPrint, type Print } from './footprint.ts';

/** Mean plantar pressure of 104 adults, both feet. Source: MUN104, Pataky, Bosch and Rosenbaum, MIT licence, carried along as it asks. */
export const PRINTS: Readonly<Record<Side, Print>> = { left: readPrint(left), right: readPrint(right) };
export const LICENCE = licence;
