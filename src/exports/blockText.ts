import { deg, fromHeel, mm, rounded } from '../checks/say.ts';
import { inFull } from '../checks/finding.ts';
import type { Design } from '../checks/design.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { BEYOND_PART } from '../checks/making.ts';
import { ballScallop } from '../making/block/stepOver.ts';
import type { ShoeBlock } from '../making/made.ts';
import { framed, heading, introduction, paragraph, table, type Block } from './flow.ts';
import { bold } from './figureSections.ts';

/** Feed over a face in foam with a finishing cutter, mm a minute. Common practice of the trade. */
const FEED: Mm = 3000;

/** The written half of the set-up sheet. */
export function blockText(design: Design, shoe: ShoeBlock, width: Mm): Block[] {
  const { side, block: { plan, setUps } } = shoe, both = setUps.length > 1;
  return [
    framed([`${side.toUpperCase()} SHOE. ${both ? 'Both faces: the upper face first, then turned over about the middle line.' : 'Upper face only: the ground face is cut by gauge when the foam is on the shoe.'}`], width),
    heading('Block and zero'), ...datumText(shoe, width), ...blockTable(shoe, width), ...placesTable(shoe, width),
    heading('Cutter'), ...setUpTable(shoe, width), ...speeds(width), ...troubles(design, side, plan.order.faces, width),
    heading('Cautions'), ...CAUTIONS.map((caution) => paragraph(caution, width)),
    heading('Order of work'), ...onOnePage(steps(shoe).map((step, i) => paragraph(`${i + 1}. ${step}`, width))),
  ];
}

/** What is worked through at the machine is not turned over in the middle. */
const onOnePage = (blocks: readonly Block[]): Block[] => blocks.map((block, i) => (i + 1 < blocks.length ? { ...block, staysWithNext: true } : block));

function datumText({ side, block: { plan: { lie, height }, setUps } }: ShoeBlock, width: Mm): Block[] {
  const up = lie.shift[2], to = `${up < 0 ? 'less' : 'plus'} ${mm(Math.abs(up))}`;
  const over = setUps.length > 1 ? ` Turned over, the same zeros hold: the heel end stays the heel end, and Z is ${mm(height)} less what it was.` : '';
  return [
    paragraph(`X0 is the heel end of the block, towards the toe positive. Y0 is the middle line of the block, Z0 the bed under it: the top of the board the block lies on. Solids and drawings of the block have this zero, in mm, and are those of the ${side} shoe: nothing is to be mirrored.${over}`, width),
    paragraph(`The part stands upright in the block, as the shoe stands at rest: heights are those of the job sheet ${to}. It is not tipped to save foam, for every wall would be undercut by the tip.${lie.turn === 0 ? '' : ` Its long axis is turned ${deg(Math.abs(inDegrees(lie.turn)))} from the block's long side.`}`, width),
  ];
}

function blockTable({ block: { plan } }: ShoeBlock, width: Mm): Block[] {
  const { length, width: wide, height, sheets, order, glueLines, low, high, pocketWidth } = plan, rows: readonly (readonly [string, string])[] = [
    ['Block', `${mm(length)} × ${mm(wide)} × ${mm(height)}, ${sheets} sheet${sheets === 1 ? '' : 's'} of ${mm(order.sheet)}`],
    ['Lines of glue over the bed', glueLines.length ? `${glueLines.map((z) => rounded(z, 1)).join(', ')} mm; each adds 0.1 to 0.2 mm: measure the block and thin it to its height` : 'none'],
    ['Part over the bed', `${mm(low)} to ${mm(high)}`], ['Pocket round the part', `${mm(pocketWidth)} wide`],
  ];
  return table([{ title: '', width: 52 }, { title: '', width: width - 52 }], rows.map(([what, value]) => ({ cells: [bold(what), value] })));
}

/** Dowels and tabs, as set-up 1 sees them; y is mirrored for a right shoe. */
function placesTable({ side, block: { plan: { dowels, tabs: { tabs } }, setUps } }: ShoeBlock, width: Mm): Block[] {
  const sign = side === 'left' ? 1 : -1, places = [
    ...dowels.filter(({ at: [, y] }) => y >= 0).map(({ at: [x, y], diameter }) =>
      [y > 0 ? 'Two dowels' : 'Dowel', rounded(x, 1), `${y > 0 ? '±' : ''}${rounded(y, 1)}`, 'through', `${mm(diameter)}, 10 mm into the board`]),
    ...tabs.map(({ place, side: at, at: [x, y], from, to, width: wide }) => [`Tab, ${place}, ${at} side`, rounded(x, 1), rounded(y * sign, 1), `${rounded(from, 1)} to ${rounded(to, 1)}`, `${mm(wide)} wide`]),
  ];
  if (places.length === 0) return [];
  return [
    introduction(`Places${setUps.length > 1 ? ' in set-up 1; in set-up 2 y changes its sign' : ''}, mm.`, width),
    ...table([{ title: '', width: 52 }, { title: 'X', width: 20, right: true }, { title: 'Y', width: 20, right: true }, { title: 'Z', width: 30, right: true }, { title: '', width: width - 122 }], places.map((cells) => ({ cells }))),
  ];
}

function setUpTable({ block: { plan: { tool, order }, setUps, usualTool } }: ShoeBlock, width: Mm): Block[] {
  const named = `${tool.end === 'ball' ? 'Ball end' : 'Flat end'} of ${mm(tool.diameter)} that reaches ${mm(tool.reach)}${usualTool ? ', the usual one: the sheet names none (making.tool)' : ''}.`;
  const rule = tool.end === 'ball'
    ? `Step-over for ridges of ${mm(order.scallop, 2)}, measured square to the face, with passes along the block; a slope across the passes is allowed for.`
    : `A flat end leaves ridges where it climbs and stairs where the face slopes across; the step-over keeps both within ${mm(order.scallop, 2)}. Passes run along the block.`;
  return [
    introduction(`${named} ${rule} It must stick out ${BEYOND_PART} mm more than the pocket is deep.`, width),
    ...table(
      [{ title: 'Set-up', width: 34 }, { title: 'Pocket deep', width: 26, right: true }, { title: 'Floor over bed', width: 30, right: true }, { title: 'Stick-out, least', width: 30, right: true }, { title: 'Step-over', width: 22, right: true }, { title: `Face at ${FEED / 1000} m/min`, width: width - 142, right: true }],
      setUps.map(({ face, depth, floor, stickOut, stepOver, passes }, i) => ({ cells: [bold(`${i + 1}: ${face}`), mm(depth), floor > 0 ? mm(floor) : 'through', mm(stickOut), mm(Math.floor(stepOver * 100) / 100, 2), `about ${Math.max(1, Math.round(passes / FEED))} min`] })),
    ),
    ...(tool.end === 'ball' ? [paragraph(`On a level face a ball of ${mm(tool.diameter)} leaves ${[1, 2, 3].map((step) => `${mm(ballScallop(tool.diameter, step), 2)} at a step of ${step} mm`).join(', ')}.`, width)] : []),
  ];
}

function speeds(width: Mm): Block[] {
  return [
    introduction('Usual in EVA of 45 to 60 Shore A (common practice); the figures of your machine, cutter and material come first.', width),
    ...table([{ title: '', width: 26 }, { title: 'Cutter', width: 52 }, { title: 'Turns a minute', width: 34, right: true }, { title: 'Feed', width: 30, right: true }, { title: 'Depth and step', width: width - 142, right: true }], [
      { cells: [bold('Rough'), '10 to 12 mm, one or two flutes', '16,000 to 18,000', '3 to 5 m/min', '5 to 8 mm, 6 mm'] },
      { cells: [bold('Finish'), 'the one above', '16,000', '3 m/min', 'as above'] },
    ]),
  ];
}

function steps({ side, block: { plan, setUps } }: ShoeBlock): string[] {
  const { sheets, order, length, width, height, low, tabs: { tabs, hold } } = plan, both = setUps.length > 1, [first, second] = setUps;
  const tabsStay = tabs.length ? `; leave the tab${tabs.length === 1 ? '' : 's'} standing` : '';
  return [
    `${sheets > 1 ? `Glue ${sheets} sheets of ${mm(order.sheet)}; let the glue dry as its maker says. ` : ''}Saw the block to ${mm(length)} × ${mm(width)}, thin it to ${mm(height)}. Write HEEL, ${side.toUpperCase()} and UP on it; draw the middle line.`,
    'Screw a level board to the bed and face it with the cutter. Stick the block on with double-sided film or spray adhesive, or screw it down through the frame outside the pocket; foam bows and leaks, so vacuum alone does not hold it.',
    'Set the zeros. Compare the solid on the screen with the drawing: outer side and toe must lie where the drawing has them.',
    ...(both ? ['Drill the dowel holes through the block and 10 mm into the board, before anything else is cut.'] : []),
    `Set-up 1: rough with 1 mm left, finish the upper face, then the walls down to the floor of the pocket (${first!.floor > 0 ? `${mm(first!.floor)} over the bed` : 'through'})${tabsStay}. Climb milling, air on the cutter.`,
    ...(second ? [
      `${hold ? 'Fill the hollow over the part with offcuts, most of all over the toe, so that it does not sink when it lies under. ' : ''}Turn the block over about its middle line, heel end to heel end, onto the dowels. They stand uneven, so it goes on one way only. Dowels only place it: stick or screw it down anew.`,
      ...(hold ? [`Set-up 2: rough with 1 mm left, finish the ground face, then the walls down to ${mm(second.floor)} over the bed${tabsStay}.`] : heldFromBelow(first!.depth, second.floor, tabsStay)),
      `${tabs.length ? 'Cut the tabs with a knife and grind them flush. ' : ''}Hold the arcs against their gauge or the stations in the all-figures paper before glueing.`,
    ] : [
      `Cut the tabs. Under the lowest place of the ground face ${mm(low)} of foam is left: glue the part to the shoe, then grind the arcs down by gauge and stations.`,
    ]),
  ];
}

/** Left of the foam between the two pockets until all else is cut. Common practice of the trade. */
const SKIN: Mm = 1;

/** Set-up 2 where too few tabs stand. @param pocket how deep the pocket of set-up 1 is, so how far over the new bed its floor lies  @param floor of the pocket of set-up 2 */
function heldFromBelow(pocket: Mm, floor: Mm, tabsStay: string): string[] {
  return [
    `${tabsStay ? 'Too few tabs stand' : 'No tabs stand'}, so the part is held from below: lay offcuts under it until it lies full, most of all under the toe, and stick board, offcuts and part together with double-sided film over as much of its upper face as can be. Try by hand that it does not lift.`,
    `Set-up 2: rough with 1 mm left, finish the ground face, then the walls, but only down to ${mm(pocket + SKIN)} over the bed: there ${mm(SKIN)} of foam over the pocket of set-up 1 is left uncut as a skin all round${tabsStay}. The solid and the drawing show it cut away.`,
    `Last of all cut the skin with a knife along the part. ${floor < pocket ? `What it leaves on walls under it, down to ${mm(floor)} over the bed, cut in light passes of 0.5 mm while the film holds, or grind it off.` : 'Grind what is left of it off the walls.'} Draw the film off slowly, from the heel.`,
  ];
}

/** What the checks say of this block, so that it stands where the cutter is chosen. */
function troubles({ findings }: Design, side: ShoeBlock['side'], faces: string, width: Mm): Block[] {
  const own = findings.filter((finding) => /^(BLOCK|TOOL)_/.test(finding.code) && (finding.side ?? side) === side);
  const all = faces === 'both faces' ? 'both faces, walls and outline are reached' : 'upper face, walls and outline are reached';
  return [heading('Cutter against the part'), ...(own.length ? own.map((finding) => paragraph(`${finding.where}${finding.at === undefined ? '' : `, ${fromHeel(finding.at)}`}: ${inFull(finding)}`, width)) : [paragraph(`Held against the real faces: ${all}, and the cutter is long enough.`, width)])];
}

const CAUTIONS = [
  'Extraction at the cutter and a dust mask: foam dust harms the lungs. Overheated EVA melts and gives off fumes: sharp cutter, no dwelling, air on it.',
  'Eye and ear protection; no gloves, loose sleeves or long hair near a turning spindle; hands off until it stands.',
  'Hold-down is tried by hand before each set-up. The first run is made in the air over the block, hand at the emergency stop.',
  'Local codes and the rules of the machine\'s maker come first.',
] as const;
