import { cautionsFor } from '../checks/cautions.ts';
import { figuresOf, type FigureKey } from '../checks/figures.ts';
import { capital, mm, rounded, sentences } from '../checks/say.ts';
import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { BASE_LEAST } from '../making/wedges/base.ts';
import { LEAST_TOLD, leftOutWords, underOther } from '../making/wedges/findings.ts';
import { endAgainstTip, springByWedge } from '../making/gauges/springByWedge.ts';
import type { Trial } from '../making/wedges/trial.ts';
import type { RockerShoe, Shoe } from '../pair/shoe.ts';
import { variantWords, type Variant } from '../making/wedges/variants.ts';
import type { ShoeWedges, TrialWedge } from '../making/wedges/wedges.ts';
import { LETTERS, stroke, words, type Mark } from './drawing.ts';
import { framed, heading, introduction, paragraph, table, type Block, type Column } from './flow.ts';
import { pdfBytes } from './pdf.ts';
import { textPages, WIDTH } from './textPaper.ts';

/** The paper on which a walking trial is written down: what each wedge is, what was seen and felt on it, and what was chosen. */
export function trialRecordPdf(design: Design, wedges: ShoeWedges): Uint8Array {
  const { reference, date } = design.fitting.job, title = `Trial record ${reference} ${wedges.side}`;
  return pdfBytes(textPages(design, title, blocksOf(design, wedges)), title, date);
}

const blocksOf = (design: Design, one: ShoeWedges): Block[] => [
  heading(`Trial record: ${one.side} shoe of ${design.fitting.job.reference}`),
  framed(['Beside a rail, someone at hand, both shoes on, never alone. Stop on pain. The prescriber decides.'], WIDTH),
  ...setSection(design, one), ...walkSection(one), ...choiceSection(), ...signsSection(one),
  heading('Cautions'), ...cautionsFor(design.fitting).map((caution, i) => paragraph(`${i + 1}. ${caution}`, WIDTH)),
];

/** What is in the set, and how it is put under the shoe. */
function setSection(design: Design, { side, order: { step }, wedges, trial, trial: { setIn, seat, baseLeft, leftOut, planned } }: ShoeWedges): Block[] {
  const { shoes, fitting } = design;
  const own = shoes.find((shoe) => shoe.side === side)!, guessed = (key: FigureKey): string => (figuresOf(own, fitting).some((figure) => figure.key === key && figure.estimated) ? ' (est.)' : '');
  const length = planned.shape.last.length, apexX = planned.given.order.apexX, other = shoes.find((shoe) => shoe.side !== side);
  const raised = raisedWords(trial, other, underOther(design, own as RockerShoe, trial));
  return [
    heading('The set'),
    paragraph(sentences(
      `The base is the foam body with its ground face ${mm(setIn)} inside the planned one; at its thinnest it keeps ${mm(baseLeft)} (at least ${mm(BASE_LEAST)})`,
      `Each wedge makes it the client's own shape with the apex moved by ${mm(step)} or with another flat. It has as many holes across its waist as its number`,
      'The outsole stays off until the shape is decided: base and wedge together reach down to where its ground face will be',
    ), WIDTH),
    paragraph(`On all of them the face the sole is glued to stands ${mm(seat)}${guessed('seatHeight')} above the ground at the centre of the seat. ${raised}`, WIDTH),
    ...table(
      [
        { title: 'No.', width: 12 }, { title: 'Shape', width: 54 }, { title: 'order.apex', width: 20, right: true },
        ...['Heel', 'Stands', 'Ball', 'Tip'].map((title) => ({ title, width: 15, right: true })), { title: 'Toe spring', width: 24, right: true }, { title: '', width: 16 },
      ],
      wedges.map(({ variant, numbers: { heel, standing, ball, tip, toeSpring } }) => ({
        cells: [
          { text: String(variant.number), bold: true }, variantWords(variant), `${rounded((100 * (apexX + variant.apexBy)) / length, 1)} %`,
          ...[heel, standing, ball, tip].map((value) => rounded(value, 1)), `${mm(toeSpring)}${guessed('toeSpringOfShoe')}`, variant.planned ? { text: 'planned', bold: true } : '',
        ],
      })),
    ),
    paragraph('Heel, stands, ball, tip: how thick the wedge is there, mm, measured upright. order.apex: what to write on the sheet when it is chosen, % of the last from the heel. Toe spring: ground face above the ground at the tip of the last.', WIDTH),
    paragraph(springWords(design, own as RockerShoe, wedges), WIDTH),
    ...leftOut.map((one) => paragraph(leftOutWords(one), WIDTH)),
  ];
}

/** All shapes of a trial may stand higher than the sole is planned, and their arcs with them: what the other papers tell is said beside it. */
function springWords({ fitting }: Design, own: RockerShoe, wedges: readonly TrialWedge[]): string {
  const planned = wedges.find(({ variant }) => variant.planned)?.numbers.toeSpring, { atLast, words: byWedge } = springByWedge(own, own, fitting), said = planned === undefined ? '' : mm(planned), est = byWedge.endsWith('(est.)') ? ' (est.)' : '';
  return sentences(said === atLast ? `Toe spring of the sole as planned: ${atLast}${est}` : `Toe spring of the sole as planned, as drawing and job sheet tell it: ${atLast}${est}; on the trial its arcs stand higher, and it is ${said}`, capital(endAgainstTip(own)));
}

/** How much higher the shapes stand than the sole is planned, and what that means for the other shoe. */
function raisedWords({ higher }: Trial, other: Shoe | undefined, missing: Mm): string {
  if (higher < LEAST_TOLD) return 'As high as the sole is planned.';
  const so = `That is ${mm(higher)} more than planned, so that every shape stands alike`;
  if (!other) return `${so}: give the other shoe as much, heel to toe, for the trial.`;
  if (other.kind === 'match') return `${so}: put ${mm(missing)} under the ${other.side} shoe too, heel to toe, for the trial.`;
  const onBase = `the ${other.side} shoe is walked on its own trial base and wedge meanwhile`;
  return missing < LEAST_TOLD ? `${so}. Both shoes are tried at once: ${onBase}, which stands as much higher, or more.` : `${so}. Both shoes are tried at once: ${onBase}; put ${mm(missing)} more under it, heel to toe. Where it is walked on as it is, put ${mm(higher)} under it instead.`;
}

const HOW: readonly string[] = [
  'Double-sided tape over the whole face, pressed on from the middle; the back of the wedge flush with the back of the base.',
  'Begin with the shape as planned. Change one thing at a time: first the apex, then the flat. The same floor, the same stockings, ten metres four times.',
  'Look from the side, then from behind. Ask the client only after the last step. Stand still for half a minute, eyes open.',
  'Between two shapes: sit down, look at the skin when pain or redness is named.',
];

function walkSection({ wedges }: ShoeWedges): Block[] {
  const columns: readonly Column[] = [
    { title: 'No.', width: 14 }, { title: 'Heel: soft, level, slap', width: 40 }, { title: 'Knee, hip, balance', width: 40 }, { title: 'What the client says', width: 66 }, { title: 'Better?', width: 26 },
  ];
  return [
    heading('The walk'), ...HOW.map((step, i) => paragraph(`${i + 1}. ${step}`, WIDTH)),
    ...form(columns, wedges.map(({ variant: { number, planned } }: TrialWedge) => `${number}${planned ? '*' : ''}`), ROW_TO_WRITE), paragraph('* as planned', WIDTH),
  ];
}
const ROW_TO_WRITE: Mm = 12;

const choiceSection = (): Block[] => [
  heading('What was chosen'),
  ...form([{ title: '', width: 60 }, { title: '', width: WIDTH - 60 }], ['Wedge number', 'Between two: apex, flat', 'Next step, by whom', 'Date, who walked, who watched'], 9, true),
];

/** Rows with lines to write between, the first cell filled in. @param together on one page */
function form(columns: readonly Column[], first: readonly string[], height: Mm, together = false): Block[] {
  const head = columns.some(({ title }) => title !== '') ? table(columns, []) : [];
  return [...head, ...first.map((text, i): Block => ({
    height, ...(i < first.length - 1 && together && { staysWithNext: true }),
    marks: (left, top): Mark[] => {
      const edges = columns.reduce<Mm[]>((all, { width }) => [...all, all.at(-1)! + width], [left]);
      return [
        words(text, [left + 1.2, top + height / 2 + 1], { bold: true, size: LETTERS.label }), stroke([left, top + height], [edges.at(-1)!, top + height], 'thin', 'ink'),
        ...edges.slice(1, -1).map((x) => stroke([x, top], [x, top + height], 'thin', 'ink')),
      ];
    },
  }))];
}

/** Common practice of the trade. */
const signsFor = ({ order: { step, flat }, trial: { shapes } }: ShoeWedges): readonly (readonly [seen: string, cause: string, change: string])[] => [
  ['Like climbing a hill; the knee is pushed back', 'the toe arc begins too far forward, or rises too little', either(isTried(shapes, (one) => one.apexBy < 0), `apex ${mm(step)} back`, 'more rise at the toe')],
  ['Falls forward, the knee gives, cannot stand still', 'the apex is too far back, or there is no flat', either(isTried(shapes, (one) => one.apexBy > 0), `apex ${mm(step)} forward`, isTried(shapes, (one) => one.flat > 0) ? `a flat of ${mm(flat)}` : 'a flat, as long as one can be made')],
  ['The foot slaps down', 'heel arc too short or too steep, heel too hard', 'larger heel arc, softer last 40 mm of the heel'],
  ['The heel digs in, a jolt', 'the heel arc ends too far back, or a corner is left', 'take the corner off down to the strike angle'],
  ['Stands on toes or on the heel', 'the pitch does not go with the angle of the ankle', 'heel 2 mm up or down'],
  ['Rolls to the outer side', 'the crest is not square to the walking line, or the base is narrow', 'turn the crest 3 to 5°, flare the walls'],
  ['The pelvis drops on one side', 'the raise does not go with the legs', "2 mm up or down to look at; the raise itself is the prescriber's figure"],
];

/** What the set has no wedge for is not offered. */
const isTried = (shapes: Trial['shapes'], is: (one: Variant) => boolean): boolean => shapes.some(({ variant }) => is(variant));
const either = (possible: boolean, move: string, other: string): string => (possible ? `${move}, or ${other}` : `${other}; the set has no wedge with the apex moved that way`);

const signsSection = (one: ShoeWedges): Block[] => [
  heading('What is seen, and what to change'), introduction('Common practice of the trade; none of it is a finding about this client.', WIDTH),
  ...table([{ title: 'Seen or felt', width: 62 }, { title: 'Likely cause', width: 64 }, { title: 'Change', width: WIDTH - 126 }], signsFor(one).map((cells) => ({ cells }))),
];
