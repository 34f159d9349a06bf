import { windowRound } from '../geometry/clip.ts';
import type { FlatPart } from '../making/flatPart.ts';
import type { LayerJoint } from '../making/templates/layerJoint.ts';
import type { Ink, LineKind } from './drawing.ts';
import { together, type Part } from './picture.ts';
import { lettering, line, tied, type Template } from './template.ts';
import type { Sole } from './templatePlans.ts';
import { pointAlong } from '../geometry/path.ts';

/** The layers of one shoe: what is cut from sheets, on its own side, and where they meet. */
export interface Layers { readonly parts: readonly LayerPart[]; readonly joints: readonly LayerJoint[] }
/** @property name as lettered in large, like "layer 2 of 4, heel"  @property sheet what it is cut from */
export interface LayerPart { readonly name: string; readonly sheet: string; readonly part: FlatPart }

const LOOKS: Readonly<Record<string, readonly [LineKind, Ink, string]>> = {
  CENTRE_LINE: ['centre', 'computed', 'centre line'], BALL_LINE: ['phantom', 'ink', 'ball line'], APEX_LINE: ['centre', 'governs', 'apex'], NEXT_EDGE: ['hidden', 'ink', 'next layer'],
};

/** One template for each piece that is cut, the edge of the next layer marked on it. */
export const layerTemplates = (sole: Sole, { parts }: Layers): Template[] => parts.map(({ name, sheet, part }, i) => ({
  side: sole.shoe.side, stem: `layer-${i + 1}`, part: name,
  notes: [`Cut from ${sheet}, upper side up; trim for the grinding wheel is left all round.`, 'Broken line: edge of the layer that comes under it. Lay layers over each other by the centre and ball lines.'],
  picture: layerPicture(sole, name, part), fixed: [],
}));

function layerPicture({ shoe: { side }, name: job }: Sole, name: string, { outline, holes, marks }: FlatPart): Part {
  const { least, most } = windowRound([outline]), middle = (least[0] + most[0]) / 2;
  return together([
    line(outline, 'visible'), ...holes.map((hole) => line(hole, 'visible')),
    lettering(`${side.toUpperCase()} ${name}`, [middle, 8], { size: 5, bold: true }), lettering(job, [middle, -10], { bold: true }),
    ...marks.flatMap(({ of, path }): Part[] => {
      const [kind, ink, words] = LOOKS[of] ?? ['thin', 'ink', of.toLowerCase().replaceAll('_', ' ')] as const, at = pointAlong(path, path.length * 0.3);
      return [line(path, kind, ink), tied(words, at, at[1] > 0 ? 1 : -1)];
    }),
  ]);
}
