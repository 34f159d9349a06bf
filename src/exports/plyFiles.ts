import type { Design } from '../checks/design.ts';
import { USUAL_TEMPLATES } from '../fitting/readMaking.ts';
import type { Plies } from '../making/plies/plies.ts';
import type { ShoePlies } from '../making/plies/shoePlies.ts';
import { textFile, type NamedFile } from './namedFile.ts';
import { pdfBytes } from './pdf.ts';
import { plyBench } from './plyBench.ts';
import { clothSheet, plyOutlines } from './plyDxf.ts';
import { plyText } from './plyText.ts';
import { plyTemplates } from './templatePlies.ts';
import { templatePages } from './templatePage.ts';
import { solesOf } from './templates.ts';
import { textPages } from './textPaper.ts';

/** Of each shoe the outlines, the paper with its bench test and the templates; and each cloth with what is cut from it. */
export function plyFiles(design: Design, plies: Plies): NamedFile[] {
  const { reference } = design.fitting.job;
  return [
    ...plies.shoes.flatMap((one) => shoeFiles(design, plies, one)),
    ...plies.cloths.filter(({ parts }) => parts.length > 0).map((cloth) => textFile(`${reference}_plies-cloth-${cloth.number}.dxf`, clothSheet(cloth, reference))),
  ];
}

function shoeFiles(design: Design, plies: Plies, one: ShoePlies): NamedFile[] {
  const { job: { reference, date }, making } = design.fitting, stem = `${reference}_${one.side}_plies`, title = `Plies ${reference} ${one.side}`, { paper, overlap } = making.templates ?? USUAL_TEMPLATES;
  const templates = solesOf(design).filter(({ shoe }) => shoe.side === one.side).flatMap((sole) => plyTemplates(sole, one));
  return [
    textFile(`${stem}.dxf`, plyOutlines(one, reference)),
    { name: `${stem}.pdf`, bytes: pdfBytes(textPages(design, title, [...plyText(design, plies, one), ...plyBench(design, one)]), title, date) },
    { name: `${stem}-template.pdf`, bytes: pdfBytes(templatePages(design, templates, paper, overlap), `${title}, templates`, date) },
  ];
}
