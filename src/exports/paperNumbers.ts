import type { Design } from '../checks/design.ts';
import { jobCardFor } from '../making/card/card.ts';
import type { Made } from '../making/made.ts';
import { solesOf } from './templates.ts';
import { stripsOf } from './templateWalls.ts';

/** What templates and job card are made with, for other programs; only what is ordered. */
export function paperNumbers(design: Design, made: Made): { readonly templates?: object; readonly card?: object } {
  const { templates, card } = design.fitting.making;
  return {
    ...(templates && { templates: { paper: templates.paper, overlapMm: templates.overlap, walls: wallNumbers(design) } }),
    ...(card && { card: cardNumbers(design, made) }),
  };
}

/** How long the walls are that the strips are wrapped round. */
const wallNumbers = (design: Design): object[] => solesOf(design).flatMap((sole) =>
  stripsOf(sole).map(({ side, topLength, footLength, stretch }) => ({ shoe: sole.shoe.side, side, upperEdgeMm: topLength, groundLineMm: footLength, stretchMm: stretch })));

function cardNumbers(design: Design, made: Made): object {
  const { way, phases } = jobCardFor(design, made), steps = phases.flatMap((phase) => phase.steps);
  return { way, steps: steps.map(({ number, day, step: { name } }) => ({ number, day, name })) };
}
