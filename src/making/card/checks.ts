import { mm, rounded } from '../../checks/say.ts';
import type { FigureKey } from '../../checks/figures.ts';
import { CLEARS } from '../../checks/raiseTip.ts';
import { inDegrees } from '../../geometry/units.ts';
import { FOAM_AT_BALL } from '../../profile/thinnest.ts';
import { GRADE_UP_TO } from '../../stiffener/grades.ts';
import { BENCH_MOMENT } from '../../stiffener/loads.ts';
import { springByWedge } from '../gauges/springByWedge.ts';
import { SPRING_WITHIN } from '../gauges/toeWedge.ts';
import { figureValues, type Bench } from './bench.ts';
import { foamAtBall, outsideWords, weightOutside, type Least } from './outside.ts';
import type { Check, SideValue } from './step.ts';

/** What a careful maker looks at, with this job's numbers. Pass values are common practice of the trade. */

const check = (name: string, pass: string, values: readonly SideValue[] = [], outside?: string): Check => ({ name, pass, values, ...(outside !== undefined && { outside }) });

/** Only what some shoe of the job has a number for. */
const ifAny = (bench: Bench, name: string, key: FigureKey, pass: string, least?: Least): Check[] => {
  const values = figureValues(bench, key);
  return values.length ? [check(name, pass, values, least && outsideWords(bench, key, least))] : [];
};

export function checksBefore(bench: Bench): Check[] {
  const { design: { fitting: { job }, shoes }, soles } = bench, several = shoes.length > 1;
  const stack = (part: 'outsole' | 'stiffener'): SideValue[] => soles.flatMap(({ shoe: { side }, parts: { shape } }) => shape[part] > 0 ? [{ side, text: mm(shape[part]) }] : []);
  return [
    check('Prescription: signed, side in words, date, who', [job.prescriber, job.prescribed].filter(Boolean).join(', ') || 'complete'),
    check('Measures taken twice by hand', 'agree within 2 mm; ankle pivot height and leg within 5 mm'),
    check('Left is left: engraved L and R, toe-out, every file looked at', 'not mirrored'),
    check('Scale of every print and plot', '100 mm line: 100 ± 0.3 mm, both ways'),
    ...ifAny(bench, 'Foot stands at the seat', 'standsSeat', several ? 'difference of the shoes as planned, ± 0.5 mm' : 'as ordered'),
    ...ifAny(bench, 'Foot stands at the ball', 'standsBall', several ? 'difference of the shoes as planned, ± 0.5 mm' : 'as ordered'),
    ...ifAny(bench, 'Thickness at the ball', 'thicknessTread', 'foam 6 mm or more, and the outsole', { least: FOAM_AT_BALL, codes: ['BALL_FOAM'], left: foamAtBall }), ...ifAny(bench, 'Thickness at the tip', 'thicknessTip', '4 mm or more', { least: 4, codes: ['THIN_FOAM'] }),
    ...ifAny(bench, 'Foam where it is thinnest', 'foamLeft', '2 mm or more', { least: 2, codes: ['THIN_FOAM'] }),
    check('Outsole counted in every radius', 'thickness as measured', stack('outsole')), check('Stiffener and lines of glue counted', 'listed', stack('stiffener')),
    ...ifAny(bench, 'Toe spring of the last, on the last itself', 'toeSpringOfLast', '± 1 mm'), ...ifAny(bench, 'Pitch of the sole: is it the pitch of the last', 'pitchOfSole', '± 1 mm over heel to ball'),
    ...ifAny(bench, 'Strike angle reached', 'strikeReached', 'as measured on the client, or noted as trimmed'), ...ifAny(bench, 'Toe-off angle reached', 'toeOff', 'as needed, or noted as trimmed'),
    ...ifAny(bench, 'Standing point from the heel, under the plumb line from the hip', 'standingPoint', '± 10 mm, tilt within 1°'),
    ...ifAny(bench, 'Ground face above the ground, at the tip of the last', 'toeSpringOfShoe', '15 mm or more, and no less than the old shoe', { least: CLEARS, codes: ['TOE_CLEARANCE', 'RAISE_TOE_CLEARANCE', 'RAISE_TOE_LOW'] }),
    ...weightCheck(bench), ...ifAny(bench, 'Side tipping', 'sideTipping', '16° or more, else flare', { least: 16, codes: ['SIDE_TIPPING'] }),
    check('Block, board, bed, reach of the tool', 'fits with 5 mm to spare'), check('Foam: grain, hardness with its scale, batch', 'written down'), check('Client has seen the outline of the shoes', 'signature'),
  ];
}

function weightCheck(bench: Bench): Check[] {
  const values = figureValues(bench, 'soleWeight'), several = bench.design.shoes.length > 1;
  return values.length ? [check('Weight of the sole', several ? 'the pair alike within 30 g' : 'noted', values, several ? weightOutside(bench) : undefined)] : [];
}

/** The wedge finds the end of the edge, which need not be under the tip of the last, where the figure is told. */
function wedgeCheck(bench: Bench): Check[] {
  const found = bench.soles.map(({ shoe, parts }) => ({ side: shoe.side, ...springByWedge(shoe, parts, bench.design.fitting) })), alike = new Set(found.map(({ where }) => where)).size === 1;
  const values = found.map(({ side, words, where }) => ({ side, text: alike ? words : `${words} ${where}` }));
  return values.length ? [check(`Toe spring by wedge${alike ? `, ${found[0]!.where}` : ''}`, `± ${SPRING_WITHIN} mm`, values)] : [];
}

/** Only of a shoe that was given one. */
function flatCheck(bench: Bench): Check[] {
  const flat = bench.design.shoes.filter((shoe) => shoe.kind === 'rocker' && shoe.order.standingFlat > 0).map(({ side }) => side), values = figureValues(bench, 'standingFlat').filter(({ side }) => flat.includes(side));
  return values.length ? [check('Standing flat, rolled on carbon paper', 'both ends ± 3 mm', values)] : [];
}

/** Held against the grades by which a stiffener is judged, under the moment that belongs to the client. */
function flexCheck(bench: Bench): Check {
  const { mass } = bench.design.fitting.wearer, most = (grade: keyof typeof GRADE_UP_TO): string => `${grade} ${Number(rounded(inDegrees(GRADE_UP_TO[grade]), 1))}° or less`;
  const load = `${BENCH_MOMENT} N·m for each kg${mass ? `, ${rounded(BENCH_MOMENT * mass.value, 1)} N·m` : ''}`;
  return check('Flex: heel clamped to the tread line, load at the toe', `${most('rigid')}, ${most('slight flex')}, at ${load}`, figureValues(bench, 'packBend'));
}

export function checksAfter(bench: Bench): Check[] {
  const rockers = bench.design.shoes.some(({ kind }) => kind === 'rocker');
  return [
    ...ifAny(bench, 'Foot stands at the seat: floor to insole, centre of the heel, pressed by hand', 'standsSeat', '± 1 mm; left to right as planned ± 1 mm (2 mm: do it again)'),
    ...ifAny(bench, 'Foot stands at the ball: floor to insole', 'standsBall', '± 1 mm; left to right as planned ± 1 mm'),
    ...wedgeCheck(bench), ...ifAny(bench, 'Thickness at the ball, by caliper', 'thicknessTread', '± 1 mm'),
    ...ifAny(bench, 'Apex, rolled on carbon paper or by feeler of 0.1 mm from both sides', 'apex', '± 3 mm, inner and outer edge'), ...flatCheck(bench),
    check('Stands by itself on plate glass', 'no wobble, 0.5° or less to the side'),
    ...(rockers ? [check('Rolls evenly heel to toe on plate glass', 'no jump, no stop, shoe turns less than 2°; gauge gap 0.3 mm in the mid arc, 0.7 mm at the ends'), check('Contact line square to the walking line', '± 3 mm, both edges leave together')] : []),
    ...ifAny(bench, 'Weight of the sole', 'soleWeight', '± 5 %'),
    ...(rockers ? [flexCheck(bench), check('Twist, ends by hand', 'none to be seen')] : []),
    check('Bond: thumb, thin blade of 0.1 mm', 'does not go in'), check('Edges and carbon: stocking drawn over', 'no snag'), check('Slip: dry and wet tile, by hand', 'textured at heel back and toe'),
    check('On the client: stand 30 s, 10 m four times, turn, one stair, slope', 'no step to save; pelvis level within 2 mm; "soft, no hill"'), check('Skin after 15 min', 'no mark that stays 15 min'),
  ];
}
