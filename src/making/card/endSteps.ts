import { mm } from '../../checks/say.ts';
import type { Mm } from '../../geometry/units.ts';
import { isTrial, trialFor } from '../wedges/trial.ts';
import { figureTarget, sidesOf, soleTarget, type Bench } from './bench.ts';
import { step, type Step } from './step.ts';
import { WAITS } from './waits.ts';

/** The walk before anything is for good; the outsole is left off until the roll is right. */
export function trialSteps(bench: Bench): Step[] {
  return [step({
    name: 'Walking trial, outsole still off', sides: bench.design.shoes.map(({ side }) => side),
    how: `${wedgeWords(bench)}Last out, insole in for the walk; the last goes back in before the outsole. Both shoes on. Level floor: stand still 30 s, walk 10 m four times, turn. Heel lands softly, no slap, no hill, no falling forward. Change in steps of ${mm(bench.design.fitting.making.wedges?.step ?? USUAL_STEP)} of apex or 2 mm of heel, and write every change down. What was changed goes on the sheet, and the papers are made again.`,
    targets: [figureTarget(bench, 'Apex from the heel', 'apex', '± 3 mm')],
    hazards: ['walking'],
  })];
}

/** How far the apex is moved where no wedges are ordered. Common practice of the trade. */
const USUAL_STEP: Mm = 5;

/** The files of the trial, by name, where wedges are ordered and can be made. */
function wedgeWords({ design: { shoes, fitting: { job: { reference }, making: { wedges } } } }: Bench): string {
  return shoes.map((shoe) => {
    const trial = shoe.kind === 'rocker' && wedges ? trialFor(shoe, wedges) : undefined;
    if (!trial || !isTrial(trial)) return '';
    const stem = `${reference}_${shoe.side}_trial`, numbers = trial.shapes.map(({ variant: { number } }) => number).join(', ');
    return `The ${shoe.side} shoe walks on the base ${stem}-base.stl with wedges ${numbers} under it (${stem}-wedge-${trial.shapes[0]!.variant.number}.stl and on); write the walk into ${stem}-record.pdf. `;
  }).join('');
}

/** None where the whole sole was cast with its outsole. */
export function outsoleSteps(bench: Bench): Step[] {
  const { mould } = bench.design.fitting.making, sides = sidesOf(bench.soles);
  if (bench.soles.length === 0 || bench.way === 'cast in a mould' && mould?.part === 'whole sole') return [];
  return [
    step({
      name: 'Cut the outsole', sides, how: 'From the flat outline, with 3 mm left all round. Measure the sheet: its thickness is part of every radius.',
      targets: [
        soleTarget(bench.soles, 'Outsole, thickness', ({ parts: { shape } }) => mm(shape.outsole), 'as measured: ______ mm'),
        figureTarget(bench, 'Unrolled along the ground face, without trim', 'outsoleLength', '± 1 mm'),
      ],
      batches: ['outsole'],
    }),
    step({ name: 'Roughen, prime and cement outsole and foam', sides, how: 'Both faces, up to the edge. Brush the dust off before the cement goes on.', wait: WAITS.cement, batches: ['outsole cement'], hazards: ['dust', 'solvent'] }),
    step({ name: 'Bend the outsole on', sides, how: 'Last in. Start in the middle at the centre lines, then roll it down to heel and toe. Press.', wait: WAITS.outsole, hazards: ['heat'] }),
  ];
}

export function finishSteps(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles), all = bench.design.shoes.map(({ side }) => side), rockers = bench.soles.filter(({ shoe: { kind } }) => kind === 'rocker');
  return [
    step({
      name: 'Trim and finish the edges', sides, how: 'Trim the outsole flush, rasp, scrape, then paper 120, 240, 400; foam edges end at 240. Edge ink and wax, or flexible paint. Seal carbon that shows.',
      hazards: ['dust', 'spindle', 'carbon', 'solvent'],
    }),
    step({ name: 'Last out, insole in', sides: sidesOf(rockers), how: 'Not before 24 h have gone since the outsole went on. Leather insole back in, of the thickness the heights were worked out with.', targets: [soleTarget(rockers, 'Insole', ({ shoe }) => mm(shoe.last.insole), 'as measured: ______ mm')] }),
    step({ name: 'Look at both shoes together, then let them rest', sides: all, how: 'The list at the end of this card, both shoes on one plate.', wait: WAITS.wear }),
  ];
}

/** Both or none. */
export function handOverSteps(bench: Bench): Step[] {
  return [step({
    name: 'Hand over', sides: bench.design.shoes.map(({ side }) => side),
    how: 'First wear here: beside a rail, then a turn, then one stair with a rail, 20 to 30 min in all; then look at the skin, no mark may stay 15 min. Give the wearing plan and the cautions in writing. Review after 2 weeks and 6 to 8 weeks.',
    hazards: ['walking'],
  })];
}
