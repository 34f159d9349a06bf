import { figuresOf } from '../../src/checks/figures.ts';
import type { Design } from '../../src/checks/design.ts';
import { troubleWords } from '../../src/checks/troubleWords.ts';
import { designWith } from '../../src/designWith.ts';
import type { Drawing, Mark, Paper } from '../../src/exports/drawing.ts';
import { NoRoom, type Choice } from '../../src/exports/labels.ts';
import { planSheet } from '../../src/exports/planDrawing.ts';
import { sideOnScreen, type SideSheet } from '../../src/exports/sideDrawing.ts';
import { element } from '../../src/exports/svg.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import type { Mm } from '../../src/geometry/units.ts';
import { namesBeside } from '../../src/making/shownNames.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import type { Extras } from './extras.ts';
import { handlesOf } from './handles.ts';
import { withLeaveOut } from './leaveOut.ts';
import { soleSeen } from './soleSeen.ts';
import { ordinaryShown, solidsShown } from './solidsShown.ts';
import { usedIn } from './used.ts';
import type { Ask, Outcome, PlanShown, ShoeShown, Shown, SvgShown } from './protocol.ts';

/** What is asked for; lengths in the sheet's own unit where none is told. */
export interface Look extends Pick<Extract<Ask, { kind: 'design' }>, 'sheet' | 'paper' | 'chordGap'> { readonly lengths?: LengthUnit }

/** What is shown, and where the labels of the side drawing came to stand. */
export interface Looked { readonly outcome: Outcome; readonly choices?: readonly Choice[] }

/**
 * What the page shows of a sheet: the same reading, design, checks and drawings as the command's. Pure.
 * `chordGap` is how coarse the solids may be; coarser than the sheet asks while a hand is dragging, and then without the
 * mould and advice that must be solved first, and with the labels left where they stood `before`. Sentences name lengths in
 * the unit shown.
 * @param extras what the solids asked for besides need
 */
export function outcomeOf({ sheet, paper, lengths, chordGap }: Look, before: readonly Choice[] = [], extras: Extras = {}): Looked {
  const reading = readSheet(sheet, lengths);
  if (!reading.ok) return { outcome: { kind: 'faults', faults: withLeaveOut(sheet, reading.faults, lengths) } };
  const { fitting } = reading, coarse = chordGap > fitting.making.chordGap;
  // Once a sheet is read its units only say what checks and mould faults speak in; what goes back into the sheet is in its own.
  const designing = designWith(extras.find ?? (() => []), { ...asCoarse(fitting, chordGap), units: lengths ?? fitting.units }, coarse ? 'quick' : 'careful');
  if (!designing.ok) return { outcome: { kind: 'troubles', troubles: designing.troubles.map((trouble) => troubleWords(trouble, fitting, lengths)) } };
  const side = sideOn(designing.design, paper, coarse ? before : []);
  return { outcome: { kind: 'shown', shown: shownOf(designing.design, fitting, side, coarse, coarse ? withoutBeside(extras) : extras) }, choices: side.choices };
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

/** What is made besides waits until the hand rests. */
const withoutBeside = ({ beside: _, ...others }: Extras): Extras => others;

/** @param read what the sheet says, in its own units. The plan hardly changes under a drag, so it waits until the hand rests. */
function shownOf(made: Design, read: Fitting, { drawing: side, places }: SideSheet, coarse: boolean, extras: Extras): Shown {
  const { fitting, shoes, findings, besides, mouldFaults } = made, solidsOf = solidsShown(made, extras);
  return {
    side: svgShown(side), ...(coarse ? {} : { plan: planShown(made), used: usedIn(made), ...extras.walk?.(made), ...extras.packs?.(made) }), handles: handlesOf(made, places, read.units),
    places: places.map((view, i) => ({ side: shoes[i]!.side, view })),
    shoes: shoes.map((shoe): ShoeShown => ({ side: shoe.side, kind: shoe.kind, figures: figuresOf(shoe, fitting), stiffener: partsOf(shoe)?.shape.stiffener ?? 0, solids: solidsOf(shoe), ...(coarse ? {} : ordinaryShown(shoe)) })),
    findings, besides, mouldFaults, ...(coarse ? {} : { beside: namesBeside(read.making, made) }),
  };
}

function planShown(made: Design): PlanShown {
  const { drawing: { paper, title, marks }, soles } = planSheet(made, PLAN);
  return { drawing: { paper, title, marks: marks.map((mark) => markUp(mark, reachOf(mark))) }, soles: soles.map(soleSeen) };
}

/** A mark that belongs to a number says so, and both answer together. */
const markUp = (mark: Mark, more = ''): string => (mark.of === undefined ? element(mark) : `<g data-of="${mark.of}">${element(mark)}${more}</g>`);

/** A hairline is hard to hit: an unseen wide one lies with it. */
const reachOf = (mark: Mark): string => (mark.kind === 'line' ? element(mark).replace('<path ', '<path class="reach" ') : '');

const svgShown = ({ paper, title, marks }: Drawing): SvgShown => ({
  paper, title, marks: marks.map((mark) => markUp(mark)), outlines: marks.filter((mark) => mark.kind === 'line' && mark.line === 'visible').map(element).join(''),
});
