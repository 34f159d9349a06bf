import { cubic, grams } from '../../checks/say.ts';
import { isPressed } from '../mould/groove.ts';
import { mixFor, onScale } from '../mould/mix.ts';
import { figureTarget, sidesOf, type Bench } from './bench.ts';
import { fitAndCement, foamTargets } from './fitSteps.ts';
import { setting, step, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

/** Cast or pressed in the mould. */
export function castSteps(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles), { mould } = bench.design.fitting.making, whole = mould?.part === 'whole sole', pressed = mould && isPressed(mould.cast.name), printed = mould?.by === 'printed';
  return [
    step({
      name: printed ? 'Print and seal the mould' : 'Mill and seal the mould', sides, how: printed ? 'Print the pieces as they lie, join them on their dowels and bolts, fill the joints. Then wax five times and a release film.' : 'Cut cavity and lid. Seal board with shellac and wax or two coats of epoxy; then wax five times and a release film. Some resins stick to shellac: try a corner.',
      settings: printed ? [] : [setting('modelling board', '12,000 to 18,000 rpm; 2 to 4 m/min; 4 to 6 mm deep'), setting('MDF', '16,000 to 18,000 rpm; 3 to 5 m/min; 4 to 6 mm deep')],
      wait: WAITS.seal, batches: ['sealer', 'release'], hazards: printed ? ['hot', 'solvent'] : ['spindle', 'board', 'solvent', 'epoxy'],
    }),
    fillStep(bench),
    step({
      name: 'Take out and let cure', sides, how: 'Take the lid off first. Lay the casting on its upper face, unloaded, until it is through; only then trim it to the line.',
      targets: whole ? soleTargets(bench) : foamTargets(bench), wait: WAITS.fullCure, hazards: pressed ? [] : ['casting'],
    }),
    ...fitAndCement(bench),
  ];
}

/** The weights are those of the all-figures paper: what foams is weighed by what it is once set, which is far less than the mix weighs by volume. */
function fillStep(bench: Bench): Step {
  const { moulds, design: { fitting: { making: { mould: order } } } } = bench, pressed = order && isPressed(order.cast.name), closed = order?.closing === 'clamps' ? 'clamps all round' : 'every bolt with its washers';
  const weighed: Target = {
    what: pressed ? 'Foam to weigh out' : 'Mix to weigh out', within: 'as the all-figures paper has it; a data sheet or a trial piece goes before',
    values: moulds.map(({ side, order: own, mould: { fill, layout } }) => ({ side, text: `${grams(onScale(mixFor(fill, layout, own)).total)} for ${cubic(fill)}` })),
  };
  const told = { sides: sidesOf(bench.soles), targets: moulds.length ? [weighed] : [] };
  return pressed
    ? step({ ...told, name: 'Weigh and press', how: `Lay the foam in as its maker says, lid on its dowels, then press: ${closed}. What is too much runs into the groove.`, wait: WAITS.pressed, batches: ['foam'], hazards: ['pressing'] })
    : step({ ...told, name: 'Weigh, mix and pour', how: `Lid on its dowels, then ${closed}: foam that rises lifts a lid that only lies on. Weigh, mix, pour at the heel; raise the toe end until both vents run over. Note the temperature: ______ °C.`, wait: WAITS.demould, batches: ['resin', 'hardener'], hazards: ['casting'] });
}

const soleTargets = (bench: Bench): Target[] => [
  figureTarget(bench, 'Thickness under the centre of the seat', 'seatThickness', '± 1 mm'), figureTarget(bench, 'Thickness at the tread (ball)', 'thicknessTread', '± 1 mm'), figureTarget(bench, 'Thickness at the tip', 'thicknessTip', '± 1 mm'),
];
