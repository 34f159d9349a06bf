/**
 * The library, for scripts of one's own: a fitting sheet in, a checked design out, and from it files, drawings or solids
 * to carry on with. Lengths in mm and angles in radians everywhere but on the sheet and in findings. Nothing here touches
 * disk or clock; the same sheet gives the same bytes.
 *
 * @example
 * const reading = readSheet(await readFile('sheet.json', 'utf8'));
 * if (!reading.ok) throw new Error(reading.faults.map(({ text }) => text).join('\n'));
 * const designing = design(reading.fitting);
 * if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join('\n'));
 * const stops = stopsLeft(designing.design.findings);
 * if (stops.length > 0) throw new Error(stops.map(({ text }) => text).join('\n'));
 * for (const { name, bytes } of filesFor(designing.design, await loadBooleans())) await writeFile(name, bytes);
 */

/** The text of a sheet to a fitting, or every fault on it; and the sheet's JSON Schema. */
export { readSheet, SHEET_MAX_BYTES, type Fault, type Reading } from './fitting/readSheet.ts';
export { sheetJsonSchema } from './fitting/schema.ts';
export type { Fitting, Foot, LastMeasures, ShoeFitting, SheetMatch, SheetOrder, SheetRocker } from './fitting/fitting.ts';
export type { Measure, Origin } from './fitting/measure.ts';
export type { Side } from './fitting/words.ts';

/** A fitting to a design of both shoes with its findings, or why there is none and which values work. */
export { design, type Design, type Designing, type ShapeTrouble } from './design.ts';
export { partsOf, type MatchShoe, type Pair, type RockerShoe, type Shoe } from './pair/shoe.ts';
export type { Finding, FindingUnit, Severity } from './checks/finding.ts';
/** Stops that nobody took on his own name: while there is one, `filesFor` refuses. */
export { stopsLeft } from './checks/overrides.ts';
/** Every number of a shoe that papers and screens show. */
export { figuresOf, type Figure } from './checks/figures.ts';
/** Why there is no shape, in the fields and units of the sheet. */
export { troubleWords, type TroubleWords, type Works } from './checks/troubleWords.ts';

/** How sure the shoes are: which measure decides them, worked out at once or from many variants in steps that tell how far they have come. */
export { linearSpread, type Influence, type ShoeSpread } from './spread/linear.ts';
export { sampledSpread, spreadSteps, type Progress, type ShoeSample } from './spread/sampled.ts';
export type { Sampling } from './spread/sampling.ts';
/** How a stiff shoe rolls on the floor: exactly from its arcs, or on the hull of any mesh; and what it carries along. */
export { rollBodyOf } from './roll/ofSole.ts';
export { hullBody, silhouetteOf } from './roll/hull.ts';
export { anglesCovered, contactAt, placedAt, travelled, type RollBody } from './roll/rollBody.ts';
export { carriedBy, leverAbout, type Carried } from './roll/carried.ts';
export { courseOf, rollsOf, type CoursePoint } from './roll/course.ts';
/** Working backwards from limits on the sheet: generators that tell how far they are; `finished` takes one to its end. */
export { finished } from './geometry/finished.ts';
export { seek, type Answer, type Solution } from './targets/seek.ts';
export { tradeOff, type TradeOff } from './targets/tradeOff.ts';
export { withTaken } from './targets/taken.ts';

/** A pair as it is walked on: one moment of stance, the two of them at any moment, and the step in figures. */
export { walkingOf, type ShoeWalk, type Walking } from './walk/walking.ts';
export { frameAt, laid, tracesOf, type Frame, type Place, type Traces, type WalkOn } from './walk/frame.ts';
export { stridesAt, type Stride } from './walk/step.ts';

/** Solids of a sole at any fineness, and what can be measured on them. Soles are LEFT ones until they are mirrored. */
export { bodiesOf, solidsOf, type Bodies, type Solids } from './solid/solids.ts';
export { meshOf, type Body } from './solid/body.ts';
export type { SoleShape } from './solid/soleShape.ts';
export { boundsOf, faultsOf, mirrored, stretched, triangleCount, volumeOf, type Box, type Mesh } from './geometry/mesh.ts';
/** A solid in the modelling language of @jscad/modeling. */
export { toGeom3, type Geom3 } from './solid/jscad.ts';

/** Everything the command writes, as names and bytes, with the kernel that moulds and other cut solids need; and the writers of single files. */
export { filesFor, type NamedFile } from './exports/fileSet.ts';
export { loadBooleans, type Booleans } from './making/booleans.ts';
export { needsKernel } from './making/made.ts';
export { stlBytes } from './exports/stl.ts';
export { dxfText, onLayer, type DxfDrawing, type DxfEntity } from './exports/dxf.ts';

/** Units at the edges. */
export { degrees, inDegrees, MM_PER_INCH, type Mm, type Rad } from './geometry/units.ts';
