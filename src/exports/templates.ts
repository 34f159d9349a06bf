import type { TemplateOrder } from '../fitting/making.ts';
import { SIDES, type Side } from '../fitting/words.ts';
import { shoePlies } from '../making/plies/shoePlies.ts';
import { partsOf } from '../pair/shoe.ts';
import { packFor } from '../stiffener/pack.ts';
import type { Design } from '../checks/design.ts';
import type { Drawing } from './drawing.ts';
import { figureBook } from './numbers.ts';
import { pdfBytes } from './pdf.ts';
import { svgText } from './svg.ts';
import type { Template } from './template.ts';
import { templatePages, templateSheet } from './templatePage.ts';
import { layerTemplates, type Layers } from './templateLayers.ts';
import { planTemplates, type Sole } from './templatePlans.ts';
import { plyTemplates } from './templatePlies.ts';
import { sideTemplate } from './templateSide.ts';
import { wallTemplate } from './templateWalls.ts';

/**
 * Every template of one shoe, in the order they are needed; none where there is no sole to make.
 * @param layers of that shoe, where it is built up from sheets
 */
export function templatesFor(design: Design, side: Side, layers: Layers = { parts: [], joints: [] }): Template[] {
  return solesOf(design).filter(({ shoe }) => shoe.side === side).flatMap((sole) =>
    [...planTemplates(sole, pliesOf(design, sole)), ...layerTemplates(sole, layers), sideTemplate(sole, layers.joints), wallTemplate(sole, layers.joints)]);
}

/** One for each ply and the core, where it is known what the stiffener is laid of. */
function pliesOf({ fitting }: Design, sole: Sole): Template[] | undefined {
  const { shoe } = sole, pack = shoe.kind === 'rocker' ? packFor(shoe, fitting) : undefined;
  return shoe.kind === 'rocker' && pack ? plyTemplates(sole, shoePlies(shoe, pack, fitting, fitting.making.plies)) : undefined;
}

export const solesOf = ({ shoes, fitting }: Design): Sole[] => shoes.flatMap((shoe) => {
  const parts = partsOf(shoe), { reference, date } = fitting.job;
  return parts ? [{ shoe, parts, book: figureBook(shoe, fitting), name: `${reference}  ${date}` }] : [];
});

/** A file by the end of its name. */
interface TemplateFile { readonly name: string; readonly bytes: Uint8Array }

/**
 * One PDF for each shoe, tiled over the paper of the workshop, and one SVG for each template. Same design, same bytes.
 * @param layers of a shoe, where it is built up from sheets
 */
export function templateFiles(design: Design, { paper, overlap }: TemplateOrder, layers: (side: Side) => Layers | undefined = () => undefined): TemplateFile[] {
  const { reference, date } = design.fitting.job;
  return SIDES.flatMap((side): TemplateFile[] => {
    const templates = templatesFor(design, side, layers(side)), stem = `${reference}_${side}_template`;
    if (templates.length === 0) return [];
    const pages: readonly Drawing[] = templatePages(design, templates, paper, overlap);
    return [
      { name: `${stem}s.pdf`, bytes: pdfBytes(pages, `Templates ${reference} ${side}`, date) },
      ...templates.map((template) => ({ name: `${stem}-${template.stem}.svg`, bytes: new TextEncoder().encode(svgText(templateSheet(design, template))) })),
    ];
  });
}
