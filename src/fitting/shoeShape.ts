import * as z from 'zod';
import { FOAMS, OUTSOLES, type FoamName, type OutsoleName } from '../materials/materials.ts';
import { ankleMeasure, group, lengthOrSize, line, measure, rows, setting, word } from './shapes.ts';
import { stiffenerGroup } from './stiffenerShape.ts';
import { FREEDOMS, JOINTS, JOINT_STATES, TOE_RULES, TOE_SHAPES } from './words.ts';

const heelPlates = () => group({
  height: measure('foot.heelPlates.height', 'Height of the plates under the heel end of a stiff board at which the client stands at ease.'),
  span: measure('foot.heelPlates.span', 'Length of the board between the plates and where its front end rests.'),
  hipAhead: measure('foot.heelPlates.hipAhead', 'Plumb line from the trochanter to the ankle mark, horizontally, standing at ease on the plates.'),
}).meta({ description: 'The preferred way to find a fixed ankle angle: 2 mm heel plates under a stiff flat board until the client stands at ease, then a plumb line.' });

const prosthesis = () => group({
  heelRise: measure('foot.prosthesis.heelRise', 'Heel rise the prosthetic foot was aligned to: heel thickness less forefoot thickness of the shoe.'),
  shankLean: measure('foot.prosthesis.shankLean', 'Aligned lean of the shank, forward is positive; 0 where left out.').optional(),
  prosthetist: line(80, 'Name of the prosthetist who agrees with another heel rise.').optional(),
}).meta({ description: 'How the prosthetic foot was aligned.' });

const walk = () => group({
  angles: group({
    contact: measure('foot.walk.angles.contact', 'Shank at heel contact, against upright; leaning back is negative. Side video, a line from ankle to knee.'),
    midStance: measure('foot.walk.angles.midStance', 'Shank half way through stance, as the other foot passes, against upright; forward is positive. Side video.'),
    toeOff: measure('foot.walk.angles.toeOff', 'Shank as the toe leaves the floor, against upright; forward is positive. Side video.'),
  }).meta({ description: 'Three angles from a side video, as a phone takes it.' }).optional(),
  table: rows('A pasted table, heel contact to toe-off: share of stance in %, shank angle in degrees (forward of upright positive), and where known the upright push in N or in % of body weight. Columns apart by tabs, semicolons, commas or spaces.').optional(),
}).meta({ description: 'How this leg walks, as angles or as a table; the mean of seven people, marked as an estimate, where left out.' });

const foot = () => group({
  stiff: group({
    joint: word(JOINTS, 'What must not bend.'),
    state: word(JOINT_STATES, 'Why it must not bend. "prosthetic" goes with the whole foot.'),
  }).meta({ description: 'The joint the rocker stands in for.' }),
  length: lengthOrSize('foot.length', 'Heel back to longest toe, parallel to the foot axis, standing; size stick or outline.'),
  ballInner: measure('foot.ballInner', 'Heel back to the centre of the big-toe joint; outline and feel. Estimated from foot length where left out.').optional(),
  ballOuter: measure('foot.ballOuter', 'Heel back to the little-toe joint; outline and feel. Estimated from foot length where left out.').optional(),
  pivotForward: measure('foot.pivotForward', 'Heel back to the ankle pivot, horizontally; square against wall and heel. Must be measured where the ankle is locked.').optional(),
  pivotHeight: measure('foot.pivotHeight', 'Sole of the bare foot to the ankle pivot, standing; mark both ankle bones, block and square. Must be measured where the ankle is locked, or malleolusHeight.').optional(),
  malleolusHeight: measure('foot.malleolusHeight', 'Floor to the most lateral point of the outer ankle bone, barefoot; the pivot is taken 5 mm above it.').optional(),
  hipHeight: measure('foot.hipHeight', 'Floor to the hip joint (upper edge of the greater trochanter), barefoot, standing. Estimated from crotch height or stature where left out.').optional(),
  hipAhead: measure('foot.hipAhead', 'Only for a free ankle: trochanter ahead of the ankle mark in quiet standing, horizontally; plumb line.').optional(),
  ankleAngle: ankleMeasure('Only for a fixed ankle: shin from square to the sole, knee straight, loaded; positive where the shin leans forward of square (toes up), negative for a pointed foot. Or give heelPlates, not both.').optional(),
  heelPlates: heelPlates().optional(),
  prosthesis: prosthesis().optional(),
  strikeAngle: measure('foot.strikeAngle', 'Tilt of the shoe at heel strike, toes up, as a positive angle; side video. 25° where left out.').optional(),
  toeOffAngle: measure('foot.toeOffAngle', 'Tilt of the shoe at toe-off, heel up, as a positive angle; side video.').optional(),
  ankleRange: measure('foot.ankleRange', 'Only for an ankle that must not bend: movement it has left, up and down together, loaded; none where left out.').optional(),
  walk: walk().optional(),
}).meta({ description: 'The foot, measured barefoot and standing. Needed for a rocker.' });

const HEIGHT_LIST = 'a list of 3 to 500 pairs [forward, height]';

const last = () => group({
  length: lengthOrSize('last.length', 'Last bottom, heel to toe; stick on the last. Foot length + 15 mm where left out.').optional(),
  pitch: measure('last.pitch', 'Seat above tread; gauge at two points. Needed for a rocker.').optional(),
  toeSpring: measure('last.toeSpring', 'Tip of the last bottom above the tread plane, last on its heel block; wedge gauge; needed for a rocker, 8 mm where the line is left out for a match.').optional(),
  seatLength: measure('last.seatLength', 'Length of the flat heel part of the last bottom. A quarter of the last length where left out.').optional(),
  tread: measure('last.tread', 'Heel end of the last bottom to where it bears at the ball. 0.715 of the last length where left out.').optional(),
  heelBack: measure('last.heelBack', 'How far the heel of the foot stands out behind the last bottom. 0 where left out.').optional(),
  camber: measure('last.camber', 'How much lower the middle of the last bottom lies than its edges at the ball. 0 where left out.').optional(),
  ballWidth: measure('last.ballWidth', 'Width of the last bottom at the ball; print or caliper; estimated where the line is left out.').optional(),
  heelWidth: measure('last.heelWidth', 'Width of the last bottom at the seat; caliper; estimated where the line is left out.').optional(),
  toeShape: word(TOE_SHAPES, 'Shape of the toe in plan; round where left out.').optional(),
  inflare: measure('last.inflare', 'How far the toe is set to the inner side; negative is out-flare. 4 mm where left out.').optional(),
  insole: measure('last.insole', 'All that stays between the foot and the face the sole is glued to, without the stiffener. 4 mm where left out.').optional(),
  heights: z.array(z.tuple([
    setting('last.heights.forward', 'From the heel end of the last bottom, forward.'),
    setting('last.heights.up', 'Height of the bottom above the tread plane there.'),
  ], { error: 'a pair [forward, height]' }), { error: HEIGHT_LIST }).max(500, { error: HEIGHT_LIST })
    .meta({ description: 'Measured heights of the bottom above the tread plane, heel to toe, in place of the smooth curve. Unit: mm or in.' }).optional(),
}).meta({ description: 'The bottom of the last.' });

const taper = () => group({
  heelInner: setting('order.taper.heelInner', 'Lean of the inner heel wall in towards the ground; negative is flare.').optional(),
  heelOuter: setting('order.taper.heelOuter', 'Lean of the outer heel wall in towards the ground; negative is flare.').optional(),
  foreInner: setting('order.taper.foreInner', 'Lean of the inner forepart wall in towards the ground; negative is flare.').optional(),
  foreOuter: setting('order.taper.foreOuter', 'Lean of the outer forepart wall in towards the ground; negative is flare.').optional(),
}).meta({ description: 'Lean of the side walls, 0 where left out.' });

const edgeBeyond = () => group({
  heel: setting('order.edgeBeyond.heel', 'At the heel.').optional(),
  ball: setting('order.edgeBeyond.ball', 'At the ball.').optional(),
  toe: setting('order.edgeBeyond.toe', 'At the toe.').optional(),
}).meta({ description: 'How far the edge of the sole stands outside the feather line, 0 where left out.' });

const outsole = () => group({
  thickness: setting('order.outsole.thickness', 'Thickness of the outsole, 2 mm where left out.').optional(),
  material: word(Object.keys(OUTSOLES) as [OutsoleName, ...OutsoleName[]], 'Material of the outsole; microcellular rubber where left out.').optional(),
}).meta({ description: 'The outsole.' });

const build = () => ({
  taper: taper().optional(),
  edgeBeyond: edgeBeyond().optional(),
  outsole: outsole().optional(),
  foam: word(Object.keys(FOAMS) as [FoamName, ...FoamName[]], 'Foam of the body; firm EVA where left out.').optional(),
});

const toe = () => group({
  rule: word(TOE_RULES, 'How the toe arc gets its radius: ankle pivot to toe, pivot height, a given radius, or worked back from a wanted toe spring or toe-off angle.'),
  radius: setting('order.toe.radius', 'Only with rule "given": radius of the toe arc.').optional(),
  toeSpring: setting('order.toe.toeSpring', 'Only with rule "for-toe-spring": wanted toe spring of the shoe.').optional(),
  toeOffAngle: setting('order.toe.toeOffAngle', 'Only with rule "for-toe-off": wanted roll angle at the tip.').optional(),
  endAngle: setting('order.toe.endAngle', 'Roll angle at which the toe arc ends and runs on straight.').optional(),
}).meta({ description: 'The toe arc; ankle pivot to toe where left out.' });

const minima = () => group({
  edge: setting('order.minima.edge', 'Behind the strike point, 4 mm where left out.').optional(),
  seat: setting('order.minima.seat', 'Under the seat, 8 mm where left out.').optional(),
  waist: setting('order.minima.waist', 'Under the waist, 8 mm where left out.').optional(),
  tread: setting('order.minima.tread', 'Under the tread, 8 mm where left out.').optional(),
  tip: setting('order.minima.tip', 'At the tip, 5 mm where left out.').optional(),
}).meta({ description: 'Least thickness of stiffener, foam and outsole together, by zone, measured upright.' });

const span = (of: 'apex' | 'toeRadius' | 'standingFlat' | 'strikeAngle' | 'pitch' | 'lastSpring', about: string) => group({
  least: setting(`order.targets.spans.${of}.least`, 'The least it may become.').optional(),
  most: setting(`order.targets.spans.${of}.most`, 'The most it may become.').optional(),
}).meta({ description: about });

const FREE_LIST = `a list of what may be changed, each once, of: ${FREEDOMS.join(', ')}`;

const targets = () => group({
  seatHeightAtMost: setting('order.targets.seatHeightAtMost', 'The seat is to stand at most this high: floor to the face the sole is glued to, at the centre of the seat.').optional(),
  ballHeightAtMost: setting('order.targets.ballHeightAtMost', 'The ball is to stand at most this high: floor to the face the sole is glued to, at the tread.').optional(),
  ballThicknessAtMost: setting('order.targets.ballThicknessAtMost', 'The edge of the sole at the ball, as it is seen from the side, is to be at most this thick.').optional(),
  tipAtMost: setting('order.targets.tipAtMost', 'The sole is to be at most this thick at the tip.').optional(),
  tipWanted: setting('order.targets.tipWanted', 'Thickness at the tip that is wanted; no limit: what it is missed by counts as a loss.').optional(),
  toeSpringAtLeast: setting('order.targets.toeSpringAtLeast', 'The toe spring of the shoe is to be at least this.').optional(),
  toeSpringAtMost: setting('order.targets.toeSpringAtMost', 'The toe spring of the shoe is to be at most this.').optional(),
  weightAtMost: setting('order.targets.weightAtMost', 'The sole is to weigh at most this.').optional(),
  seatDifferenceAtMost: setting('order.targets.seatDifferenceAtMost', 'The seats of both shoes may differ by at most this before they are brought level: by how much one of them is raised.').optional(),
  free: z.array(word(FREEDOMS, 'A measure that may be changed.'), { error: FREE_LIST }).min(1, { error: FREE_LIST }).max(FREEDOMS.length, { error: FREE_LIST })
    .meta({ description: `What may be changed to keep to the limits, of: ${FREEDOMS.join(', ')}. All else stays as it is ordered.` }),
  spans: group({
    apex: span('apex', 'How far the apex may be moved; 52 to 78 % where left out, for a stiff toe joint never ahead of where it lets the apex be.').optional(),
    toeRadius: span('toeRadius', 'How short and how long the toe arc may become; from the height of the ankle pivot to twice its distance to the toe where left out.').optional(),
    standingFlat: span('standingFlat', 'How long the standing flat may be; 0 to what is ordered where left out.').optional(),
    strikeAngle: span('strikeAngle', 'How far the heel arc may be cut short; 10 degrees to what is asked where left out.').optional(),
    pitch: span('pitch', 'How far the pitch may be changed, on another last or an altered one; 3 mm less to 3 mm more where left out.').optional(),
    lastSpring: span('lastSpring', 'How far the toe spring of the last may be changed, on another last or an altered one; what it is to 20 mm where left out.').optional(),
  }).meta({ description: 'How far each may be changed, where not as is usual.' }).optional(),
}).meta({ description: 'Working backwards: limits on what is seen of the shoe, and what may be changed to keep to them. rockerbench seek looks for the best rocker within them and says what it loses. What is made stays as it is ordered.' });

const kind = <Kind extends 'rocker' | 'match'>(name: Kind, about: string) => z.literal(name).meta({ description: about });

const rocker = () => group({
  kind: kind('rocker', 'A stiff sole that rolls.'),
  apex: setting('order.apex', 'Where the toe arc begins, of the last length from the heel. By rule where left out.').optional(),
  toe: toe().optional(),
  standingFlat: setting('order.standingFlat', 'Length of the flat to stand on, 0 where left out.').optional(),
  crestAngle: setting('order.crestAngle', 'Apex line against the long axis; 90 is square across, more lies further forward on the inner side. 90 where left out.').optional(),
  ...build(),
  stiffener: z.union([setting('order.stiffener', 'Thickness of the stiffener.'), stiffenerGroup()], { error: 'a thickness in mm or inches, or a group of what is wanted or laid' })
    .meta({ description: 'Thickness of the stiffener, 1.5 mm where left out; or what is wanted of it, and its plies are found; or what is laid. Unit: mm or in.' }).optional(),
  minima: minima().optional(),
  seatHeightAtLeast: setting('order.seatHeightAtLeast', 'The seat is to stand at least this high above the ground.').optional(),
  targets: targets().optional(),
});

const match = () => group({
  kind: kind('match', 'The other shoe, raised to stand level.'),
  seatHeightNow: measure('order.seatHeightNow', 'Floor to where the heel stands, inside the shoe at the centre of the seat, as the shoe is now; height gauge.'),
  ballHeightNow: measure('order.ballHeightNow', 'Floor to where the ball stands, inside the shoe, as the shoe is now; height gauge.'),
  tip: setting('order.tip', 'Thickness left at the tip. Where left out: 5 mm, or more where the toe would turn up too steeply or the foam grow too thin.').optional(),
  ...build(),
});

/** A rocker needs its foot, and a last whose pitch and spring were measured. */
const ROCKER_NEEDS = {
  if: { properties: { order: { properties: { kind: { const: 'rocker' } }, required: ['kind'] } } },
  then: { required: ['foot'], properties: { last: { required: ['pitch', 'toeSpring'] } } },
};

export const SHOE = group({
  foot: foot().optional(),
  last: last(),
  upperWeight: setting('upperWeight', 'Weight of the upper with all that is not the sole, so that the whole shoe can be weighed.').optional(),
  order: z.discriminatedUnion('kind', [rocker(), match()], { error: 'a group of fields with kind "rocker" or "match"' })
    .meta({ description: 'What is to be made: kind "rocker", or kind "match" for the other shoe.' }),
}).meta({ id: 'shoe', ...ROCKER_NEEDS });

export type RawShoe = z.infer<typeof SHOE>;
