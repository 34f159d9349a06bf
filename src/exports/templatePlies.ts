import { mm, sentences } from '../checks/say.ts';
import { windowRound } from '../geometry/clip.ts';
import type { Path, PathLine } from '../geometry/path.ts';
import { between, type Point } from '../geometry/point.ts';
import type { FlatPart } from '../making/flatPart.ts';
import { directionWords } from '../stiffener/fibres.ts';
import type { Layer } from '../making/plies/layers.ts';
import { middleAcross } from '../making/plies/strip.ts';
import { onFoam, type ShoePlies } from '../making/plies/shoePlies.ts';
import { polyline } from './drawing.ts';
import { together, type Part } from './picture.ts';
import { lettering, line, namedLine, type Template } from './template.ts';
import { marksOn, outlined, SEEN, template, turned, within, type Sole } from './templatePlans.ts';

/** A template for each layer of a stiffener, in the order of laying. */
export const plyTemplates = (sole: Sole, plies: ShoePlies): Template[] => plies.layers.map((layer, i) => layerTemplate(sole, plies, layer, plies.parts[i]!));

function layerTemplate(sole: Sole, { layers, across }: ShoePlies, layer: Layer, part: FlatPart): Template {
  const name = `${layer.kind} ${layer.number} of ${layers.length}`;
  return template(sole, `${layer.kind}-${layer.number}`, name, [...notesOn(sole, layer), SEEN], together([
    outlined(sole, layer.outline), ...(layer.over ? [stripWords(sole, layer, name)] : [within(sole, layer.outline, name)]), marksOn(sole, layer.plan ?? layer.outline, ['seat end', 'ball'], layer.plan ? laidFlat(sole) : undefined),
    ...part.marks.flatMap(({ of, path }) => { const line = across.find((one) => one.of === of); return line ? [namedLine(line.name, path, 'hidden')] : []; }),
    ...(layer.kind === 'ply' ? fibres(sole, layer, part) : layer.skives.map((x) => skive(sole, layer, x))),
  ]));
}

/** Lines of the plan as they run on the foam's underside when it is rolled out. */
function laidFlat({ parts: { shape } }: Sole): (path: PathLine) => Path {
  const lay = onFoam(shape);
  return ({ from, to }) => polyline(Array.from({ length: PIECES + 1 }, (_, i) => lay(between(from, to, i / PIECES))));
}
const PIECES = 12;

function notesOn({ shoe: { side } }: Sole, layer: Layer): string[] {
  if (layer.kind === 'core') {
    const { core, thickest, skives } = layer;
    return [sentences(`${core.name}, up to ${mm(thickest)} thick`, skives.length > 0 ? 'Skive it to nothing from the broken line to its end' : 'Round its edges over', 'Cut it like this, no border')];
  }
  const { ply, number, over, fold, plan } = layer;
  return [
    sentences(`${ply.name}, fibres ${directionWords(layer, side)} as the arrows run; ${mm(ply.thickness, 2)} thick when laid`, `Laid as number ${number} from the foot down, by the centre, tread and ball lines`, 'Broken lines square across: clamp, tread and load line of the bench test'),
    ...(over ? [`A strip across the shoe, ${mm(over.from, 0)} to ${mm(over.to, 0)} from the heel.`] : []), ...(plan ? ['For the underside of the foam, rolled out: longer than in plan.'] : []), ...(fold ? ['Broken line: the edge is turned up here, towards the foot. Snip it every 15 mm round toe and heel.'] : []),
  ];
}

/** Strips are short along the shoe: only name and side, and which end is the toe's. */
function stripWords({ shoe, name }: Sole, { outline }: Layer, part: string): Part {
  const { least, most } = windowRound([turned(shoe, outline)]), x = (least[0] + most[0]) / 2, at = (up: number): Point => [x, middleAcross(turned(shoe, outline), x) + up];
  return together([
    lettering(`${shoe.side.toUpperCase()} ${part}`, at(16), { size: 4.2, bold: true }), lettering(name, at(-12)), lettering('toe', [most[0] - 7, at(0)[1] - 24], { bold: true }, -1), lettering('heel', [least[0] + 7, at(0)[1] - 24], { bold: true }, 1),
  ]);
}

function fibres({ shoe: { side } }: Sole, layer: Layer & { readonly kind: 'ply' }, { marks }: FlatPart): Part[] {
  const arrows = marks.filter(({ of }) => of === 'FIBRE').map(({ path }) => path), { least, most } = windowRound(arrows);
  return [
    ...arrows.map((path) => line(path, 'visible')), lettering(`fibres ${directionWords(layer, side)}`, [layer.over ? (least[0] + most[0]) / 2 : most[0] + 17, layer.over ? least[1] - 5 : (least[1] + most[1]) / 2 + 1], { bold: true }),
    ...marks.filter(({ of }) => of === 'FOLD').map(({ path }) => line(path, 'hidden')),
  ];
}

function skive({ shoe }: Sole, { outline }: Layer, x: number): Part {
  const middle = middleAcross(outline, x), { least, most } = windowRound([outline]), half = (most[1] - least[1]) / 2 - 4;
  return namedLine('skive from here', turned(shoe, [{ kind: 'line', from: [x, middle - half], to: [x, middle + half] }]), 'hidden');
}
