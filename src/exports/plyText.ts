import { grams, mm, rounded, sentences } from '../checks/say.ts';
import type { Design } from '../checks/design.ts';
import { pathLength } from '../geometry/path.ts';
import { windowRound } from '../geometry/clip.ts';
import type { Mm } from '../geometry/units.ts';
import { WAITS } from '../making/card/waits.ts';
import { BEYOND, isPly } from '../making/plies/amounts.ts';
import type { ClothCut } from '../making/plies/cloths.ts';
import type { Layer } from '../making/plies/layers.ts';
import { directionWords } from '../making/plies/parts.ts';
import type { Plies } from '../making/plies/plies.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { framed, heading, introduction, paragraph, space, table, type Block, type Row } from './flow.ts';
import { WIDTH } from './textPaper.ts';
import { sectionBlock } from './plySection.ts';

const square = (area: number): string => `${rounded(area / 100, 0)} cm²`;
const metres = (length: Mm): string => `${rounded(length / 1000, 2)} m`;
const percent = (share: number): string => `${rounded(share * 100, 0)} %`;
const tenth = (value: number): string => `${rounded(value, 1)} g`;

/** What stands on the paper that goes with the plies of one shoe to the bench, without its bench test. */
export const plyText = (design: Design, { cloths }: Plies, one: ShoePlies): Block[] => [
  heading(`Plies of the stiffener: ${one.side} shoe of ${design.fitting.job.reference}`),
  framed(CAUTIONS, WIDTH), space(1),
  ...stackSection(one), ...clothSection(one, cloths), ...mixSection(one), ...laySection(one), ...cureSection(), ...dangerSection(),
];

const CAUTIONS = [
  'Epoxy: gloves and sleeves, nothing on the skin; it sensitises for good. Carbon and glass dust: wet, mask P2 or P3, goggles.',
  'No hot air, no hot cement near the pack before its post-cure is done: it softens and sags.',
];

function stackSection(one: ShoePlies): Block[] {
  const { layers, amounts, side } = one;
  const rows = layers.map((layer): Row => ({ cells: rowOf(one, layer) }));
  return [
    heading('The stack, in the order of laying'),
    introduction(`The shoe lies on its back: number 1 comes against the foot's side, the last one looks to the floor. No two edges lie nearer than ${mm(one.stagger)} to each other: the outer plies reach furthest and close over the inner ones; ends of strips keep off each other.`, WIDTH),
    sectionBlock(one),
    ...table([
      { title: 'No.', width: 10 }, { title: 'What', width: 50 }, { title: `Fibres, ${side}`, width: 22 }, { title: 'Size, mm', width: 28, right: true }, { title: 'Area', width: 20, right: true },
      { title: 'Set in', width: 18, right: true }, { title: 'Cloth', width: 19, right: true }, { title: 'Resin', width: 19, right: true },
    ], rows),
    paragraph(sentences(`Set in: how far the edge stays inside the feather line${one.pack.stiffener.edges ? ', with what is turned up of it' : ''}`, 'Cloth and resin are those that stay in the ply', amounts.unknown.length > 0 ? `Of ${amounts.unknown.map((n) => `ply ${n}`).join(', ')} only the laid ply was measured: weigh its cloth, and mix for it besides` : ''), WIDTH),
  ];
}

function rowOf({ side, amounts }: ShoePlies, layer: Layer): string[] {
  const { least, most } = windowRound([layer.outline]), size = `${Math.ceil(most[0] - least[0])} × ${Math.ceil(most[1] - least[1])}`, own = amounts.plies.find(({ number }) => number === layer.number);
  const grammes = (value: number | undefined): string => (value === undefined ? '–' : tenth(value));
  return layer.kind === 'ply'
    ? [String(layer.number), layer.ply.name, directionWords(layer, side), size, square(layer.area), mm(layer.inset), grammes(own?.cloth), grammes(own?.resin)]
    : [String(layer.number), `${layer.core.name}, up to ${mm(layer.thickest)}`, '', size, square(layer.area), mm(layer.inset), '', ''];
}

function clothSection({ amounts, layers, side }: ShoePlies, cloths: readonly ClothCut[]): Block[] {
  const { cover, core } = amounts, used = cloths.filter(({ name }) => layers.some((layer) => layer.kind === 'ply' && layer.ply.name === name)), edge = layers.filter(isPly).reduce((sum, { outline }) => sum + pathLength(outline), 0);
  return [
    heading('What is taken from the store'),
    introduction('Cloth is laid out for all plies of the job together, fibres along or across the roll; lengths are cut off square. Waste is what is neither ply nor a strip that stays whole.', WIDTH),
    ...table([
      { title: 'Cloth', width: 60 }, { title: 'Roll', width: 26, right: true }, { title: 'Length off it', width: 28, right: true }, { title: 'Strip left', width: 26, right: true }, { title: 'Waste', width: 20, right: true }, { title: 'Drawing', width: 26, right: true },
    ], used.map(({ name, width, length, beside, waste, number, left }) => ({ cells: [left.length > 0 ? `${name} (not ${left.join(', ')}: the roll is too narrow)` : name, mm(width, 0), length > 0 ? metres(length) : '–', mm(beside, 0), percent(waste), `cloth ${number}`] }))),
    paragraph(sentences(
      `Peel ply: two pieces of ${Math.ceil(cover.length)} × ${mm(Math.ceil(cover.width), 0)} (${square(2 * cover.area)}); release film: two of the same; pad: one. Each reaches ${mm(BEYOND, 0)} beyond the largest ply`,
      core ? `Core: ${square(core.area)}, about ${grams(core.weight)}` : '', `Mark every piece ${side.toUpperCase()} and with its number while its template lies on it`, `Edges to cut: ${metres(edge)}; tape along them before the shears keeps the cloth together`,
    ), WIDTH),
  ];
}

const onOnePage = (blocks: readonly Block[]): Block[] => blocks.map((block, i) => (i < blocks.length - 1 ? { ...block, staysWithNext: true } : block));

function mixSection({ amounts, order: { spare, hardener } }: ShoePlies): Block[] {
  const { cloth, inPlies, mixed, resin, weight } = amounts;
  return [
    heading('Weighed out, for this shoe'),
    ...onOnePage(table([{ title: '', width: 90 }, { title: 'Grams', width: 30, right: true }, { title: '', width: WIDTH - 120 }], [
      { cells: ['Cloth in the plies', tenth(cloth), 'weigh what you cut: it should come near'] }, { cells: ['Resin and hardener that stay in the plies', tenth(inPlies), ''] },
      { cells: [{ text: `Mixed, ${percent(spare)} more for brush, cup and peel ply`, bold: true }, { text: tenth(mixed), bold: true }, '10 to 20 % more is usual'] },
      { cells: ['of that resin', tenth(resin), ''] }, { cells: ['of that hardener', tenth(amounts.hardener), `${rounded(hardener, 0)} g to 100 g of resin, by weight`] }, { cells: ['Plies as they come off, trimmed', tenth(weight), 'more: too wet; less: dry spots'] },
    ])),
    paragraph(`The maker of the resin decides how much hardener it takes: read the label, and write it on the sheet (making.plies.hardener). 100 to 30 is common practice with slow room-temperature systems and wrong for many others. More hardener does not cure faster, it stays soft.`, WIDTH),
  ];
}

function laySection({ layers, pack: { stiffener, underFoam = false } }: ShoePlies): Block[] {
  const core = layers.find((layer) => layer.kind === 'core'), under = underFoam ? layers.filter((layer) => layer.kind === 'ply' && layer.pack === 'below').map(({ number }) => number) : [];
  const first = layers[0]!.number, last = layers.length - under.length;
  const steps = [
    'Dry run: every piece cut, numbered and laid out in this order, film, peel ply and pad too. Nothing is mixed yet.',
    'Lasted bottom, or a copy of it, on its back; film without a fold, release on it, peel ply on top. Draw the centre and the ball line on the peel ply.',
    ...(core ? [`Core ${core.number}: shape it to the bottom, ${core.skives.length > 0 ? 'skive its ends, ' : ''}roughen and dust it. Cork, leather board and wood drink resin: rub a thin coat of the same mix into both faces, mixed besides, and let it get tacky.`] : []),
    'Mix resin and hardener by weight, two minutes, scraping the sides; pour it out flat: a full cup heats up by itself, smokes, and sets in minutes.',
    `Wet the peel ply, then lay ${first === last ? first : `${first} to ${last}`}. By the lines, toe first, from the middle outwards; wet each through before the next, roll out air and what is too much. Look: no white or dry place, no pool.`,
    ...(stiffener.edges ? [`Plies above the core: turn the edge up by ${mm(stiffener.edges)} along the broken line; snip round toe and heel. A strip of foam holds it up under the film.`] : []),
    'Peel ply, film, foam pad over it; then vacuum, or sandbag and clamp. Press so that the bottom keeps its camber; no more than squeezes a thin bead out all round.',
    ...(under.length > 0 ? [`${under[0]} to ${under.at(-1)}: on the underside of the foam body, when it is cemented on and its arcs are cut and gauged, before the outsole. They were cut as that face lies when it is rolled out: begin at the heel end. Rub a thin coat into the open foam first; no heat. Then as above.`] : []),
    'Keep what is left in the cup, spread thin and labelled with the time: while it is soft, so is the pack.',
  ];
  return [heading('Laying, wetting out, pressing'), ...steps.map((text, i) => paragraph(`${i + 1}. ${text}`, WIDTH))];
}

const cureSection = (): Block[] => [
  heading('Cure'),
  introduction('What the maker of the resin says comes first; these are usual times, common practice.', WIDTH),
  ...table([{ title: '', width: 34 }, { title: 'Usual', width: 60 }, { title: 'Rests on', width: WIDTH - 124 }, { title: 'Began, ended', width: 30 }], [
    { cells: ['Cure, pressed', WAITS.laminate.time, WAITS.laminate.basis, ''] }, { cells: ['Post-cure, on the last', WAITS.postCure.time, WAITS.postCure.basis, ''] },
  ]),
  paragraph('Warm it slowly, no more than about 10 °C in half an hour (common practice), and let it cool before it is moved. Hot cement, hot air (60 to 80 °C) and a hot car soften epoxy that has only cured cold: it softens at about 70 °C, half-cured far sooner, and a resin with a low softening point stays so. Post-cure before any heat is used on the shoe, and press the sole with the last in.', WIDTH),
  paragraph('Then: peel ply off just before bonding; trim wet to the line, seal the edges with resin; tap it all over, dull is a void; weigh it; measure it at seat, waist and ball; bench test, next page.', WIDTH),
];

const dangerSection = (): Block[] => [
  heading('What can hurt'),
  ...[
    'Skin: nitrile gloves, changed when they are wetted, sleeves, no rings; a splash comes off with soap and water, never with solvent, which carries it in. Once sensitised, for good: itching or a rash is the end of working with epoxy, see a doctor.',
    'Fumes and heat: air out the room. What is left of a mix heats up by itself: never in a full cup, never in the bin before it is cold and hard; outdoors on stone if it smokes.',
    'Dust: cured and half-cured plies are cut and ground wet, with a mask P2 or P3, goggles and gloves (none at a turning tool), and vacuumed with a fine filter, never swept or blown. Carbon dust conducts: keep it out of sockets and motors.',
    'Edges: carbon splinters stay in the skin. Round and seal every edge before the pack is handled bare.',
    'Local codes and the safety sheets of the makers of cloth, resin and hardener hold before this paper.',
  ].map((text, i) => paragraph(`${i + 1}. ${text}`, WIDTH)),
];
