import { mm } from '../../checks/say.ts';
import { foamTarget, sidesOf, type Bench } from './bench.ts';
import { foamTargets } from './fitSteps.ts';
import { setting, step, type Step } from './step.ts';
import { WAITS } from './waits.ts';

/** Built up from sheets and ground by hand. */
export const stackSteps = (bench: Bench): Step[] => [...layerSteps(bench), ...arcsByHand(bench)];

/** Sheets cut to templates and glued up under the shoe. */
export function layerSteps(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles), { stack } = bench.design.fitting.making, glue = stack ? ` Each line of glue adds ${mm(stack.glueLine, 2)}.` : ' Each line of glue adds 0.1 to 0.2 mm.';
  return [
    step({
      name: 'Measure and cut the layers', sides, how: `Measure each sheet; labels are up to 0.5 mm off.${glue} ${stack ? `Cut the layers to the outlines of the cutting list: ${mm(stack.trim)} all round are in them.` : 'Prove the 100 mm line of the template and cut the layers with 2 to 3 mm left all round.'} Mark the next layer's edge on each.`,
      targets: [foamTarget(bench, 'All layers together under the seat, glue counted', 'seat', 'at least; what is more is ground off')], batches: ['foam'],
    }),
    step({ name: 'Roughen and prime the layers', sides, how: 'Roughen every face that is glued, brush the dust off, prime.', wait: WAITS.primer, batches: ['primer'], hazards: ['dust', 'solvent'] }),
    step({ name: 'Cement the layers', sides, how: 'Cement both faces. Some shops give two coats, half an hour each.', wait: WAITS.cement, batches: ['cement'], hazards: ['solvent'] }),
    step({ name: 'Stack and press', sides, how: 'Lay layer on layer by the centre and ankle lines, hammer from the middle outwards, press.', wait: WAITS.joint }),
  ];
}

/** The arcs ground by hand to lines and gauge. */
export function arcsByHand(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles);
  return [
    step({
      name: 'Grind the walls', sides, how: 'To the outline, at the lean ordered. Wrap the side-wall strip round, or mark the stations from the all-figures paper, and pen the ground line on both sides.',
      settings: [setting('grinding band', 'grit 24 to 40, then 60 to 80; cool, light pressure')], hazards: ['dust', 'spindle'],
    }),
    step({
      name: 'Grind the arcs to the lines', sides, how: 'From the middle outwards, pen lines on both sides. Hold the gauge or the side template against it again and again; no hollow in the mid arc.',
      targets: [...foamTargets(bench), { what: 'Gap under the profile gauge', values: [], within: '0.3 mm in the mid arc, 0.7 mm at the ends' }],
      settings: [setting('finish band', 'grit 60 to 80')], wait: WAITS.profile, hazards: ['dust', 'spindle'],
    }),
  ];
}
