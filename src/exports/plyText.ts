import { grams, mm, rounded, sentences } from '../checks/say.ts';
import type { Design } from '../checks/design.ts';
import { inFull } from '../checks/finding.ts';
import { pathLength } from '../geometry/path.ts';
import { windowRound } from '../geometry/clip.ts';
import { WAITS } from '../making/card/waits.ts';
import { BEYOND, isPly } from '../making/plies/amounts.ts';
import type { ClothCut } from '../making/plies/cloths.ts';
import { PLIES_WHERE } from '../making/plies/findings.ts';
import { formingWords, warpWords } from '../making/plies/formed.ts';
import type { Layer } from '../making/plies/layers.ts';
import { FILL_RIM, rimRoundPlies } from '../making/plies.ts';
import { directionWords } from '../stiffener/fibres.ts';
import { stackedOf } from '../stiffener/layers.ts';
import type { Plies } from '../making/plies/plies.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { space, type Block, type Row } from './flow.ts';
import { flowIn, type FlowIn } from './flowIn.ts';
import { WIDTH } from './textPaper.ts';
import { sectionBlock } from './plySection.ts';

const percent = (share: number): string => `${rounded(share * 100, 0)} %`;
const tenth = (value: number): string => grams(value, 1);

/** What stands on the paper that goes with the plies of one shoe to the bench, without its bench test. */
export function plyText(design: Design, { cloths }: Plies, one: ShoePlies): Block[] {
  const flow = flowIn(design.fitting.units);
  return [
    flow.heading(`Plies of the stiffener: ${one.side} shoe of ${design.fitting.job.reference}`),
    flow.framed(CAUTIONS, WIDTH), space(1), ...troubles(design, one, flow),
    ...stackSection(one, flow), ...clothSection(one, cloths, flow), ...dangerSection(flow), ...mixSection(one, flow), ...laySection(one, flow), ...cureSection(flow),
  ];
}

const CAUTIONS = [
  'Epoxy: gloves and sleeves, nothing on the skin; it sensitises for good. Carbon and glass dust: wet, mask P2 or P3, goggles.',
  'No hot air, no hot cement near the pack before its post-cure is done: it softens and sags.',
];

/** What stops and what warns about this stiffener; a stop that was taken says what was stopped and who took it. */
function troubles({ findings }: Design, { side }: ShoePlies, flow: FlowIn): Block[] {
  const own = findings.filter((one) => (one.where === 'stiffener' || one.where === PLIES_WHERE) && one.side === side && one.severity !== 'note');
  if (own.length === 0) return [flow.paragraph(`Nothing stops and nothing warns of this stiffener. ${LEFT_OUT}`, WIDTH)];
  return [
    flow.heading('What stops and what warns'),
    ...flow.table([{ title: '', width: 14 }, { title: '', width: WIDTH - 14 }], own.map((one) => ({ cells: [
      { text: one.severity === 'stop' ? 'STOP' : 'warns', bold: true }, one.overriddenBy ? { text: sentences(one.text, `Taken by ${one.overriddenBy.by}: ${one.overriddenBy.reason}`), bold: true } : inFull(one),
    ] }))),
    flow.paragraph(LEFT_OUT, WIDTH),
  ];
}

const LEFT_OUT = 'Heat and moisture are left out of the reckoning: a hot car, a radiator or a wet core make any pack softer and weaker than is told here.';

function stackSection(one: ShoePlies, flow: FlowIn): Block[] {
  const { layers, amounts, side } = one;
  const rows = layers.map((layer): Row => ({ cells: rowOf(one, layer, flow) }));
  return [
    flow.heading('The stack, in the order of laying'),
    flow.introduction(`The shoe lies on its back: number 1 comes against the foot's side, the last one looks to the floor. No two edges lie nearer than ${mm(one.stagger)} to each other: the outer plies reach furthest and close over the inner ones; ends of strips keep off each other.`, WIDTH),
    sectionBlock(one, flow.said),
    ...flow.table([
      { title: 'No.', width: 10 }, { title: 'What', width: 44 }, { title: `Fibres, ${side} shoe`, width: 28 }, { title: 'Size', width: 32, right: true }, { title: 'Area', width: 18, right: true },
      { title: 'Set in', width: 20, right: true }, { title: 'Cloth', width: 17, right: true }, { title: 'Resin', width: 17, right: true },
    ], rows),
    flow.paragraph(sentences(
      `Fibres as laid on the ${side} shoe, seen from above; plus leans to the wearer's left as the toe points away`, `Set in: how far the edge stays inside the feather line${one.pack.stiffener.edges ? ', with what is turned up of it' : ''}`, 'Cloth and resin are those that stay in the ply',
      amounts.unknown.length > 0 ? `Of ${amounts.unknown.map((n) => `ply ${n}`).join(', ')} only the laid ply was measured: weigh its cloth, and mix for it besides` : '',
      `When it is laid under the sole, ${rimRoundPlies(one.shoe.shape)}`, FILL_RIM,
    ), WIDTH),
  ];
}

function rowOf({ side, amounts }: ShoePlies, layer: Layer, { area, said }: FlowIn): string[] {
  const { least, most } = windowRound([layer.outline]), size = said(`${Math.ceil(most[0] - least[0])} × ${Math.ceil(most[1] - least[1])} mm`), own = amounts.plies.find(({ number }) => number === layer.number);
  const grammes = (value: number | undefined): string => (value === undefined ? '–' : tenth(value));
  return layer.kind === 'ply'
    ? [String(layer.number), layer.ply.name, directionWords(layer, side), size, area(layer.area), mm(layer.inset), grammes(own?.cloth), grammes(own?.resin)]
    : [String(layer.number), [layer.core.name, stackedOf(layer.core, mm), `up to ${mm(layer.thickest)}`].filter((part) => part !== '').join(', '), '', size, area(layer.area), mm(layer.inset), '', amounts.coat > 0 ? grammes(amounts.coat) : ''];
}

function clothSection({ amounts, layers, side }: ShoePlies, cloths: readonly ClothCut[], flow: FlowIn): Block[] {
  const { cover, core } = amounts, used = cloths.filter(({ name }) => layers.some((layer) => layer.kind === 'ply' && layer.ply.name === name)), edge = layers.filter(isPly).reduce((sum, { outline }) => sum + pathLength(outline), 0);
  return [
    flow.heading('What is taken from the store'),
    flow.introduction('Cloth is laid out for all plies of the job together, fibres along or across the roll; lengths are cut off square. It weighs more than what lies in the plies. Waste is what is neither ply nor a strip that stays whole.', WIDTH),
    ...flow.table([
      { title: 'Cloth', width: 50 }, { title: 'Roll', width: 24, right: true }, { title: 'Length off it', width: 26, right: true }, { title: 'Cloth to cut', width: 24, right: true }, { title: 'Strip left', width: 22, right: true }, { title: 'Waste', width: 16, right: true }, { title: 'Drawing', width: 24, right: true },
    ], used.map(({ name, areal, width, length, beside, waste, number, left }) => ({ cells: [
      left.length > 0 ? `${name} (not ${left.join(', ')}: the roll is too narrow)` : name, mm(width, 0), length > 0 ? flow.said(flow.long(length)) : '–', areal === undefined ? '–' : grams((length * (width - beside) * areal) / 1e6), mm(beside, 0), percent(waste), `cloth ${number}`,
    ] }))),
    flow.paragraph(sentences(
      `Peel ply: two pieces of ${Math.ceil(cover.length)} × ${mm(Math.ceil(cover.width), 0)} (${flow.area(2 * cover.area)}); release film: two of the same; pad: one. Each reaches ${mm(BEYOND, 0)} beyond the largest ply`,
      core ? `Core: ${flow.area(core.area)}, about ${grams(core.weight)}` : '', `Mark every piece ${side.toUpperCase()} and with its number while its template lies on it`, `Edges to cut: ${flow.long(edge)}; tape along them before the shears keeps the cloth together`,
    ), WIDTH),
  ];
}

const onOnePage = (blocks: readonly Block[]): Block[] => blocks.map((block, i) => (i < blocks.length - 1 ? { ...block, staysWithNext: true } : block));

function mixSection({ amounts, order: { spare, hardener: to100 } }: ShoePlies, flow: FlowIn): Block[] {
  const { cloth, inPlies, coat, glue, mixed, resin, hardener, weight, band: [least, most], core } = amounts;
  return [
    flow.heading('Weighed out, for this shoe'),
    ...onOnePage(flow.table([{ title: '', width: 86 }, { title: 'Grams', width: 24, right: true }, { title: '', width: WIDTH - 110 }], [
      { cells: ['Cloth in the plies, as cut by the templates', tenth(cloth), 'weigh what you cut: it should come near'] },
      ...(core ? [{ cells: ['Core, cut and dry, before its coat', tenth(core.weight), 'weigh it: a tenth more or less is usual'] }] : []), ...(glue > 0 ? [{ cells: ['Glue between the sheets of the core', tenth(glue), 'wood glue or epoxy, mixed by itself'] }] : []),
      { cells: ['Resin and hardener that stay in the plies', tenth(inPlies), ''] }, ...(coat > 0 ? [{ cells: ["and what the core's two faces drink", tenth(coat), ''] }] : []),
      { cells: [{ text: `Mixed, ${percent(spare)} more for brush, cup and peel ply`, bold: true }, { text: tenth(mixed), bold: true }, '10 to 20 % more is usual'] },
      { cells: ['of that resin', tenth(resin), ''] }, { cells: ['of that hardener', tenth(hardener), `${rounded(to100, 0)} g to 100 g of resin, by weight`] },
      { cells: [{ text: 'The whole pack, cured and trimmed', bold: true }, { text: tenth(weight), bold: true }, `good from ${rounded(least, 0)} to ${grams(most)}`] },
    ])),
    flow.paragraph(sentences(
      core ? 'Take the core you weighed off it: what is left is cloth and resin' : '', 'Above the band it is too wet: heavy, and no stiffer for it than the test says. Below it there are dry spots, or the core is lighter than reckoned: tap it all over',
      'The maker of the resin decides how much hardener it takes: read the label, and write it on the sheet (making.plies.hardener). 100 to 30 is common practice with slow room-temperature systems and wrong for many others. More hardener does not cure faster, it stays soft',
    ), WIDTH),
  ];
}

function laySection({ layers, pack: { stiffener, underFoam = false } }: ShoePlies, flow: FlowIn): Block[] {
  const core = layers.find((layer) => layer.kind === 'core'), under = underFoam ? layers.filter((layer) => layer.kind === 'ply' && layer.pack === 'below').map(({ number }) => number) : [];
  const first = layers[0]!.number, last = layers.length - under.length, warp = warpWords(stiffener);
  const steps = [
    'Dry run: every piece cut, numbered and laid out in this order, film, peel ply and pad too. Nothing is mixed yet.',
    'Lasted bottom, or a copy of it, on its back; film without a fold, release on it, peel ply on top. Draw the centre, the tread and the ball line on the peel ply.',
    ...(core ? [`Core ${core.number}. ${formingWords(core.core, core.thickest, core.skives.length > 0)}`] : []),
    'Mix resin and hardener by weight, two minutes, scraping the sides; pour it out flat: a full cup heats up by itself, smokes, and sets in minutes.',
    `Wet the peel ply, then lay ${first === last ? first : `${first} to ${last}`}. By the lines, toe first, from the middle outwards; wet each through before the next, roll out air and what is too much. Look: no white or dry place, no pool.`,
    ...(stiffener.edges ? [`Plies above the core: turn the edge up by ${mm(stiffener.edges)} along the broken line; snip round toe and heel. A strip of foam holds it up under the film.`] : []),
    sentences('Peel ply, film, foam pad over it; then vacuum, or sandbag and clamp. Press so that the bottom keeps its camber; no more than squeezes a thin bead out all round', warp),
    ...(under.length > 0 ? [`${under[0]} to ${under.at(-1)}: on the underside of the foam body, when it is cemented on and its arcs are cut and gauged, before the outsole. They were cut as that face lies when it is rolled out: begin at the heel end. Rub a thin coat into the open foam first; no heat. Then as above.`] : []),
    'Keep what is left in the cup, spread thin and labelled with the time: while it is soft, so is the pack.',
  ];
  return [flow.heading('Laying, wetting out, pressing'), ...steps.map((text, i) => flow.paragraph(`${i + 1}. ${text}`, WIDTH))];
}

const cureSection = (flow: FlowIn): Block[] => [
  flow.heading('Cure'),
  flow.introduction('What the maker of the resin says comes first; these are usual times, common practice.', WIDTH),
  ...flow.table([{ title: '', width: 34 }, { title: 'Usual', width: 46 }, { title: 'Rests on', width: WIDTH - 106 }, { title: 'Began, ended', width: 26 }], [
    { cells: ['Cure, pressed', WAITS.laminate.time, WAITS.laminate.basis, ''] }, { cells: ['Post-cure, on the last', WAITS.postCure.time, WAITS.postCure.basis, ''] },
  ]),
  flow.paragraph('Warm it slowly, no more than about 10 °C in half an hour (common practice), and let it cool before it is moved. Hot cement, hot air (60 to 80 °C) and a hot car soften epoxy that has only cured cold: it softens at about 70 °C, half-cured far sooner, and a resin with a low softening point stays so. Post-cure before any heat is used on the shoe, and press the sole with the last in.', WIDTH),
  flow.paragraph('Then: peel ply off just before bonding; trim wet to the line, seal the edges with resin; tap it all over, dull is a void; weigh it; measure it at seat, waist and tread; bench test, on its own page.', WIDTH),
];

const dangerSection = (flow: FlowIn): Block[] => [
  flow.heading('What can hurt'),
  ...[
    'Skin: nitrile gloves, changed when they are wetted, sleeves, no rings; a splash comes off with soap and water, never with solvent, which carries it in. Once sensitised, for good: itching or a rash is the end of working with epoxy, see a doctor.',
    'Fumes and heat: air out the room. What is left of a mix heats up by itself: never in a full cup, never in the bin before it is cold and hard; outdoors on stone if it smokes.',
    'Dust: cured and half-cured plies are cut and ground wet, with a mask P2 or P3, goggles and gloves (none at a turning tool), and vacuumed with a fine filter, never swept or blown. Carbon dust conducts: keep it out of sockets and motors.',
    'Edges: carbon splinters stay in the skin. Round and seal every edge before the pack is handled bare.',
    'Local codes and the safety sheets of the makers of cloth, resin and hardener hold before this paper.',
  ].map((text, i) => flow.paragraph(`${i + 1}. ${text}`, WIDTH)),
];
