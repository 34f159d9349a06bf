import type { Bench } from './bench.ts';
import { castSteps } from './castSteps.ts';
import { jigSteps } from './jigSteps.ts';
import { stackSteps } from './layerSteps.ts';
import { printSteps } from './printSteps.ts';
import { routerSteps } from './routerSteps.ts';
import type { Step } from './step.ts';

/** How the body under the stiffener comes about, for each way of making. */
export const BODY_STEPS = { 'router block': routerSteps, 'cast in a mould': castSteps, printed: printSteps, jig: jigSteps, 'sheet stack': stackSteps } as const satisfies Record<Bench['way'], (bench: Bench) => Step[]>;
