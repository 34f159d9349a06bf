import { deg, mm } from '../checks/say.ts';
import type { Fitting, Foot, PackOrder, SheetRocker, SheetMatch, ShoeFitting, ToeOrder } from '../fitting/fitting.ts';
import { inDegrees } from '../geometry/units.ts';

/** What was ordered, as lines of what and how much. */
export type Line = readonly [what: string, value: string];

export function jobLines({ job, wearer, units }: Fitting): Line[] {
  const given = (what: string, value: string | undefined): Line[] => value === undefined ? [] : [[what, value]];
  return [
    ['Job', job.reference], ['Date', job.date], ...given('Maker', job.maker),
    ...given('Prescribed by', job.prescriber), ...given('Prescribed on', job.prescribed), ...given('Note', job.note),
    ...given('Client', [wearer.sex, wearer.mass && `${wearer.mass.value.toFixed(0)} kg`, wearer.stature && `${mm(wearer.stature.value, 0)} tall`].filter(Boolean).join(', ') || undefined),
    ['Risks named', wearer.risks.join(', ') || (wearer.risksAsked ? 'none' : 'not asked about')],
    ['Leg difference', wearer.legDifference.correct === 0 ? `none to correct (${wearer.legDifference.found})` : `${mm(wearer.legDifference.correct)} to correct, shorter ${wearer.legDifference.shorter}, found by ${wearer.legDifference.found}`],
    ['Sheet written in', units === 'in' ? 'inches' : 'millimetres'],
  ];
}

export function orderLines({ foot, order }: ShoeFitting): Line[] {
  return [...(foot ? footLines(foot) : []), ...(order.kind === 'rocker' ? rockerLines(order) : matchLines(order)), ...buildLines(order)];
}

const footLines = ({ joint, state, ankleLocked, stance }: Foot): Line[] => [
  ['What must not bend', `${joint}, ${state}; ankle ${ankleLocked ? 'held' : 'free'}`],
  ...(stance.kind === 'locked' ? [['Ankle angle found by', stance.found] as const] : []),
];

function rockerLines({ apex, toe, standingFlat, crestAngle, stiffener, pack, minima, seatHeightAtLeast }: SheetRocker): Line[] {
  const { edge, seat, waist, tread, tip } = minima;
  return [
    ['Sole', 'rocker, full length'],
    ['Apex', apex === undefined ? 'left to the default' : `${(apex * 100).toFixed(1)} % of the last length, from the heel`],
    ['Toe arc', toeWords(toe)], ['Standing flat', mm(standingFlat)],
    ['Crest', `${deg(inDegrees(crestAngle))} to the long axis; 90° is square across`], ['Stiffener', pack ? packWords(pack, stiffener) : mm(stiffener)],
    ['Least thickness', `behind the strike point ${mm(edge)}, seat ${mm(seat)}, waist ${mm(waist)}, tread ${mm(tread)}, tip ${mm(tip)}`],
    ...(seatHeightAtLeast === undefined ? [] : [['Seat height', `at least ${mm(seatHeightAtLeast)}`] as const]),
  ];
}

const packWords = ({ wanted, bendAtMost, plies }: PackOrder, thickness: number): string =>
  `${plies ? 'laid as listed' : bendAtMost === undefined ? wanted : `to bend at most ${deg(inDegrees(bendAtMost))} at the ball`}, ${mm(thickness)}`;

function toeWords({ rule, radius, toeSpring, toeOff, endAngle }: ToeOrder): string {
  const end = endAngle === undefined ? '' : `, ended at ${deg(inDegrees(endAngle))} and run on straight`;
  switch (rule) {
    case 'pivot-to-toe': return `radius from the ankle pivot to the toe${end}`;
    case 'pivot-height': return `radius as the ankle pivot is high${end}`;
    case 'given': return `radius ${mm(radius!)}${end}`;
    case 'for-toe-spring': return `for a toe spring of the shoe of ${mm(toeSpring!)}${end}`;
    case 'for-toe-off': return `for a slope of ${deg(inDegrees(toeOff!))} at the tip${end}`;
  }
}

const matchLines = ({ tip }: SheetMatch): Line[] => [['Sole', 'plain raise for the shoe as it is now'], ['Left at the tip', tip === undefined ? 'as thin as the raise lets it be' : mm(tip)]];

function buildLines({ outsole, foam, taper, edgeBeyond: { heel, ball, toe } }: SheetRocker | SheetMatch): Line[] {
  const lean = (angle: number): string => deg(inDegrees(angle));
  return [
    ['Outsole', `${outsole.material}, ${mm(outsole.thickness)}`], ['Foam', foam],
    ['Walls lean in', `heel inner ${lean(taper.heelInner)}, heel outer ${lean(taper.heelOuter)}, forepart inner ${lean(taper.foreInner)}, forepart outer ${lean(taper.foreOuter)}`],
    ['Edge beyond the feather line', `heel ${mm(heel)}, ball ${mm(ball)}, toe ${mm(toe)}`],
  ];
}
