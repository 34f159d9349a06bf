import { mm } from '../../checks/say.ts';
import { bushWorks, offsetFor } from '../jig/bush.ts';
import { figureTarget, sidesOf, soleTarget, type Bench, type Sole } from './bench.ts';
import { foamTargets } from './fitSteps.ts';
import { layerSteps } from './layerSteps.ts';
import { setting, step, type Setting, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

/** Built up from sheets and cut along the rails of the jig. */
export function jigSteps(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles);
  return [
    ...layerSteps(bench),
    step({
      name: 'Set the shoe in the jig', sides, how: 'Lasted shoe in the cradle at its pitch, long axis on the centre marks. Rails with their sides as marked: inner rail to the inner side. Strap it down. Check pitch and level across the heel on the plate.',
      targets: [figureTarget(bench, 'Pitch of the sole: seat above tread', 'pitchOfSole', '± 1 mm')],
    }),
    step({
      name: 'Cut the arcs along the rails', sides, how: 'Light passes from heel to toe, both rails carrying all the way. Stop at the joint lines and look for a step before going on.',
      targets: [...belowRunners(bench), ...foamTargets(bench)], settings: runsOnRails(bench), wait: WAITS.profile, hazards: ['dust', 'spindle'],
    }),
  ];
}

/** Soles whose rails are for the guide bush ordered, and those it cannot be used on: their rails are for what touches them. */
function railsOf({ soles, design: { fitting: { making: { jig } } } }: Bench): { readonly guided: readonly Sole[]; readonly touched: readonly Sole[] } {
  const guided = soles.filter(({ parts: { shape } }) => jig !== undefined && bushWorks(shape, jig));
  return { guided, touched: soles.filter((sole) => !guided.includes(sole)) };
}

function runsOnRails(bench: Bench): Setting[] {
  const { jig } = bench.design.fitting.making, { guided, touched } = railsOf(bench), bush = jig?.bush;
  const whose = (of: readonly Sole[]): string => (of.length < bench.soles.length ? `, ${sidesOf(of).join(' and ')}` : '');
  return [
    ...(bush && guided.length ? [setting(`guide bush${whose(guided)}`, `bush ${mm(bush.diameter)}, cutter ${mm(bush.cutter)}: the cut runs ${mm(offsetFor(bush))} off the rail`)] : []),
    ...(touched.length ? [setting(`${jig?.face === 'ground face' ? 'sled' : 'sled, hot wire or sanding block'}${whose(touched)}`, 'runs on the rails themselves')] : []),
  ];
}

/** Rails of the ground face: the outsole comes on after, so the foam is cut lower by it. */
function belowRunners(bench: Bench): Target[] {
  const { touched } = railsOf(bench);
  return bench.design.fitting.making.jig?.face === 'ground face' && touched.length ? [soleTarget(touched, 'Cutter below the runners of the sled', ({ parts: { shape } }) => mm(shape.outsole), 'outsole as measured')] : [];
}
