import { figureTarget, foamTarget, sidesOf, type Bench } from './bench.ts';
import { step, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

/** The body by itself, as caliper and rule find it. */
export const foamTargets = (bench: Bench): Target[] => [
  foamTarget(bench, 'Foam under the centre of the seat, upright', 'seat', '± 1 mm'), foamTarget(bench, 'Foam under the tread (ball), upright', 'tread', '± 1 mm'),
  foamTarget(bench, 'Foam at the tip, upright', 'tip', '± 1 mm'),
];

/** A body that was made away from the shoe. */
export const fitAndCement = (bench: Bench): Step[] => [
  step({
    name: 'Dry fit', sides: sidesOf(bench.soles), how: 'Chalk the lasted bottom, press the body on, look at the print. Rocks it, the pitch is wrong: do not fill it with cement.',
    targets: [{ what: 'Contact', values: [], within: '80 % of the face or more, no gap over 0.5 mm' }, figureTarget(bench, 'Pitch of the sole: seat above tread', 'pitchOfSole', '± 1 mm')],
  }),
  step({ name: 'Roughen and prime both faces', sides: sidesOf(bench.soles), how: 'Lasted bottom (or stiffener) and body; brush the dust off, prime.', wait: WAITS.primer, batches: ['primer'], hazards: ['dust', 'solvent', 'carbon'] }),
  step({ name: 'Cement the body on', sides: sidesOf(bench.soles), how: 'Both faces. Some shops give two coats, half an hour each.', wait: WAITS.cement, batches: ['cement'], hazards: ['solvent'] }),
  step({ name: 'Lay on and press', sides: sidesOf(bench.soles), how: 'By the centre and ankle lines, seat first, last in. Once down it does not move.', wait: WAITS.joint }),
];
