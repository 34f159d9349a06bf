import { capital, sentences } from '../checks/say.ts';
import { figuresOf, inWords, type FigureKey } from '../checks/figures.ts';
import type { Mm } from '../geometry/units.ts';
import type { Path } from '../geometry/path.ts';
import type { Design } from '../checks/design.ts';
import { springByWedge, type SpringByWedge } from '../making/gauges/springByWedge.ts';
import { SPRING_WITHIN } from '../making/gauges/toeWedge.ts';
import { HEIGHT_WITHIN } from '../making/gauges/heightGauge.ts';
import type { Shoe } from '../pair/shoe.ts';
import type { ShoeGauges } from '../making/gauges/gauges.ts';
import { leaveAsItIs, rubberWords, WORN, wornStretches } from '../making/gauges/repairGauge.ts';
import { facePath } from '../profile/facePath.ts';
import { offsetInward } from '../profile/groundFace.ts';
import { words, type Drawing, type Words } from './drawing.ts';
import { framed, heading, introduction, paragraph, space, table, type Block } from './flow.ts';
import { pdfBytes } from './pdf.ts';
import { together } from './picture.ts';
import { lettering, line, type Template } from './template.ts';
import { templatePages } from './templatePage.ts';
import { planTemplates, type Sole } from './templatePlans.ts';
import { solesOf } from './templates.ts';
import { textPages, WIDTH } from './textPaper.ts';

/**
 * The card that goes home with the shoes, for whoever repairs them: what to glue on, what to leave as it is, the gauge and
 * the outsole in true size. Same design, same bytes.
 */
export function repairCardPdf(design: Design, gauges: ShoeGauges): Uint8Array {
  const { job: { reference, date }, making: { templates: order } } = design.fitting, title = `Repair card ${reference} ${gauges.side}`;
  const sole = solesOf(design).find(({ shoe }) => shoe.side === gauges.side);
  if (!sole) throw new RangeError(`a repair card is for a sole that is made; there is none on the ${gauges.side}`);
  const templates = [gaugeTemplate(sole, gauges), ...planTemplates(sole).filter(({ stem }) => stem === 'outsole')];
  const drawn = (before: number): Drawing[] => templatePages(design, templates, order?.paper ?? 'A4', order?.overlap ?? OVERLAP, before), written = textPages(design, title, cardBlocks(design, sole), drawn(0).length);
  return pdfBytes([...written, ...drawn(written.length)], title, date);
}

/** What is longer than this is no name of a place; it stands on the pages around it. */
const LABEL = 24;

/** Strip along which two pages are glued where the sheet orders no templates. */
const OVERLAP: Mm = 10;

/** The gauge as it is cut from board, with the lines that tell when the sole is worn: below its edge, and in the sole above it. */
function gaugeTemplate({ shoe: { side }, parts: { shape }, name }: Sole, { parts, slices: { repair } }: ShoeGauges): Template {
  const gauge = parts.at(-1)!, rubber = offsetInward(shape.face, shape.outsole), worn = offsetInward(shape.face, WORN);
  const inside = wornStretches(shape, repair).map(([a, b]): Path => facePath(worn, a, b));
  return {
    side, stem: 'repair-gauge', part: "repairer's gauge",
    notes: [
      'Glue this page to card and cut along the full line: the piece below is the gauge. Hold it under the sole with its stop against the back of the heel.',
      `Broken lines: ${WORN} mm worn. A gap as wide as from the edge to the line below it means a new sole. Thin line: where the rubber ends and the foam begins.`,
      'Seen from the outer side of a right shoe, from the inner side of a left one: heel left.',
    ],
    picture: together([
      line(gauge.outline, 'visible'), line(facePath(rubber, repair.from, repair.to), 'thin'), ...inside.map((path) => line(path, 'hidden')),
      ...gauge.marks.map(({ of, path }) => line(path, of === 'WORN_LIMIT' ? 'hidden' : 'thin')),
      lettering(`${side.toUpperCase()} repairer's gauge`, [repair.from + 70, -22], { bold: true, size: 4.2 }), lettering(name, [repair.from + 70, -28]),
    ]),
    fixed: gauge.letters.filter(({ text }) => text.length <= LABEL).map(({ text, at: [x, y] }): Words => words(text, [x, -y], { size: 3 })),
  };
}

const KEPT = ['seatHeight', 'ballHeight', 'toeSpringOfShoe', 'standingFlat', 'apex', 'radiusHeel', 'radiusMid', 'radiusToe', 'soleWeight'] as const satisfies readonly FigureKey[];

function cardBlocks({ fitting, fitting: { job } }: Design, { shoe, parts }: Sole): Block[] {
  const figures = figuresOf(shoe, fitting).filter(({ key }) => (KEPT as readonly FigureKey[]).includes(key)), prosthetic = shoe.fitting.foot?.state === 'prosthetic';
  return [
    heading(`Repair card: ${shoe.side} shoe of ${job.reference}`),
    paragraph(sentences(`Made ${job.date}${job.maker ? ` by ${job.maker}` : ''}`, 'Ask the maker before anything but a new outsole is done', 'Hand this card back with the shoes'), WIDTH),
    framed([shoe.kind === 'rocker' ? 'The sole of this shoe is curved on purpose. Levelled, it can make the wearer fall.' : 'This sole is raised so that both shoes stand level. Another thickness makes the wearer limp.'], WIDTH),
    heading('What to glue on'),
    ...table([{ title: '', width: 52 }, { title: '', width: WIDTH - 52 }], [
      { cells: ['New outsole', `${rubberWords(shoe)}, of one thickness from heel to tip. Outline in true size on the last pages.`] },
      { cells: ['When', `When heel or toe has worn ${WORN} mm, or the rubber is through. Measure with the gauge, not by eye.`] },
      { cells: ['Foam under it', shoe.order.foam] }, { cells: ['Stiffener over it', shoe.kind === 'rocker' ? 'inside the sole, between foam and insole' : 'none'] },
    ]),
    heading('Leave as it is'), ...leaveAsItIs(shoe).map((one, i) => paragraph(`${i + 1}. ${capital(one)}.`, WIDTH)),
    heading('What must come out again'),
    introduction(`Heights above the ground with the shoe at rest. Heights are kept within ${HEIGHT_WITHIN} mm, the toe spring within ${SPRING_WITHIN} mm (common practice).`, WIDTH),
    ...table([{ title: 'Figure', width: WIDTH - 40 }, { title: 'Planned', width: 40, right: true }], figures.map((figure) => ({ cells: figure.key === 'toeSpringOfShoe' ? springRow(springByWedge(shoe, parts, fitting)) : [figure.label, inWords(figure)] }))),
    heading('With the gauge'), ...stepsFor(shoe).map((step, i) => paragraph(`${i + 1}. ${step}`, WIDTH)),
    space(2), heading('Cautions'), ...cautions(shoe, prosthetic).map((one) => paragraph(one, WIDTH)),
  ];
}

/** A repairer has the wedge, not the last: one number, and what it is at the other place. */
const springRow = ({ words: said, atLast, where }: SpringByWedge): string[] => [`Toe spring by wedge, ${where}${said.startsWith(atLast) ? '' : ` (there ${atLast})`}`, said];

const stepsFor = ({ kind }: Shoe): readonly string[] => [
  'Before the old sole comes off: hold the gauge under it, stop against the back of the heel, and note where light shows.',
  `Take the rubber off without heating the foam beyond hand-warm: cement${kind === 'rocker' ? ' and epoxy soften' : ' softens'} at about 70 °C.`,
  'Hold the gauge to the bare foam: it must lie at one distance, the thickness of the rubber, all along. Where foam is gone, fill it up; do not thin the rubber elsewhere.',
  'Start gluing in the middle and press towards both ends, with the shoe on its last or well stuffed.',
  kind === 'rocker'
    ? 'With the new sole on, the gauge shows no gap wider than 0.3 mm under the flat and the long arc, 0.7 mm at the ends (common practice). On a level plate the shoe rolls without a jump or a stop.'
    : 'With the new sole on, the gauge shows no gap wider than 0.3 mm under the sole, 0.7 mm at the ends (common practice). On a level plate the shoe stands without a wobble.',
  'Do the same to the other shoe, or measure that both heels, both balls and both tips still stand as they did.',
];

const cautions = ({ kind }: Shoe, prosthetic: boolean): string[] => [
  `A prescriber ordered this ${kind === 'rocker' ? 'shape' : 'height'}; nobody else changes it. After a repair the first steps are taken beside a rail.`,
  'Never one shoe only: both or none, and both are checked at the same time.',
  ...(prosthetic ? ['It is worn on a prosthetic foot: a heel height that has changed goes to the prosthetist before a step is taken.'] : []),
  `Extraction for solvents; no breathing of ${kind === 'rocker' ? 'foam, rubber or carbon' : 'foam or rubber'} dust.`,
];
