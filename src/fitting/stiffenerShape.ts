import * as z from 'zod';
import { CLOTHS, CORES, FIBRES, INSOLES, WEAVES, type ClothName, type CoreName, type FibreName, type InsoleName } from '../materials/stiffeners.ts';
import { group, line, setting, word, yesNo } from './shapes.ts';
import { GRADES_WANTED, PACK_SIDES } from './words.ts';

const ownFibre = () => group({
  density: setting('order.stiffener.ownCloth.ownFibre.density', 'Density of the fibre.'),
  along: setting('order.stiffener.ownCloth.ownFibre.along', 'Modulus along the fibre.'),
  across: setting('order.stiffener.ownCloth.ownFibre.across', 'Modulus across the fibre.'),
  shear: setting('order.stiffener.ownCloth.ownFibre.shear', 'Shear modulus of the fibre.'),
  poisson: setting('order.stiffener.ownCloth.ownFibre.poisson', 'Poisson ratio along the fibre.'),
  pulled: setting('order.stiffener.ownCloth.ownFibre.pulled', 'Strain at which a ply laid of it fails when pulled along its fibres.'),
  pressed: setting('order.stiffener.ownCloth.ownFibre.pressed', 'Strain at which a ply laid of it fails when pressed along its fibres.'),
}).meta({ description: 'A fibre that is not on the list, by its data, in place of fibre.' });

const ownResin = () => group({
  name: line(40, 'What the papers call it.'),
  density: setting('order.stiffener.ownResin.density', 'Density of the cured resin.'),
  modulus: setting('order.stiffener.ownResin.modulus', 'Modulus of the cured resin.'),
  poisson: setting('order.stiffener.ownResin.poisson', 'Poisson ratio of the cured resin.'),
}).meta({ description: 'Another resin than laminating epoxy, by its data. Every cloth is laid with it.' });

const ownCloth = () => group({
  name: line(40, 'What the papers call it.'),
  fibre: word(Object.keys(FIBRES) as [FibreName, ...FibreName[]], 'Fibre it is made of; one of fibre and ownFibre.').optional(),
  ownFibre: ownFibre().optional(),
  weave: word(WEAVES, 'How it is woven.'),
  areal: setting('order.stiffener.ownCloth.areal', 'Weight of the dry cloth.'),
  thickness: setting('order.stiffener.ownCloth.thickness', 'Thickness of one ply as laid, where it was measured; from the resin where left out.').optional(),
}).meta({ description: 'A cloth that is not on the list, by its weight.' });

const measuredPly = () => group({
  name: line(40, 'What the papers call it.'),
  thickness: setting('order.stiffener.measuredPly.thickness', 'Thickness of one ply as laid.'),
  density: setting('order.stiffener.measuredPly.density', 'A weighed piece over its volume.'),
  along: setting('order.stiffener.measuredPly.along', 'Modulus along its first direction.'),
  across: setting('order.stiffener.measuredPly.across', 'Modulus across it.'),
  shear: setting('order.stiffener.measuredPly.shear', 'Shear modulus.'),
  poisson: setting('order.stiffener.measuredPly.poisson', 'Poisson ratio, drawing in across when pulled along.'),
  pulled: setting('order.stiffener.measuredPly.pulled', 'Strain at which it fails when pulled.'),
  pressed: setting('order.stiffener.measuredPly.pressed', 'Strain at which it fails when pressed.'),
  sheared: setting('order.stiffener.measuredPly.sheared', 'Shear strain at which it fails.'),
}).meta({ description: 'A finished ply that was measured on a test piece.' });

const ownCore = () => group({
  name: line(40, 'What the papers call it.'),
  density: setting('order.stiffener.ownCore.density', 'A weighed piece over its volume.'),
  modulus: setting('order.stiffener.ownCore.modulus', 'Modulus along the shoe.'),
  shear: setting('order.stiffener.ownCore.shear', 'Shear modulus between its two faces.'),
  shearStrength: setting('order.stiffener.ownCore.shearStrength', 'Shear stress at which it tears or splits.'),
  bendsTo: setting('order.stiffener.ownCore.bendsTo', 'Strain its faces bear when a sheet is bent cold: half its thickness over the radius. Where left out it takes the form of the last, moulded or warmed.').optional(),
  sheet: setting('order.stiffener.ownCore.sheet', 'Thickness of the sheets it is bought in; any where left out.').optional(),
}).meta({ description: 'A core that is not on the list, by its data.' });

const PLY_LIST = 'a list of 1 to 20 plies, from the bottom up';

const laidPly = group({
  pack: word(PACK_SIDES, 'Whether it lies below or above the core; either where there is none.'),
  angle: setting('order.stiffener.plies.angle', 'Its first direction against the long axis, 0 where left out. As the sole is seen from above with the toe pointing away: plus leans to the wearer\'s left on a left shoe, and mirrored on a right one.').optional(),
  cloth: line(40, 'Cloth of this ply: one of the list, or the name of ownCloth or measuredPly; that of the pack where left out.').optional(),
  resin: setting('order.stiffener.plies.resin', 'Resin in this ply, g for each g of cloth; as in the others where left out.').optional(),
  from: setting('order.stiffener.plies.from', 'Where a patch begins, from the heel; all along where left out.').optional(),
  to: setting('order.stiffener.plies.to', 'Where a patch ends, from the heel.').optional(),
}).meta({ description: 'A ply as it is laid.' });

const bench = () => group({
  mass: setting('order.stiffener.bench.mass', 'What was hung on the bare pack, clamped as its bench card says: up to 10 mm behind the tread line, which is square across where the last touches the bench.'),
  droop: setting('order.stiffener.bench.droop', 'How far the place it hung on went down, as the gauge there showed it.'),
  lever: setting('order.stiffener.bench.lever', 'How far ahead of the tread line it hung; the lever of its bench card where left out.').optional(),
  atTread: setting('order.stiffener.bench.atTread', 'How far the tread line went down, as a second gauge showed it: what the clamp gave is then taken off.').optional(),
}).meta({ description: 'The bench test of the pack that is told under plies. Once it was read a camber counts whole, and the pack as soft as it was found.' });

const shank = () => group({
  thickness: setting('order.stiffener.shank.thickness', 'Thickness of the strip.'),
  width: setting('order.stiffener.shank.width', 'Width of the strip.'),
  from: setting('order.stiffener.shank.from', 'Where it begins, from the heel.'),
  to: setting('order.stiffener.shank.to', 'Where it ends, from the heel.'),
}).meta({ description: 'A strip of hardened spring steel on the plate, let into the insole or its filler, so that the stack does not count it. With bond 0 it counts as if it were riveted at one end: it bends by itself.' });

/** What is wanted of the stiffener, or what is laid. */
export const stiffenerGroup = () => group({
  wanted: word(GRADES_WANTED, 'How stiff it is to be at the ball: rigid bends at most 1.5 degrees, slight flex at most 5; rigid where left out.').optional(),
  bendAtMost: setting('order.stiffener.bendAtMost', 'The most it is to bend at the ball under 0.125 N·m for each kg, in place of a grade.').optional(),
  cloth: word(Object.keys(CLOTHS) as [ClothName, ...ClothName[]], 'Cloth it is laid from; carbon twill 200 where left out.').optional(),
  outerCloth: word(['none', ...(Object.keys(CLOTHS) as ClothName[])], 'Cloth of the outermost ply on either side of a stiffener that is sought, against splitting and splinters; it counts among the plies. Carbon twill 200 where left out and the cloth runs one way only, none with any other.').optional(),
  ownCloth: ownCloth().optional(),
  measuredPly: measuredPly().optional(),
  ownResin: ownResin().optional(),
  resin: setting('order.stiffener.resin', 'Resin in the laid plies, g for each g of cloth; 1 where left out.').optional(),
  core: word(['none', ...(Object.keys(CORES) as CoreName[])], 'What lies between two packs. Where left out the lightest of leather board, birch plywood and cork is found, or none.').optional(),
  ownCore: ownCore().optional(),
  coreThickness: setting('order.stiffener.coreThickness', 'Thickness of the core; found where left out.').optional(),
  camber: setting('order.stiffener.camber', 'How much lower the middle of the plate lies than its edges at the ball; that of the last where left out. Counts half until the bench test was read.').optional(),
  edges: setting('order.stiffener.edges', 'Height to which the edges of the upper pack may be turned up; 0 where left out.').optional(),
  underFoam: yesNo('A lower pack may lie under the foam body, which then is the core; false where left out. Under plies: it does.').optional(),
  thicknessAtMost: setting('order.stiffener.thicknessAtMost', 'The most that plies and core together may be thick, 8 mm where left out.').optional(),
  bond: setting('order.stiffener.bond', 'How far foam body, insole and a steel shank bend as one with the plate: 0 where they slide or are not trusted to hold, 1 where they are glued all over and hold. 0 where left out: of foam and insole nothing is counted, the cautious side.').optional(),
  insole: word(Object.keys(INSOLES) as [InsoleName, ...InsoleName[]], 'What the insole is of, last.insole thick; it counts for as much as is bonded. Leather board where left out.').optional(),
  shank: shank().optional(),
  plies: z.array(laidPly, { error: PLY_LIST }).min(1, { error: PLY_LIST }).max(20, { error: PLY_LIST })
    .meta({ description: 'What is laid, from the bottom up. It is looked at as it is, and nothing is sought.' }).optional(),
  bench: bench().optional(),
}).meta({ description: 'What is wanted of the stiffener, or with plies what is laid.' });
