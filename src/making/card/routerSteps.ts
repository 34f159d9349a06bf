import { BEYOND_PART } from '../../checks/making.ts';
import { mm } from '../../checks/say.ts';
import { sidesOf, type Bench } from './bench.ts';
import { fitAndCement, foamTargets } from './fitSteps.ts';
import { arcsByHand } from './layerSteps.ts';
import { setting, step, type Setting, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

const MILLED_FOAM: readonly Setting[] = [
  setting('roughing', 'cutter 10 to 12 mm, one or two flutes; 16,000 to 18,000 rpm; 3 to 5 m/min; 5 to 8 mm deep; 6 mm step'),
  setting('slower', '14,500 rpm; 2 m/min; 2 mm deep (as published for milled insoles of EVA, IJMME-IJENS 16-04)'),
];

/** Milled from a block, in one set-up or two. The set-up sheet says the same and more: nothing here may say otherwise. */
export function routerSteps(bench: Bench): Step[] {
  const sides = sidesOf(bench.soles), { block } = bench.design.fitting.making, { blocks } = bench, both = block?.faces !== 'upper face';
  const glued = blocks.length ? blocks.filter(({ block: { plan } }) => plan.sheets > 1).map(({ side }) => side) : sides;
  return [
    ...(glued.length === 0 ? [] : [step({
      name: 'Glue up the block', sides: glued, how: `Measure each sheet and write it down. Roughen, prime and cement the faces, press flat.${block ? ` Sheets of ${mm(block.sheet)}.` : ''}`,
      targets: blockSizes(bench), wait: WAITS.block, batches: ['foam', 'primer', 'cement'], hazards: ['dust', 'solvent'],
    })]),
    step({
      name: 'Mill the upper face and the outline', sides, how: `By the set-up sheet of the block. Fix it on sacrificial board with film or screws outside the part. Zero on the bed${both ? '; dowel holes first' : ''}. Cutter out ${BEYOND_PART} mm further than the pocket is deep. Mill climbing, air on the cut. Leave the tabs standing where the set-up sheet has them.`,
      targets: stickOut(bench, 0), settings: [...MILLED_FOAM, setting('finishing', finishWords(bench))], hazards: ['dust', 'spindle'],
    }),
    ...(both ? [step({
      name: 'Turn over and mill the ground face', sides, how: 'Turn the block over onto its dowels and fix it down anew, the part held as the set-up sheet has it; check that left is still left. Rough, then mill the arcs, then cut by hand what still holds the part and clean the stubs.',
      targets: [...stickOut(bench, 1), ...foamTargets(bench)], settings: [setting('finishing', finishWords(bench))], hazards: ['dust', 'spindle'],
    })] : []),
    ...fitAndCement(bench), ...(both ? [] : arcsByHand(bench)),
  ];
}

/** The blocks as they are planned, which may be larger than ordered. */
const blockSizes = ({ blocks }: Bench): Target[] => {
  const values = blocks.filter(({ block: { plan } }) => plan.sheets > 1).map(({ side, block: { plan: { sheets, length, width, height } } }) => ({ side, text: `${sheets} sheets, ${mm(length, 0)} by ${mm(width, 0)} by ${mm(height)}` }));
  return values.length ? [{ what: 'Block', values, within: 'as on the set-up sheet' }] : [];
};

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
