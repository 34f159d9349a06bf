import * as z from 'zod';
import { CASTS, FOAMS, type CastName, type FoamName } from '../materials/materials.ts';
import { group, line, setting, word, yesNo } from './shapes.ts';
import { BLOCK_FACES, CLOSINGS, CUTTER_ENDS, JIG_FACES, MOULD_MAKERS, MOULD_PARTS, PAPER_SIZES, SHORE_SCALES, WAYS_OF_MAKING } from './words.ts';

const shrink = group({
  length: setting('making.mould.shrink.length', 'Along the shoe; that of the material where left out.').optional(),
  width: setting('making.mould.shrink.width', 'Across the shoe; that of the material where left out.').optional(),
  height: setting('making.mould.shrink.height', 'Upwards; that of the material where left out.').optional(),
}).meta({ description: 'How much the cast part shrinks by your own data sheet or trial piece; the cavity is made that much larger than the part: at 1.2 %, 101.2 mm for 100 mm. Data sheets may tell it of the mould instead, which at that differs by 0.01 mm in 100.' });

const mould = group({
  part: word(MOULD_PARTS, 'What is cast in the mould; the foam body where left out.').optional(),
  material: word(Object.keys(CASTS) as [CastName, ...CastName[]], 'What it is cast of; self-skinning PU where left out. It says how much the part shrinks and weighs, unless you do.').optional(),
  density: setting('making.mould.density', 'Density of the set part by your data sheet or a trial piece; that of the material where left out.').optional(),
  by: word(MOULD_MAKERS, 'What the mould is made on; routed where left out. A printed one is cut across into pieces that go on making.printBed.').optional(),
  draft: setting('making.mould.draft', 'Lean the walls need for the part to come out, 3 where left out.').optional(),
  shrink: shrink.optional(),
  rim: setting('making.mould.rim', 'Width of the rim round the cavity, 20 mm where left out, 28 mm where foam is pressed.').optional(),
  closing: word(CLOSINGS, 'What holds lid and cavity together; bolts where left out and the rim has room for them, else clamps.').optional(),
  bolt: setting('making.mould.bolt', 'Diameter of the bolt holes, 6.6 mm (for bolts of 6 mm) where left out.').optional(),
  ledge: setting('making.mould.ledge', 'Width that the jaws of the clamps want, 20 mm where left out.').optional(),
  floor: setting('making.mould.floor', 'Least thickness under the cavity and of the lid, 12 mm where left out.').optional(),
  dowel: setting('making.mould.dowel', 'Diameter of the dowels, 8 mm where left out.').optional(),
  pourHole: setting('making.mould.pourHole', 'Diameter of the pour hole, 12 mm where left out.').optional(),
  ventHole: setting('making.mould.ventHole', 'Diameter of the vent holes, 3 mm where left out.').optional(),
  split: yesNo('Cavity split along the shoe into two halves, for walls that flare; false where left out.').optional(),
}).meta({ description: 'A mould to cast the part in.' });

const RACK_LIST = 'a list of 1 to 60 sheets of material';

const rackSheet = group({
  name: line(40, 'What the rack calls it.'),
  material: word(Object.keys(FOAMS) as [FoamName, ...FoamName[]], 'Foam it is; where left out it is taken for the foam ordered (order.foam), if its name says nothing else and its density is within 30 %.').optional(),
  thickness: setting('making.rack.thickness', 'As measured on the sheet itself: labels are up to half a millimetre off.'),
  hardness: group({
    value: setting('making.rack.hardness', 'The reading.'),
    scale: word(SHORE_SCALES, 'The scale it was read on.'),
  }).meta({ description: 'Hardness, with its scale.' }).optional(),
  density: setting('making.rack.density', 'A weighed piece over its volume.'),
  price: setting('making.rack.price', 'Price of a square metre, in your own money.').optional(),
  length: setting('making.rack.length', 'Length of the sheet.'),
  width: setting('making.rack.width', 'Width of the sheet.'),
}).meta({ description: 'A sheet of material in the rack.' });

const board = group({
  thickness: setting('making.board.thickness', 'As measured on the board itself, 6 mm where left out: labels are up to 10 % off, and slots are cut to it.').optional(),
  length: setting('making.board.length', 'Length of the board, 600 mm where left out.').optional(),
  width: setting('making.board.width', 'Width of the board, 400 mm where left out.').optional(),
  kerf: setting('making.board.kerf', 'Width of the cut, of the beam or of the cutter, 0.15 mm where left out.').optional(),
  clearance: setting('making.board.clearance', 'How much wider a slot is than the board that goes in, 0.1 mm where left out.').optional(),
  apart: setting('making.board.apart', 'Least distance between two parts and to the edge of the board, 5 mm where left out.').optional(),
}).meta({ description: 'The board that jigs, gauges and wedges are cut from, and the machine that cuts it.' });

const block = group({
  length: setting('making.block.length', 'Length of the block, 380 mm where left out.').optional(),
  width: setting('making.block.width', 'Width of the block, 170 mm where left out.').optional(),
  sheet: setting('making.block.sheet', 'Thickness of one sheet of the block, 20 mm where left out.').optional(),
  sheets: setting('making.block.sheets', 'How many sheets are glued up; as many as are needed where left out.').optional(),
  faces: word(BLOCK_FACES, 'Which faces of the foam body are cut in the block; both where left out.').optional(),
  margin: setting('making.block.margin', 'Foam left between the part and dowels, and to the edge of the block, 10 mm where left out.').optional(),
  dowel: setting('making.block.dowel', 'Diameter of the dowels the block is turned over on, 8 mm where left out.').optional(),
  tabWidth: setting('making.block.tabWidth', 'Width of the tabs that hold the part, 7 mm where left out.').optional(),
  tabHeight: setting('making.block.tabHeight', 'Height of the tabs, 2.5 mm where left out.').optional(),
  scallop: setting('making.block.scallop', 'Height of the ridges that a ball end may leave, 0.1 mm where left out.').optional(),
}).meta({ description: 'Foam bodies cut from a block on a router.' });

const print = group({
  part: word(MOULD_PARTS, 'What is printed; the foam body where left out.').optional(),
  split: yesNo('In two parts, joined at the waist; false where left out.').optional(),
  pin: setting('making.print.pin', 'Diameter of the pins that join two parts, 6 mm where left out.').optional(),
  clearance: setting('making.print.clearance', 'Gap left round pins and key, 0.25 mm where left out.').optional(),
}).meta({ description: 'Soles as a printer takes them.' });

const jig = group({
  face: word(JIG_FACES, 'Which face the rails carry: the ground face, or the foam body before its outsole is on, for a hot wire or a sanding block; the ground face where left out, and a cutter is then set below its runners by the outsole.').optional(),
  ribsApart: setting('making.jig.ribsApart', 'Largest distance between the ribs of the cradle, 35 mm where left out.').optional(),
  room: setting('making.jig.room', 'Room beside the sole for the upper and its padding, 12 mm where left out.').optional(),
  depth: setting('making.jig.depth', 'How far the lasted upper hangs down from its feather line when it lies upside down, 100 mm where left out; more for a boot.').optional(),
  bush: group({
    diameter: setting('making.jig.bush.diameter', 'Outer diameter of the guide bush.'),
    cutter: setting('making.jig.bush.cutter', 'Diameter of the cutter in it.'),
  }).meta({ description: 'A router with a guide bush that runs along the rails; left out for a sled, a hot wire or a sanding block that touches the rails themselves.' }).optional(),
}).meta({ description: 'A cradle for the lasted shoe, and rails that carry the arcs.' });

const gauges = group({
  depth: setting('making.gauges.depth', 'How far the body of a gauge reaches beyond the line it is held to, 30 mm where left out; less than 25 mm leaves no room for its lettering.').optional(),
}).meta({ description: 'Gauges to hold against the work.' });

const stack = group({
  glueLine: setting('making.stack.glueLine', 'Thickness of one line of glue, 0.15 mm where left out.').optional(),
  trim: setting('making.stack.trim', 'Left standing all round for the grinding wheel, 2.5 mm where left out.').optional(),
  layerSaves: setting('making.stack.layerSaves', 'A layer more is taken only where it saves foam of this thickness over the whole sole, 1 mm where left out; 0 for the least foam ground away, however many layers that takes.').optional(),
  apart: setting('making.stack.apart', 'Least distance between two layers on a sheet and to its edge, 3 mm where left out.').optional(),
  heel: line(40, 'Name of the sheet in the rack for all layers under the heel but the first, where those are to be harder or softer; any sheet where left out.').optional(),
  forepart: line(40, 'Name of the sheet in the rack for all layers ahead of the ball but the first; any sheet where left out.').optional(),
}).meta({ description: 'Soles built up from the sheets in the rack.' });

const plies = group({
  rollWidth: setting('making.plies.rollWidth', 'Width of the cloth on its roll, 1000 mm where left out.').optional(),
  stagger: setting('making.plies.stagger', 'How far the edges of any two plies keep from each other, so that no two end at one line, 1 mm where left out.').optional(),
  spare: setting('making.plies.spare', 'Resin mixed beyond what stays in the plies, for brush, cup and peel ply, 15 where left out; 10 to 20 is usual.').optional(),
  hardener: setting('making.plies.hardener', 'Grams of hardener to 100 g of resin, by the data sheet of the resin; 30 where left out, which may be wrong for yours.').optional(),
}).meta({ description: 'The plies of the stiffener: outlines, cloth, resin, how they are laid, and a bench test.' });

const templates = group({
  paper: word(PAPER_SIZES, 'Paper of the printer; A4 where left out.').optional(),
  overlap: setting('making.templates.overlap', 'Strip along which two pages are glued, 10 mm where left out.').optional(),
}).meta({ description: 'Paper templates in true size.' });

const wedges = group({
  step: setting('making.wedges.step', 'How far the apex moves either way for the trial, 5 mm where left out.').optional(),
  flat: setting('making.wedges.flat', 'Standing flat of the wedges that have one, 30 mm where left out.').optional(),
}).meta({ description: 'Trial wedges to walk on before the sole is made for good.' });

const card = group({
  way: word(WAYS_OF_MAKING, 'How the soles are made; from what else is ordered where left out.').optional(),
}).meta({ description: 'The card that walks with the shoes through the workshop.' });

/** What the workshop has and wants. */
export const MAKING = group({
  chordGap: setting('making.chordGap', 'How finely the solids are cut into flat facets: the largest gap between a facet and the true surface, 0.05 mm where left out. Less is smoother and makes larger files.').optional(),
  tool: group({
    diameter: setting('making.tool.diameter', 'Diameter of the cutter.'),
    reach: setting('making.tool.reach', 'How deep the cutter reaches.'),
    end: word(CUTTER_ENDS, 'Shape of its end; ball where left out.').optional(),
  }).meta({ description: 'The cutter that will be used.' }).optional(),
  printBed: group({
    x: setting('making.printBed.x', 'Width.'), y: setting('making.printBed.y', 'Depth.'), z: setting('making.printBed.z', 'Height.'),
  }).meta({ description: 'Room the printer has.' }).optional(),
  board: board.optional(),
  rack: z.array(rackSheet, { error: RACK_LIST }).min(1, { error: RACK_LIST }).max(60, { error: RACK_LIST })
    .meta({ description: 'The sheets of foam, cork or rubber in the rack, each as measured; a usual rack where left out.' }).optional(),
  mould: mould.optional(),
  block: block.optional(),
  print: print.optional(),
  jig: jig.optional(),
  gauges: gauges.optional(),
  stack: stack.optional(),
  plies: plies.optional(),
  templates: templates.optional(),
  wedges: wedges.optional(),
  card: card.optional(),
}).meta({ description: 'What the workshop has and wants.' });
