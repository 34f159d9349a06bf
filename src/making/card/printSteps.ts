import { mm } from '../../checks/say.ts';
import { sidesOf, soleTarget, type Bench } from './bench.ts';
import { fitAndCement, foamTargets } from './fitSteps.ts';
import { setting, step, type Step } from './step.ts';
import { WAITS } from './waits.ts';

/** Printed, in one or in two parts. */
export function printSteps(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles), { print, printBed } = bench.design.fitting.making;
  return [
    step({
      name: 'Slice and print', sides, how: `Check in the slicer that left is left and that lengths are in mm. Lay each part as the all-figures paper advises; the 3MF file has it so. A brim where little of it touches the bed.${printBed ? ` Bed ${mm(printBed.x, 0)} by ${mm(printBed.y, 0)}.` : ''}`,
      settings: [setting('flexible filament, 95A for the body', '20 to 40 mm/s; layers 0.2 to 0.28 mm; 15 to 25 % filling, weight by walls and filling')],
      wait: WAITS.print, batches: ['filament'], hazards: ['hot'],
    }),
    step({
      name: 'Clean and measure the print', sides, how: 'Take brim and supports off with a knife, away from you. Measure length, width and thickness before anything is glued; scale and print again where it is off.',
      targets: [...foamTargets(bench), soleTarget(bench.soles, 'Length of the last', ({ shoe }) => mm(shoe.last.length), '± 1 mm')],
    }),
    ...(print?.split ? [step({
      name: 'Join the two parts', sides, how: `Try the key dry: it must slide. Cement for this filament on both faces, on a flat board; then pins of ${mm(print.pin)}, where the all-figures paper says there is room for them.`,
      wait: WAITS.joint, batches: ['cement'], hazards: ['solvent'],
    })] : []),
    ...fitAndCement(bench),
  ];
}
