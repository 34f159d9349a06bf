import { beforeAll, describe, expect, test } from 'vitest';
import { figuresOf, inWords } from '../../../src/checks/figures.ts';
import { design as designed, type Design } from '../../../src/design.ts';
import { readMaking } from '../../../src/fitting/readMaking.ts';
import { WAYS_OF_MAKING, type WayOfMaking } from '../../../src/fitting/words.ts';
import { loadBooleans, type Booleans } from '../../../src/making/booleans.ts';
import { jobCardFor, type JobCard } from '../../../src/making/card/card.ts';
import { cardFindings } from '../../../src/making/card/findings.ts';
import { HAZARDS, type Hazard } from '../../../src/making/card/hazards.ts';
import type { Step } from '../../../src/making/card/step.ts';
import { ORDER_FOR, wayFor } from '../../../src/making/card/way.ts';
import { WAITS } from '../../../src/making/card/waits.ts';
import { madeFor, type ShoeBlock, type ShoeMould } from '../../../src/making/made.ts';
import { mouldNumbers } from '../../../src/exports/mouldNumbers.ts';
import type { CastName } from '../../../src/materials/materials.ts';
import { enclosedArea } from '../../../src/geometry/path.ts';
import { STIFFENER } from '../../../src/materials/materials.ts';
import { pliesWeight, PLY_INSET } from '../../../src/making/plies.ts';
import { setOut } from '../../../src/making/setOut.ts';
import { partsOf, type RockerShoe } from '../../../src/pair/shoe.ts';
import { rollX } from '../../../src/profile/rollLine.ts';
import { groundPoint } from '../../../src/solid/groundLine.ts';
import { designOf, JOBS, match, SAMPLES } from '../../exports/jobs.ts';

const PAIR = designOf(JOBS.pair);
type Asked = Parameters<typeof readMaking>[0];
/** The same shoes with other things ordered: what is made of them hangs on nothing of it. */
const ordering = (making: Asked, base: Design = PAIR): Design => ({ ...base, fitting: { ...base.fitting, making: readMaking({ chordGap: 0.5, ...making }) } });
const NOTHING = { moulds: [], blocks: [] } as const;
const cardOf = (making: Asked, made: Parameters<typeof jobCardFor>[1] = NOTHING): JobCard => jobCardFor(ordering(making), made);
const stepsOf = ({ phases }: JobCard): Step[] => phases.flatMap(({ steps }) => steps.map(({ step }) => step));

/** What each way is ordered with, variants that tell of more steps among them. */
const ORDERS: readonly (readonly [WayOfMaking, Asked])[] = [
  ['router block', { block: {} }], ['router block', { block: { faces: 'upper face' }, tool: { diameter: 12, reach: 80 } }], ['cast in a mould', { mould: {} }], ['printed', { print: { split: true }, printBed: { x: 300, y: 300, z: 200 } }],
  ['jig', { jig: { bush: { diameter: 17, cutter: 10 } } }], ['jig', { jig: {} }], ['sheet stack', { stack: {} }], ['sheet stack', {}],
];

/** Told by the words of a step alone: what it uses, and what that can do. */
const JUDGED: readonly (readonly [RegExp, Hazard])[] = [
  [/\b(cement|primer?) |\bcement (both|on)|batch: (primer|cement|outsole cement|sealer)/i, 'solvent'], [/\b(mill|grind|rasp|sled|saw|trim wet)\b|cut the arcs/i, 'spindle'],
  [/\b(grind the|mill the|roughen (every|and)|paper 120|cut the arcs)/i, 'dust'], [/\bresin and hardener|coats of epoxy/i, 'epoxy'], [/\b(plies|wet to the line|seal carbon)/i, 'carbon'], [/\bpour at|casting/i, 'casting'], [/\bslicer that/i, 'hot'], [/walk 10 m|beside a rail/i, 'walking'],
];
/** Words that only name such a thing. */
const ONLY_NAMED = ['Dry fit', 'Lay on and press', 'Lay the stiffener on and press', 'Cut the outsole', 'Stack and press'];

describe.each(ORDERS)('a card by way of %s, %j', (way, making) => {
  const card = cardOf(making), steps = stepsOf(card);

  test('tells that way, each step once, numbered without a gap', () => {
    expect(card.way).toBe(way);
    expect(new Set(steps.map(({ name }) => name)).size).toBe(steps.length);
    expect(card.phases.flatMap((phase) => phase.steps.map(({ number }) => number))).toEqual(steps.map((_, i) => i + 1));
    expect(card.phases.map(({ name }) => name)).toEqual(['Stiffener', expect.stringMatching(/^Body/), 'Trial', 'Outsole', 'Finish', 'Hand-over']);
  });

  test('cautions stand where their work is done', () => {
    let judged = 0;
    for (const { name, how, batches, hazards } of steps.filter((one) => !ONLY_NAMED.includes(one.name))) {
      const said = `${name}. ${how} ${batches.map((batch) => `batch: ${batch}`).join(' ')}`;
      for (const [words, hazard] of JUDGED) if (words.test(said)) { expect(hazards, `${name}: ${hazard}`).toContain(hazard); judged++; }
      expect(new Set(hazards).size).toBe(hazards.length);
    }
    expect(judged).toBeGreaterThan(12);
    for (const hazard of ['dust', 'solvent', 'epoxy', 'carbon', 'spindle', 'walking'] as const) expect(steps.some(({ hazards }) => hazards.includes(hazard))).toBe(true);
  });

  test('every time says what it rests on, and a night moves all that follows to another day', () => {
    let day = 1;
    for (const one of card.phases.flatMap((phase) => phase.steps)) {
      expect(one.day).toBe(day);
      const { wait } = one.step;
      if (!wait) continue;
      expect([wait.time.length > 3, wait.basis.length > 8]).toEqual([true, true]);
      if (/overnight|24 h|slicer/.test(wait.time)) day++;
    }
    expect(day).toBeGreaterThan(5);
  });

  test('every number to hit has its shoes, and how far off it may be', () => {
    for (const { targets, sides } of steps) for (const { values, within } of targets) {
      expect(within).not.toBe('');
      for (const { side, text } of values) { expect(sides).toContain(side); expect(text).toMatch(/\d (mm|cm³)/); }
    }
  });
});

test('every way of making has its card, and its order', () => {
  expect(new Set(ORDERS.map(([way]) => way))).toEqual(new Set(WAYS_OF_MAKING));
  for (const [way, name] of Object.entries(ORDER_FOR)) expect(wayFor(readMaking({ [name]: {} }))).toBe(way);
  expect(wayFor(readMaking({ block: {}, card: { way: 'jig' } }))).toBe('jig');
});

test('cement: the longer of two times that disagree, and both are told', () => {
  // Bonding class notes of the SSIA say 30 to 45 min, another source 10 to 15 min.
  expect(WAITS.cement.time).toMatch(/^30 to 45 min/);
  expect(WAITS.cement.basis).toMatch(/10 to 15 min/);
});

describe('numbers', () => {
  let kernel: Booleans;
  beforeAll(async () => { kernel = await loadBooleans(); });
  const milled = (making: Asked): { card: JobCard; blocks: readonly ShoeBlock[] } => { const made = madeFor(ordering({ chordGap: 1, ...making }), kernel); return { card: cardOf(making, made), blocks: made.blocks }; };
  const figure = (key: string, side: string): string => inWords(figuresOf(PAIR.shoes.find((one) => one.side === side)!, PAIR.fitting).find((one) => one.key === key)!);
  const target = (making: Asked, what: string): Record<string, string> => Object.fromEntries(stepsOf(cardOf(making)).flatMap(({ targets }) => targets).find((one) => one.what === what)!.values.map(({ side, text }) => [side, text]));

  test('are the figures of every other paper', () => {
    expect(target({ block: {} }, 'Pitch of the sole: seat above tread')).toEqual({ left: figure('pitchOfSole', 'left') });
    expect(target({}, 'Apex from the heel')).toEqual({ left: figure('apex', 'left') });
    expect(target({}, 'Unrolled along the ground face, without trim')).toEqual({ left: figure('outsoleLength', 'left'), right: figure('outsoleLength', 'right') });
    const before = cardOf({}).before.find(({ name }) => name === 'Foot stands at the seat')!;
    expect(before.values).toEqual(['left', 'right'].map((side) => ({ side, text: figure('standsSeat', side) })));
  });

  test('foam at the ball is the sole less stiffener and outsole, where the face is all but level', () => {
    const { order } = PAIR.shoes[0]!.kind === 'rocker' ? PAIR.shoes[0]! : (() => { throw new Error('a rocker first'); })();
    const whole = Number.parseFloat(figure('thicknessTread', 'left')), foam = Number.parseFloat(target({}, 'Foam under the tread (ball), upright')['left']!);
    expect(Math.abs(whole - order.stiffener - order.outsole.thickness - foam)).toBeLessThan(0.15);
  });

  test('the step of a ball cutter leaves the ridge that was ordered: by Pythagoras', () => {
    const { card, blocks } = milled({ block: { scallop: 0.2 }, tool: { diameter: 16, reach: 80, end: 'ball' } });
    const said = stepsOf(card).flatMap(({ settings }) => settings).find(({ value }) => value.includes('ridges'))!.value;
    const half = Number(/; ([\d.]+) mm step/.exec(said)![1]) / 2;
    expect(8 - Math.sqrt(64 - half * half)).toBeCloseTo(0.2, 1.5);
    expect(said).toContain('ridges of 0.20 mm');
    expect(2 * half).toBeLessThanOrEqual(Math.min(...blocks.flatMap(({ block: { setUps } }) => setUps.map(({ stepOver }) => stepOver))));
  });

  test('the cutter stands out as far as on the set-up sheet; only a block of several sheets is glued', () => {
    const { card, blocks } = milled({ block: { sheet: 30 } }), steps = stepsOf(card);
    const out = steps.flatMap(({ targets }) => targets).filter(({ what }) => what === 'Cutter out of its holder');
    expect(out).toHaveLength(2);
    out.forEach(({ values }, i) => expect(values).toEqual(blocks.map(({ side, block: { setUps } }) => ({ side, text: `${setUps[i]!.stickOut.toFixed(1)} mm` }))));
    const several = blocks.filter(({ block: { plan } }) => plan.sheets > 1).map(({ side }) => side);
    expect(several.length).toBeLessThan(blocks.length);
    expect(steps.find(({ name }) => name === 'Glue up the block')?.sides ?? []).toEqual(several);
  });

  test('a block that had to be larger than ordered is told as the set-up sheet has it', () => {
    const { card, blocks } = milled({ block: { length: 200, width: 90, sheet: 10 } }), glued = stepsOf(card).find(({ name }) => name === 'Glue up the block')!;
    expect(blocks.every(({ block: { plan } }) => plan.length > 200)).toBe(true);
    expect(glued.targets[0]!.values).toEqual(blocks.map(({ side, block: { plan: { sheets, length, width } } }) => ({ side, text: `${sheets} sheets, ${length} mm by ${width} mm by ${(10 * sheets).toFixed(1)} mm` })));
    expect(stepsOf(card).map(({ how }) => how).join(' ')).not.toMatch(/200 mm|Tabs at waist|Fill the hollow/);
  });

  test('a bush that does not go with the arcs is not told: the rails were made without it', () => {
    const settings = stepsOf(cardOf({ jig: { bush: { diameter: 8, cutter: 10 }, face: 'ground face' } })).find(({ name }) => name === 'Cut the arcs along the rails')!;
    expect(settings.settings.map(({ what }) => what)).toEqual(['sled']);
    expect(settings.targets[0]!.what).toBe('Cutter below the runners of the sled');
  });

  test('the guide bush stands off by half of what it is wider than the cutter', () => {
    expect(stepsOf(cardOf({ jig: { bush: { diameter: 17, cutter: 10 } } })).flatMap(({ settings }) => settings).some(({ value }) => value.includes('the cut runs 3.5 mm off the rail'))).toBe(true);
  });

  test('rails of the ground face: the cutter is set lower by the outsole, and nothing is named that cannot be', () => {
    const cut = (jig: Asked['jig']): Step => stepsOf(cardOf({ jig })).find(({ name }) => name === 'Cut the arcs along the rails')!;
    const thick = (side: 'left' | 'right'): string => `${partsOf(PAIR.shoes.find((one) => one.side === side)!)!.shape.outsole.toFixed(1)} mm`;
    const [below] = cut({ face: 'ground face' }).targets;
    expect(below).toMatchObject({ what: 'Cutter below the runners of the sled', values: [{ side: 'left', text: thick('left') }, { side: 'right', text: thick('right') }] });
    expect(cut({ face: 'ground face' }).settings.some(({ what }) => what.includes('hot wire'))).toBe(false);
    expect(cut({ face: 'foam body' }).targets.some(({ what }) => what.includes('runners'))).toBe(false);
  });

  test('what rests on an estimate says so', () => {
    const estimated = { ...JOBS.pair, shoes: { ...JOBS.pair.shoes, left: { ...JOBS.pair.shoes.left!, last: { ...JOBS.pair.shoes.left!.last, pitch: { value: 12, origin: 'estimated', rule: 'as such lasts are' } } } } } as const;
    const card = jobCardFor(designOf(estimated), NOTHING);
    expect(stepsOf(card).flatMap(({ targets }) => targets.flatMap(({ values }) => values)).some(({ text }) => text.endsWith('(est.)'))).toBe(true);
  });
});

test('the trial names its files and its step where wedges are ordered', () => {
  const how = (making: Asked): string => stepsOf(cardOf(making)).find(({ name }) => name.startsWith('Walking trial'))!.how;
  expect(how({})).toMatch(/^Last out.*Both shoes on.*in steps of 5\.0 mm of apex/);
  expect(how({ wedges: { step: 6 } })).toMatch(/K-204_left_trial-base\.stl with wedges 1, 2, 3, 4, 5, 6 .*K-204_left_trial-wedge-1\.stl.*K-204_left_trial-record\.pdf.*in steps of 6\.0 mm of apex/);
});

test('the toe spring by wedge is the height of the end of the edge, and stands above the figure at the tip of the last', () => {
  const { values } = cardOf({}).after.find(({ name }) => name.startsWith('Toe spring by wedge'))!;
  for (const { side, text } of values) {
    const shoe = PAIR.shoes.find((one) => one.side === side)!, { shape } = partsOf(shoe)!, at = groundPoint(shape);
    // Judge: the foremost of many points round the lower edge of the wall.
    const end = Array.from({ length: 20000 }, (_, i) => at((i / 20000) * shape.edge.length)).reduce((best, point) => (rollX(shape.line, [point[0], point[1]]) > rollX(shape.line, [best[0], best[1]]) ? point : best));
    expect(Math.abs(Number.parseFloat(text) - end[2])).toBeLessThan(0.06);
    expect(Number.parseFloat(text)).toBeGreaterThan(figuresOf(shoe, PAIR.fitting).find(({ key }) => key === 'toeSpringOfShoe')!.value);
  }
});

describe('a planned number outside of its own row', () => {
  const rowsOf = (design: Design): Readonly<Record<string, string | undefined>> => Object.fromEntries(jobCardFor(design, { moulds: [], blocks: [] }).before.map(({ name, outside }) => [name, outside]));

  test('is marked, and the row of the pair points to its finding', () => {
    const row = rowsOf(designOf(SAMPLES['ferry-pilot']!));
    expect(row['Weight of the sole']).toBe('planned outside: see the findings in the all-figures paper');
    expect(row['Ground face above the ground, at the tip of the last']).toMatch(/^planned outside \(L\): /);
    expect([row['Side tipping'], row['Thickness at the tip']]).toEqual([undefined, undefined]);
  });

  test('every number told of is below the least its row names, and no other', () => {
    for (const design of [PAIR, ...Object.values(SAMPLES).map((fitting) => designOf(fitting))]) for (const { name, pass, values, outside } of jobCardFor(design, { moulds: [], blocks: [] }).before) {
      const least = Number(/^(?:foam )?(\d+)(?: mm|°) or more/.exec(pass)?.[1]);
      if (Number.isNaN(least) || pass.startsWith('foam')) continue;
      const below = values.filter(({ text }) => Number.parseFloat(text) < least).map(({ side }) => (side === 'left' ? 'L' : 'R'));
      expect([name, /\(([LR, ]+)\)/.exec(outside ?? '')?.[1] ?? '']).toEqual([name, below.join(', ')]);
    }
  }, 30_000);
});

describe('a mould', () => {
  let moulds: readonly ShoeMould[], pressed: readonly ShoeMould[];
  const whole = (material: CastName = 'self-skinning PU'): Design => ordering({ mould: { part: 'whole sole', material } }, designOf({ ...JOBS.alone, making: { ...JOBS.alone.making, chordGap: 0.5 } }));
  beforeAll(async () => {
    const kernel = await loadBooleans();
    ({ moulds } = madeFor(whole(), kernel));
    ({ moulds: pressed } = madeFor(whole('pressed EVA'), kernel));
  });

  test('says what is poured; a whole sole gets no outsole', () => {
    const steps = stepsOf(jobCardFor(whole(), { moulds, blocks: [] })), [poured] = steps.flatMap(({ targets }) => targets).filter(({ what }) => what === 'Mix to weigh out');
    const { mixG, fillMm3 } = mouldNumbers(moulds[0]!) as { mixG: { total: number }; fillMm3: number };
    expect(poured!.values).toEqual([{ side: 'right', text: `${mixG.total.toFixed(0)} g for ${(fillMm3 / 1000).toFixed(1)} cm³` }]);
    // What foams must not be weighed as if it were liquid, 1.0 to 1.2 g/cm³ (common practice): twice too much in a closed mould.
    expect(mixG.total / (fillMm3 / 1000)).toBeLessThan(0.6);
    expect(steps.find(({ name }) => name === 'Weigh, mix and pour')!.how).toContain('every bolt with its washers');
    expect(steps.some(({ name }) => /outsole/i.test(name) && !/trial/i.test(name))).toBe(false);
    expect(stepsOf(cardOf({ mould: {} })).some(({ name }) => name === 'Bend the outsole on')).toBe(true);
  });

  test('foam that is pressed is not poured', () => {
    const steps = stepsOf(jobCardFor(whole('pressed EVA'), { moulds: pressed, blocks: [] })), press = steps.find(({ name }) => name === 'Weigh and press')!;
    expect(press.how).toContain('groove');
    expect(press.hazards).toEqual(['pressing']);
    expect(steps.some(({ how }) => /\bpour|vents/.test(how))).toBe(false);
  });
});

test('a shoe that stands level as it is gets no step of its own, but the walk and the looks', () => {
  const level = designed({ ...JOBS.pair, shoes: { left: JOBS.pair.shoes.left!, right: match('right', {
    seatHeightNow: { value: PAIR.shoes[0]!.stands.seat, origin: 'measured' }, ballHeightNow: { value: PAIR.shoes[0]!.stands.ball, origin: 'measured' },
  }) } });
  if (!level.ok) throw new Error('no shape');
  expect(partsOf(level.design.shoes[1]!)).toBeUndefined();
  for (const { name, sides } of stepsOf(jobCardFor(level.design, NOTHING))) expect(sides, name).toEqual(/trial|both|hand over/i.test(name) ? ['left', 'right'] : ['left']);
});

describe('a way of which nothing is ordered', () => {
  const found = (making: Asked): string[] => cardFindings(ordering(making)).map(({ code, severity }) => `${code} ${severity}`);

  test('is warned of, so that it stands on the screen too; what the warning advises takes it away', () => {
    expect(found({ card: { way: 'jig' }, stack: {} })).toEqual(['CARD_WAY warn']);
    const text = cardFindings(ordering({ card: { way: 'jig' }, stack: {} })).map((finding) => finding.text).join();
    expect(text).toMatch(/making\.jig.*the card then tells of "sheet stack"/);
    expect([found({ card: { way: 'jig' }, jig: {} }), found({ card: {}, stack: {} }), found({})]).toEqual([[], [], []]);
    expect(wayFor(readMaking({ card: {}, stack: {} }))).toBe('sheet stack');
  });

  test.each(WAYS_OF_MAKING)('%s: the first of its steps says so, and nothing does once it is ordered', (way) => {
    const told = (making: Asked): number[] => stepsOf(cardOf(making)).flatMap(({ how }, i) => (how.includes('NOT ORDERED YET') ? [i] : [])), steps = stepsOf(cardOf({ card: { way } }));
    const body = steps.findIndex(({ how }) => how.includes(`making.${ORDER_FOR[way]}`));
    expect([told({ card: { way } }), told({ card: { way }, [ORDER_FOR[way]]: {} }), told({ card: {} })]).toEqual([[body], [], []]);
    expect(cardOf({ card: { way } }).phases.find(({ name }) => name.startsWith('Body'))!.steps[0]!.step.name).toBe(steps[body]!.name);
  });
});

test('cautions are sentences of their own', () => {
  for (const text of Object.values(HAZARDS)) expect(text).toMatch(/^[A-Z].*\.$/);
  expect(new Set(Object.values(HAZARDS)).size).toBe(Object.keys(HAZARDS).length);
});

test('the rim round the plies is told with its size and what fills it, and what is laid up weighs less than a plate out to the edge', () => {
  const [step] = stepsOf(cardOf({})).filter(({ name }) => name === 'Fill the rim round the plies'), { shape } = PAIR.shoes.find(({ kind }) => kind === 'rocker') as RockerShoe;
  expect(step?.how).toMatch(/a rim 6 mm wide and 1\.5 mm deep stays open.*cork filler/);
  // The plate cut by offset, another way than by the length of its line.
  const plate = (Math.abs(enclosedArea(setOut(shape.feather, -PLY_INSET))) * shape.stiffener / 1000) * STIFFENER.density;
  expect(pliesWeight(shape) / plate).toBeCloseTo(1, 2);
  expect(pliesWeight(shape)).toBeLessThan(figuresOf(PAIR.shoes[0]!, PAIR.fitting).find(({ key }) => key === 'stiffenerWeight')!.value - 5);
});

test('what a known stiffener is laid of and weighs is told on its card, with the grades it is judged by; of one that is only a thickness nothing is', () => {
  const known = designOf(SAMPLES['market-gardener']!), card = jobCardFor(known, NOTHING), targets = stepsOf(card).flatMap((one) => one.targets), figures = figuresOf(known.shoes.find(({ kind }) => kind === 'rocker')!, known.fitting);
  const worded = (key: string): string => inWords(figures.find((one) => one.key === key)!), told = (what: string) => targets.find((one) => one.what === what)?.values.map(({ text }) => text);
  expect(told('Laid of')).toEqual([expect.stringMatching(/^1 ply of carbon unidirectional 300 and 1 of carbon twill 200 .* below 6 mm of birch plywood, 4 sheets of 1\.5 mm/)]);
  const whole = (texts: readonly string[] | undefined): string[] | undefined => texts?.map((text) => text.replace(/\d+\.\d/, (value) => String(Math.round(Number(value)))));
  expect([whole(told('Cloth that lies in it, dry')), whole(told('Resin with hardener that stays in it')), told('The whole pack, weighed')]).toEqual([[worded('packCloth')], [worded('packResin')], [worded('stiffenerWeight')]]);
  expect([told('Core, cut and dry'), told('Gauge 1')].map((texts) => texts?.length)).toEqual([1, 1]);
  const flex = card.after.find(({ name }) => name.startsWith('Flex'))!;
  expect([flex.values.map(({ text }) => text), flex.pass]).toEqual([[worded('packBend')], 'rigid 1.5° or less, slight flex 5° or less, at 0.125 N·m for each kg, 9.0 N·m']);
  expect(stepsOf(cardOf({})).flatMap((one) => one.targets).map(({ what }) => what)).not.toContain('Laid of');
});
