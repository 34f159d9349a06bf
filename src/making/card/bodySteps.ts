import { cubic, grams, mm } from '../../checks/say.ts';
import { isPressed } from '../mould/groove.ts';
import { mixFor, onScale } from '../mould/mix.ts';
import { BEYOND_PART } from '../../checks/making.ts';
import { figureTarget, foamTarget, sidesOf, soleTarget, type Bench } from './bench.ts';
import { step, type Setting, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

/** How the body under the stiffener comes about, for each way of making. */
export const BODY_STEPS = { 'router block': routerSteps, 'cast in a mould': castSteps, printed: printSteps, jig: jigSteps, 'sheet stack': stackSteps } as const satisfies Record<Bench['way'], (bench: Bench) => Step[]>;

const sidesIn = ({ soles }: Bench): Step['sides'] => sidesOf(soles);
const setting = (what: string, value: string): Setting => ({ what, value });

/** The body by itself, as caliper and rule find it. */
const foamTargets = (bench: Bench): Target[] => [
  foamTarget(bench, 'Foam under the centre of the seat, upright', 'seat', '± 1 mm'), foamTarget(bench, 'Foam under the tread (ball), upright', 'tread', '± 1 mm'),
  foamTarget(bench, 'Foam at the tip, upright', 'tip', '± 1 mm'),
];

const MILLED_FOAM: readonly Setting[] = [
  setting('roughing', 'cutter 10 to 12 mm, one or two flutes; 16,000 to 18,000 rpm; 3 to 5 m/min; 5 to 8 mm deep; 6 mm step'),
  setting('slower', '14,500 rpm; 2 m/min; 2 mm deep (as published for milled insoles of EVA, IJMME-IJENS 16-04)'),
];

function routerSteps(bench: Bench): Step[] {
  const sides = sidesIn(bench), { block } = bench.design.fitting.making, { blocks } = bench, both = block?.faces !== 'upper face';
  const glued = blocks.length ? blocks.filter(({ block: { plan } }) => plan.sheets > 1).map(({ side }) => side) : sides;
  return [
    ...(glued.length === 0 ? [] : [step({
      name: 'Glue up the block', sides: glued, how: `Measure each sheet and write it down. Roughen, prime and cement the faces, press flat.${block ? ` Sheets of ${mm(block.sheet)}, block ${mm(block.length, 0)} by ${mm(block.width, 0)}.` : ''}`,
      wait: WAITS.block, batches: ['foam', 'primer', 'cement'], hazards: ['dust', 'solvent'],
    })]),
    step({
      name: 'Mill the upper face and the outline', sides, how: `By the set-up sheet of the block. Fix it on sacrificial board with film or screws outside the part. Zero on the bed${both ? '; dowel holes first' : ''}. Cutter out ${BEYOND_PART} mm further than the pocket is deep. Mill climbing, air on the cut. Tabs at waist and heel back, never on the arcs.`,
      targets: stickOut(bench, 0), settings: [...MILLED_FOAM, setting('finishing', finishWords(bench))], hazards: ['dust', 'spindle'],
    }),
    ...(both ? [step({
      name: 'Turn over and mill the ground face', sides, how: 'Fill the hollow with offcuts, turn the block over onto its dowels and fix it down anew; check that left is still left. Rough, then mill the arcs, then cut the tabs by hand and clean their stubs.',
      targets: [...stickOut(bench, 1), ...foamTargets(bench)], settings: [setting('finishing', finishWords(bench))], hazards: ['dust', 'spindle'],
    })] : []),
    ...fitAndCement(bench), ...(both ? [] : arcsByHand(bench)),
  ];
}

/** How far the cutter must stand out of its holder in a set-up, as the set-up sheet has it. */
const stickOut = ({ blocks }: Bench, setUp: 0 | 1): Target[] => {
  const values = blocks.flatMap(({ side, block: { setUps } }) => { const one = setUps[setUp]; return one ? [{ side, text: mm(one.stickOut) }] : []; });
  return values.length ? [{ what: 'Cutter out of its holder', values, within: 'at least' }] : [];
};

/** The step between passes that leaves the ridge ordered, as the set-up sheet has it: the closest of all set-ups. */
function finishWords({ blocks, design: { fitting: { making: { block } } } }: Bench): string {
  const [first] = blocks;
  if (!first || !block) return 'ball 12 mm; 16,000 rpm; 3 m/min; 1.5 to 2 mm step';
  const { tool } = first.block.plan, between = Math.min(...blocks.flatMap((one) => one.block.setUps.map(({ stepOver }) => stepOver)));
  return `${tool.end} end of ${mm(tool.diameter)}; 16,000 rpm; 3 m/min; ${mm(Math.floor(between * 100) / 100, 2)} step leaves ridges of ${mm(block.scallop, 2)}`;
}

function castSteps(bench: Bench): Step[] {
  const sides = sidesIn(bench), { mould } = bench.design.fitting.making, whole = mould?.part === 'whole sole', pressed = mould && isPressed(mould.cast.name), printed = mould?.by === 'printed';
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

/** The weights are those of the job sheet: what foams is weighed by what it is once set, which is far less than the mix weighs by volume. */
function fillStep(bench: Bench): Step {
  const { moulds, design: { fitting: { making: { mould: order } } } } = bench, pressed = order && isPressed(order.cast.name), closed = order?.closing === 'clamps' ? 'clamps all round' : 'every bolt with its washers';
  const weighed: Target = {
    what: pressed ? 'Foam to weigh out' : 'Mix to weigh out', within: 'as the job sheet has it; a data sheet or a trial piece goes before',
    values: moulds.map(({ side, order: own, mould: { fill, layout } }) => ({ side, text: `${grams(onScale(mixFor(fill, layout, own)).total)} for ${cubic(fill)}` })),
  };
  const told = { sides: sidesIn(bench), targets: moulds.length ? [weighed] : [] };
  return pressed
    ? step({ ...told, name: 'Weigh and press', how: `Lay the foam in as its maker says, lid on its dowels, then press: ${closed}. What is too much runs into the groove.`, wait: WAITS.pressed, batches: ['foam'], hazards: ['pressing'] })
    : step({ ...told, name: 'Weigh, mix and pour', how: `Lid on its dowels, then ${closed}: foam that rises lifts a lid that only lies on. Weigh, mix, pour at the heel; raise the toe end until both vents run over. Note the temperature: ______ °C.`, wait: WAITS.demould, batches: ['resin', 'hardener'], hazards: ['casting'] });
}

const soleTargets = (bench: Bench): Target[] => [
  figureTarget(bench, 'Thickness under the centre of the seat', 'seatThickness', '± 1 mm'), figureTarget(bench, 'Thickness at the tread (ball)', 'thicknessTread', '± 1 mm'), figureTarget(bench, 'Thickness at the tip', 'thicknessTip', '± 1 mm'),
];

function printSteps(bench: Bench): Step[] {
  const sides = sidesIn(bench), { print, printBed } = bench.design.fitting.making;
  return [
    step({
      name: 'Slice and print', sides, how: `Check in the slicer that left is left and that lengths are in mm. Lay each part as the job sheet advises; the 3MF file has it so. A brim where little of it touches the bed.${printBed ? ` Bed ${mm(printBed.x, 0)} by ${mm(printBed.y, 0)}.` : ''}`,
      settings: [setting('flexible filament, 95A for the body', '20 to 40 mm/s; layers 0.2 to 0.28 mm; 15 to 25 % filling, weight by walls and filling')],
      wait: WAITS.print, batches: ['filament'], hazards: ['hot'],
    }),
    step({
      name: 'Clean and measure the print', sides, how: 'Take brim and supports off with a knife, away from you. Measure length, width and thickness before anything is glued; scale and print again where it is off.',
      targets: [...foamTargets(bench), soleTarget(bench.soles, 'Length of the last', ({ shoe }) => mm(shoe.last.length), '± 1 mm')],
    }),
    ...(print?.split ? [step({
      name: 'Join the two parts', sides, how: `Try the key dry: it must slide. Cement for this filament on both faces, on a flat board; then pins of ${mm(print.pin)}, where the job sheet has room for them.`,
      wait: WAITS.joint, batches: ['cement'], hazards: ['solvent'],
    })] : []),
    ...fitAndCement(bench),
  ];
}

function jigSteps(bench: Bench): Step[] {
  const sides = sidesIn(bench), { jig } = bench.design.fitting.making, bush = jig?.bush;
  return [
    ...layerSteps(bench),
    step({
      name: 'Set the shoe in the jig', sides, how: 'Lasted shoe in the cradle at its pitch, long axis on the centre marks. Rails with their sides as marked: inner rail to the inner side. Strap it down. Check pitch and level across the heel on the plate.',
      targets: [figureTarget(bench, 'Pitch of the sole: seat above tread', 'pitchOfSole', '± 1 mm')],
    }),
    step({
      name: 'Cut the arcs along the rails', sides, how: 'Light passes from heel to toe, both rails carrying all the way. Stop at the joint lines and look for a step before going on.',
      targets: [...belowRunners(bench), ...foamTargets(bench)],
      settings: bush ? [setting('guide bush', `bush ${mm(bush.diameter)}, cutter ${mm(bush.cutter)}: the cut runs ${mm((bush.diameter - bush.cutter) / 2)} off the rail`)] : [setting(jig?.face === 'ground face' ? 'sled' : 'sled, hot wire or sanding block', 'runs on the rails themselves')],
      wait: WAITS.profile, hazards: ['dust', 'spindle'],
    }),
  ];
}

/** Rails of the ground face: the outsole comes on after, so the foam is cut lower by it. */
const belowRunners = ({ soles, design: { fitting: { making: { jig } } } }: Bench): Target[] =>
  jig?.face === 'ground face' && !jig.bush ? [soleTarget(soles, 'Cutter below the runners of the sled', ({ parts: { shape } }) => mm(shape.outsole), 'outsole as measured')] : [];

function stackSteps(bench: Bench): Step[] { return [...layerSteps(bench), ...arcsByHand(bench)]; }

/** Sheets cut to templates and glued up under the shoe. */
function layerSteps(bench: Bench): Step[] {
  const sides = sidesIn(bench), { stack } = bench.design.fitting.making, glue = stack ? ` Each line of glue adds ${mm(stack.glueLine, 2)}.` : ' Each line of glue adds 0.1 to 0.2 mm.';
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
function arcsByHand(bench: Bench): Step[] {
  const sides = sidesIn(bench);
  return [
    step({
      name: 'Grind the walls', sides, how: 'To the outline, at the lean ordered. Wrap the side-wall strip round, or mark the stations from the job sheet, and pen the ground line on both sides.',
      settings: [setting('grinding band', 'grit 24 to 40, then 60 to 80; cool, light pressure')], hazards: ['dust', 'spindle'],
    }),
    step({
      name: 'Grind the arcs to the lines', sides, how: 'From the middle outwards, pen lines on both sides. Hold the gauge or the side template against it again and again; no hollow in the mid arc.',
      targets: [...foamTargets(bench), { what: 'Gap under the profile gauge', values: [], within: '0.3 mm in the mid arc, 0.7 mm at the ends' }],
      settings: [setting('finish band', 'grit 60 to 80')], wait: WAITS.profile, hazards: ['dust', 'spindle'],
    }),
  ];
}

/** A body that was made away from the shoe. */
const fitAndCement = (bench: Bench): Step[] => [
  step({
    name: 'Dry fit', sides: sidesIn(bench), how: 'Chalk the lasted bottom, press the body on, look at the print. Rocks it, the pitch is wrong: do not fill it with cement.',
    targets: [{ what: 'Contact', values: [], within: '80 % of the face or more, no gap over 0.5 mm' }, figureTarget(bench, 'Pitch of the sole: seat above tread', 'pitchOfSole', '± 1 mm')],
  }),
  step({ name: 'Roughen and prime both faces', sides: sidesIn(bench), how: 'Lasted bottom (or stiffener) and body; brush the dust off, prime.', wait: WAITS.primer, batches: ['primer'], hazards: ['dust', 'solvent', 'carbon'] }),
  step({ name: 'Cement the body on', sides: sidesIn(bench), how: 'Both faces. Some shops give two coats, half an hour each.', wait: WAITS.cement, batches: ['cement'], hazards: ['solvent'] }),
  step({ name: 'Lay on and press', sides: sidesIn(bench), how: 'By the centre and ankle lines, seat first, last in. Once down it does not move.', wait: WAITS.joint }),
];
