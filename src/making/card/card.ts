import type { Design } from '../../checks/design.ts';
import type { WayOfMaking } from '../../fitting/words.ts';
import type { Made } from '../made.ts';
import { solesIn, type Bench } from './bench.ts';
import { BODY_STEPS } from './bodySteps.ts';
import { checksAfter, checksBefore } from './checks.ts';
import { finishSteps, handOverSteps, outsoleSteps, trialSteps } from './endSteps.ts';
import { stiffenerSteps } from './stiffenerSteps.ts';
import type { Check, Phase, Step } from './step.ts';
import { unordered, wayFor } from './way.ts';

/** The card that walks with the shoes through the workshop: what is done in which order, and on which day at the earliest. */
export interface JobCard {
  readonly way: WayOfMaking;
  readonly before: readonly Check[];
  readonly phases: readonly DatedPhase[];
  readonly after: readonly Check[];
}
export interface DatedPhase { readonly name: string; readonly steps: readonly DatedStep[] }
/** @property day counted from 1, waits counted; nothing else is waited for */
export interface DatedStep { readonly number: number; readonly day: number; readonly step: Step }

const HEADINGS: Readonly<Record<WayOfMaking, string>> = {
  'router block': 'Body, milled from a block', 'cast in a mould': 'Body, cast in a mould', printed: 'Body, printed', jig: 'Body, built up and cut in the jig', 'sheet stack': 'Body, built up from sheets',
};

/** @param made what of it carries numbers for the bench; a list is empty where nothing of the kind is ordered */
export function jobCardFor(design: Design, { moulds, blocks, plies }: Pick<Made, 'moulds' | 'blocks'> & Partial<Pick<Made, 'plies'>>): JobCard {
  const way = wayFor(design.fitting.making), bench: Bench = { design, way, soles: solesIn(design), moulds, blocks, plies };
  const phases: readonly Phase[] = [
    { name: 'Stiffener', steps: stiffenerSteps(bench) }, { name: HEADINGS[way], steps: bench.soles.length ? bodySteps(bench) : [] },
    { name: 'Trial', steps: trialSteps(bench) }, { name: 'Outsole', steps: outsoleSteps(bench) }, { name: 'Finish', steps: finishSteps(bench) }, { name: 'Hand-over', steps: handOverSteps(bench) },
  ];
  return { way, before: checksBefore(bench), phases: dated(phases.filter(({ steps }) => steps.length > 0)), after: checksAfter(bench) };
}

/** The first step tells where nothing is ordered for the way: its words speak of files that were not made. */
function bodySteps(bench: Bench): Step[] {
  const missing = unordered(bench.design.fitting.making), [first, ...rest] = BODY_STEPS[bench.way](bench);
  return missing === undefined || !first ? BODY_STEPS[bench.way](bench) : [{ ...first, how: `NOT ORDERED YET: no file of this job was made for these steps. Order it on the sheet (making.${missing}) and make the files again before you begin. ${first.how}` }, ...rest];
}

function dated(phases: readonly Phase[]): DatedPhase[] {
  let number = 0, day = 1;
  return phases.map(({ name, steps }) => ({
    name, steps: steps.map((step): DatedStep => {
      const one = { number: ++number, day, step };
      day += step.wait?.nights ?? 0;
      return one;
    }),
  }));
}
