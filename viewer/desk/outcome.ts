import { figuresOf } from '../../src/checks/figures.ts';
import type { Design } from '../../src/checks/design.ts';
import { troubleWords } from '../../src/checks/troubleWords.ts';
import { design } from '../../src/design.ts';
import type { Drawing, Mark, Paper } from '../../src/exports/drawing.ts';
import { NoRoom, type Choice } from '../../src/exports/labels.ts';
import { planSheet } from '../../src/exports/planDrawing.ts';
import { sideOnScreen, type SideSheet } from '../../src/exports/sideDrawing.ts';
import { element } from '../../src/exports/svg.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { Extras } from './extras.ts';
import { handlesOf } from './handles.ts';
import { soleSeen } from './soleSeen.ts';
import { ordinaryShown, solidsShown } from './solidsShown.ts';
import type { Outcome, PlanShown, ShoeShown, Shown, SvgShown } from './protocol.ts';

/** What is shown, and where the labels of the side drawing came to stand. */
export interface Looked { readonly outcome: Outcome; readonly choices?: readonly Choice[] }

/**
 * What the page shows of a sheet: the same reading, design, checks and drawings as the command's. Pure.
 * @param chordGap how coarse the solids may be; coarser than the sheet asks while a hand is dragging, and then without the
 * mould and advice that must be solved first, and with the labels left where they stood `before`
 * @param extras what the solids asked for besides need
 */
export function outcomeOf(sheet: string, paper: Paper, chordGap: Mm, before: readonly Choice[] = [], extras: Extras = {}): Looked {
  const reading = readSheet(sheet);
  if (!reading.ok) return { outcome: { kind: 'faults', faults: reading.faults } };
  const coarse = chordGap > reading.fitting.making.chordGap, designing = design(asCoarse(reading.fitting, chordGap), coarse ? 'quick' : 'careful');
  if (!designing.ok) return { outcome: { kind: 'troubles', troubles: designing.troubles.map((trouble) => troubleWords(trouble, reading.fitting)) } };
  const side = sideOn(designing.design, paper, coarse ? before : []);
  return { outcome: { kind: 'shown', shown: shownOf(designing.design, side, coarse, extras) }, choices: side.choices };
}

function asCoarse(fitting: Fitting, chordGap: Mm): Fitting {
  const { making } = fitting;
  if (chordGap <= making.chordGap) return fitting;
  const { mould: _, ...rest } = making;
  return { ...fitting, making: { ...rest, chordGap } };
}

const PLAN: Paper = { width: 210, height: 287 };
/** Where everything finds room. */
const ROOMY: Paper = { width: 420, height: 226 };

/** On the paper asked for, or on a larger one where that is too small for all that stands on it. */
function sideOn(made: Design, asked: Paper, before: readonly Choice[]): SideSheet {
  try { return sideOnScreen(made, asked, before); }
  catch (error) {
    if (error instanceof NoRoom) return sideOnScreen(made, ROOMY, before);
    throw error;
  }
}

/** The plan hardly changes under a drag, so it waits until the hand rests. */
function shownOf(made: Design, { drawing: side, places }: SideSheet, coarse: boolean, extras: Extras): Shown {
  const { fitting, shoes, findings, mouldFaults } = made, solidsOf = solidsShown(made, extras);
  return {
    reference: fitting.job.reference, side: svgShown(side), ...(coarse ? {} : { plan: planShown(made) }), handles: handlesOf(made, places),
    places: places.map((view, i) => ({ side: shoes[i]!.side, view })),
    shoes: shoes.map((shoe): ShoeShown => ({ side: shoe.side, kind: shoe.kind, figures: figuresOf(shoe, fitting), solids: solidsOf(shoe), ...(coarse ? {} : ordinaryShown(shoe)) })),
    findings, mouldFaults,
  };
}

function planShown(made: Design): PlanShown {
  const { drawing, soles } = planSheet(made, PLAN);
  return { drawing, soles: soles.map(soleSeen) };
}

/** A mark that belongs to a number says so, and both answer together. */
const markUp = (mark: Mark): string => (mark.of === undefined ? element(mark) : `<g data-of="${mark.of}">${element(mark)}</g>`);

const svgShown = ({ paper, title, marks }: Drawing): SvgShown => ({
  paper, title, marks: marks.map(markUp), outlines: marks.filter((mark) => mark.kind === 'line' && mark.line === 'visible').map(element).join(''),
});
