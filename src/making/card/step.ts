import type { Side } from '../../fitting/words.ts';
import type { Hazard } from './hazards.ts';
import type { Wait } from './waits.ts';

/** One thing to do at the bench, with room for what happened. */
export interface Step {
  /** Told once on a card. */
  readonly name: string;
  /** How, in plain sentences. */
  readonly how: string;
  /** The shoes it is done on. */
  readonly sides: readonly Side[];
  readonly targets: readonly Target[];
  readonly settings: readonly Setting[];
  readonly wait?: Wait;
  /** What is to be noted with the number of its batch. */
  readonly batches: readonly string[];
  readonly hazards: readonly Hazard[];
}

/** A number to hit, each shoe's own, and how far off it may be; empty where that needs no word. */
export interface Target { readonly what: string; readonly values: readonly SideValue[]; readonly within: string }
/** As it is said: with its unit, and "(est.)" where it rests on an estimate. */
export interface SideValue { readonly side: Side; readonly text: string }

/** What a machine is set to. */
export interface Setting { readonly what: string; readonly value: string }
export const setting = (what: string, value: string): Setting => ({ what, value });

/** What one looks at before cutting or at the end. @property outside that a planned number does not pass, and where more is told of it */
export interface Check { readonly name: string; readonly values: readonly SideValue[]; readonly pass: string; readonly outside?: string }

type StepParts = Pick<Step, 'name' | 'how' | 'sides'> & Partial<Step>;
export const step = (parts: StepParts): Step => ({ targets: [], settings: [], batches: [], hazards: [], ...parts });

/** Steps of one kind of work, under one heading. */
export interface Phase { readonly name: string; readonly steps: readonly Step[] }
