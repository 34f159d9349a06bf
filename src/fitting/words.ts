/** The fixed words a sheet may use, with their meaning beside them. Lists drive the types, the schema and the messages. */

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];
export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** What must not bend. */
export const JOINTS = ['toe joint', 'midfoot', 'ankle', 'whole foot'] as const;
export type Joint = (typeof JOINTS)[number];

export const JOINT_STATES = ['arthritic', 'fused', 'prosthetic'] as const;
export type JointState = (typeof JOINT_STATES)[number];

export const SEXES = ['female', 'male'] as const;
export type Sex = (typeof SEXES)[number];

export const RISKS = ['reduced feeling', 'fall within a year', 'open wound', 'fusion not released', 'unstable knee', 'child'] as const;
export type Risk = (typeof RISKS)[number];

/** What must not bend, as far as it decides which measures a sheet must have. */
export const BLANK_FEET = ['toe', 'ankle', 'prosthesis'] as const;
export type BlankFoot = (typeof BLANK_FEET)[number];

/** How a fixed ankle angle was found. */
const PLATE_FINDINGS = ['heel plates and plumb line', 'goniometer', 'prosthesis alignment'] as const;
export type PlateFinding = (typeof PLATE_FINDINGS)[number];

/** How a leg difference was found: measured, or as the prescriber writes it. */
export const LEG_FINDINGS = ['blocks', 'x-ray', 'tape', 'prescription', 'none found'] as const;
export type LegFinding = (typeof LEG_FINDINGS)[number];

export const TOE_SHAPES = ['round', 'pointed', 'square', 'oblique'] as const;
export type ToeShape = (typeof TOE_SHAPES)[number];

/** How the toe arc gets its radius. */
export const TOE_RULES = ['pivot-to-toe', 'pivot-height', 'given', 'for-toe-spring', 'for-toe-off'] as const;
export type ToeRuleName = (typeof TOE_RULES)[number];

/** What may be changed of a shoe to keep to limits on what is seen of it. */
export const FREEDOMS = ['apex', 'toe radius', 'standing flat', 'strike angle', 'pitch', 'last spring'] as const;
export type Freedom = (typeof FREEDOMS)[number];

/** How stiff a sole at the ball may be wanted, by the grades of the trade. */
export const GRADES_WANTED = ['rigid', 'slight flex'] as const;
export type GradeWanted = (typeof GRADES_WANTED)[number];

/** Where a ply lies, against the core. */
export const PACK_SIDES = ['below', 'above'] as const;
export type PackSide = (typeof PACK_SIDES)[number];

export const SIZE_SYSTEMS = ['mondopoint', 'paris points', 'uk'] as const;
export type SizeSystem = (typeof SIZE_SYSTEMS)[number];

export const MOULD_PARTS = ['foam body', 'whole sole'] as const;
export type MouldPart = (typeof MOULD_PARTS)[number];

/** What the mould itself is made on. */
export const MOULD_MAKERS = ['routed', 'printed'] as const;
export type MouldMaker = (typeof MOULD_MAKERS)[number];

/** What holds lid and cavity together. */
export const CLOSINGS = ['bolts', 'clamps'] as const;
export type Closing = (typeof CLOSINGS)[number];

/** What may be made besides the soles: groups of `making` on the sheet. */
export const MAKINGS = ['mould', 'block', 'print', 'jig', 'gauges', 'stack', 'plies', 'templates', 'wedges', 'card'] as const;
export type MakingName = (typeof MAKINGS)[number];

export const CUTTER_ENDS = ['ball', 'flat'] as const;
export type CutterEnd = (typeof CUTTER_ENDS)[number];

/** Which faces of the foam body are cut in the block. */
export const BLOCK_FACES = ['upper face', 'both faces'] as const;
export type BlockFaces = (typeof BLOCK_FACES)[number];

/** What is cut over the rails of a jig: the ground face of the finished sole, or the foam body before its outsole is on. */
export const JIG_FACES = ['ground face', 'foam body'] as const;
export type JigFace = (typeof JIG_FACES)[number];

/** Scales of foam hardness (ISO 868 and ISO 48-4 for Shore; Asker C is SRIS 0101); a number without its scale means nothing. */
export const SHORE_SCALES = ['Shore A', 'Asker C'] as const;
export type ShoreScale = (typeof SHORE_SCALES)[number];

export const PAPER_SIZES = ['A4', 'A3', 'Letter'] as const;
export type PaperSize = (typeof PAPER_SIZES)[number];

/** How the soles are made, as far as the steps on the job card hang on it. */
export const WAYS_OF_MAKING = ['router block', 'cast in a mould', 'printed', 'jig', 'sheet stack'] as const;
export type WayOfMaking = (typeof WAYS_OF_MAKING)[number];

export const SHEET_VERSION = 1;
/** What the published schema is called when it lies beside the sheets; editors follow the name. */
export const SCHEMA_FILE = 'fitting-sheet.schema.json';
