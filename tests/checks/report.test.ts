import { describe, expect, test } from 'vitest';
import { cautionsFor, riskFindings } from '../../src/checks/cautions.ts';
import { inFull, type Finding } from '../../src/checks/finding.ts';
import { makingFindings } from '../../src/making/findings.ts';
import { findingsOf } from '../../src/checks/findings.ts';
import { applyOverrides, stopsLeft } from '../../src/checks/overrides.ts';
import { inInches, inUnitOf } from '../../src/checks/say.ts';
import { design as workOut } from '../../src/design.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { RISKS } from '../../src/fitting/words.ts';
import { MM_PER_INCH } from '../../src/geometry/units.ts';
import { bothRockers, changed, designOf, designWith, fittingWith, type Part } from './support.ts';

describe('risks', () => {
  test.each(RISKS.map((risk) => [risk]))('%s', (risk) => {
    const [found, ...more] = riskFindings(fittingWith({ wearer: { risks: [risk] } }));
    expect(more).toEqual([]);
    expect(found!.severity).toBe(risk === 'open wound' || risk === 'fusion not released' ? 'stop' : 'warn');
    expect(found!.text.length).toBeGreaterThan(40);
  });
  test('none ticked, none said', () => expect(riskFindings(fittingWith())).toEqual([]));
});

describe('cautions', () => {
  const plainly = cautionsFor(fittingWith());
  test('name what every paper must carry', () => {
    for (const word of [/prescribes/, /knee, hip and the other foot/, /less steady/, /supervision/, /drive/, /wet/, /prosthetist/, /one shoe only/, /2 mm/, /70 °C/, /epoxy/, /solvents/])
      expect(plainly.filter((text) => word.test(text)).length).toBeGreaterThan(0);
  });
  test('a risk of falling is said louder and first', () => {
    const risky = cautionsFor(fittingWith({ wearer: { risks: ['fall within a year'] } }));
    expect(risky[0]).toContain('Danger of falling');
    expect(plainly.some((text) => text.includes('Danger of falling'))).toBe(false);
    expect(risky.length).toBe(plainly.length);
  });
  test('a prosthetic foot brings the prosthetist to the front', () => {
    const prosthetic = cautionsFor(fittingWith({ left: { foot: { stiff: { joint: 'whole foot', state: 'prosthetic' }, ankleAngle: undefined, prosthesis: { heelRise: 12, shankLean: 4 } } } }));
    expect(prosthetic[0]).toContain('prosthetist');
  });
  test('none promises an effect or shouts', () => {
    for (const risk of RISKS) for (const text of cautionsFor(fittingWith({ wearer: { risks: [risk] } }))) expect(text).not.toMatch(/heal|cure|relieve|recommend|!/i);
  });
});

describe('overrides', () => {
  const stop = (code: string, side?: 'left' | 'right'): Finding => ({ code, severity: 'stop', ...(side ? { side } : {}), unit: '', where: '', text: '', basis: '' });
  const by = { by: 'M. Maker', reason: 'seen at the trial' };
  test('a stop with the same code is marked and stays', () => {
    const [found] = applyOverrides([stop('A')], [{ code: 'A', ...by }]);
    expect(found).toEqual({ ...stop('A'), overriddenBy: by });
    expect(stopsLeft([found!])).toEqual([]);
    expect(stopsLeft([stop('A')])).toHaveLength(1);
  });
  test('a side, when given, must be the side of the stop', () => {
    const found = applyOverrides([stop('A', 'left'), stop('A', 'right')], [{ code: 'A', side: 'right', ...by }]);
    expect(found.map(({ overriddenBy }) => overriddenBy !== undefined)).toEqual([false, true]);
    expect(stopsLeft(applyOverrides([stop('A', 'left'), stop('A', 'right')], [{ code: 'A', ...by }]))).toEqual([]);
  });
  test('warnings are not overridden, and what meets no stop becomes a note', () => {
    const warning: Finding = { ...stop('A'), severity: 'warn' };
    const [same, idle] = applyOverrides([warning], [{ code: 'A', ...by }]);
    expect(same).toEqual(warning);
    expect(idle).toMatchObject({ code: 'OVERRIDE_IDLE', severity: 'note' });
  });
  test('reach the findings of a design', () => {
    const { findings } = designWith({ wearer: { risks: ['open wound'] }, overrides: [{ code: 'OPEN_WOUND', ...by }] });
    expect(findings[0]).toMatchObject({ code: 'OPEN_WOUND', overriddenBy: by });
    expect(stopsLeft(findings)).toEqual([]);
    expect(stopsLeft(designWith({ wearer: { risks: ['open wound'] } }).findings)).toHaveLength(1);
  });
});

describe('the report', () => {
  const messy: Part = {
    ...changed({ wearer: { risks: ['open wound', 'child'] }, job: { prescriber: undefined } }, bothRockers({ foot: { pivotForward: 80 }, last: { toeSpring: 27 } })),
    left: { foot: { ankleAngle: { value: -5, how: 'goniometer' }, strikeAngle: 40 } }, making: { printBed: { x: 100, y: 100, z: 20 }, tool: { diameter: 6, reach: 20 } },
  };
  test('puts stops before warnings before notes, and left before right before both', () => {
    const { findings } = designWith(messy), rank = { stop: 0, warn: 1, note: 2 }, side = { left: 0, right: 1, both: 2 };
    const places = findings.map((finding) => rank[finding.severity] * 10 + side[finding.side ?? 'both']);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(new Set(findings.map(({ severity }) => severity)).size).toBe(3);
  });
  test('speaks in sentences, with a code, a place and a basis', () => {
    for (const change of [{}, messy]) for (const { code, text, where, basis } of designWith(change).findings) {
      expect(code).toMatch(/^[A-Z][A-Z0-9_]{0,39}$/);
      expect(text).toMatch(code === 'TAKEN_TWICE' ? /^(wearer|left|right)\.[\w.]+ is .*[.]$/ : /^[A-Z0-9].*[.]$/);
      expect(text).not.toMatch(/NaN|undefined|!|Infinity/);
      expect([where, basis].every((words) => words.length > 0)).toBe(true);
    }
  });
  test('names common practice once at most, and each source in full', () => {
    const unmeasured: Part = { wearer: { crotchHeight: 800, mass: 140 }, left: { foot: { hipHeight: undefined, pivotHeight: 104, strikeAngle: undefined }, last: { insole: undefined, tread: undefined, length: undefined, toeSpring: 27 } } };
    for (const change of [{}, messy, unmeasured]) for (const finding of designWith(change).findings) {
      expect(`${finding.text} ${finding.basis}`.split('common practice').length).toBeLessThan(3);
      expect(inFull(finding).split('common practice').length).toBeLessThan(3);
      expect(inFull(finding)).toContain(finding.basis);
    }
  });
  test('speaks as a shoemaker does', () => {
    const idle: Part = { ...messy, overrides: [{ code: 'NO_SUCH', by: 'M. Maker', reason: 'none' }] };
    for (const { text } of designWith(idle).findings) expect(text).not.toMatch(/\boverrides?\b(?!\))|stations?|checksum|chord|trochanter|malleolus/i);
  });
  test('is the same for the same fitting', () => {
    const fitting: Fitting = fittingWith(messy), design = designOf(fitting);
    expect(findingsOf(design, undefined, makingFindings(design))).toEqual(design.findings);
    expect(designOf(fitting).findings).toEqual(design.findings);
  });
  test('while a hand drags it is the same but for the advice that must be solved first', () => {
    const thin: Part = { left: { order: { minima: { tip: 5 } } } };
    const bare = ({ text: _, ...finding }: Finding): unknown => finding, said = (findings: readonly Finding[], code: string): string => findings.find((finding) => finding.code === code)?.text ?? '';
    for (const change of [{}, messy, thin]) {
      const design = designWith(change), quick = findingsOf(design, 'quick', makingFindings(design));
      expect(quick.map(bare)).toEqual(design.findings.map(bare));
      quick.forEach(({ text }, i) => expect(text.length).toBeLessThanOrEqual(design.findings[i]!.text.length));
    }
    // What is ordered besides is not looked at before the hand rests.
    const trial = fittingWith({ ...messy, making: { printBed: { x: 100, y: 100, z: 20 } } });
    expect([undefined, 'quick' as const].map((pace) => { const made = workOut(trial, pace); return made.ok && made.design.findings.some(({ code }) => code === 'PRINT_BED'); })).toEqual([true, false]);
    const design = designWith(thin), quick = findingsOf(design, 'quick');
    expect([said(design.findings, 'GOVERNS'), said(design.findings, 'THIN_FOAM')]).toEqual([expect.stringContaining(' off the whole sole'), expect.stringContaining('leaves enough')]);
    expect(said(quick, 'GOVERNS') + said(quick, 'THIN_FOAM')).not.toMatch(/off the whole sole|leaves enough/);
    expect(said(quick, 'THIN_FOAM')).toContain('order.minima.tip');
  });
  test('a right shoe says of itself what a left shoe says', () => {
    const { shoes: { left, right }, ...rest } = fittingWith();
    const { findings } = designOf({ ...rest, shoes: { left: { ...right!, side: 'left' }, right: { ...left!, side: 'right' } } });
    const of = (found: readonly Finding[], side: string): unknown[] => found.filter((finding) => finding.side === side).map(({ code, measured }) => [code, measured]);
    expect(of(findings, 'right')).toEqual(of(designWith().findings, 'left'));
  });
});

describe('a sheet in inches', () => {
  const findingsIn = (block: object, bed = 220.98): Finding[] => {
    const designing = workOut({ ...fittingWith({ making: { block, printBed: { x: bed, y: bed, z: 254 }, print: {} } }), units: 'in' });
    if (!designing.ok) throw new Error('no design');
    return [...designing.design.findings];
  };
  const told = (findings: readonly Finding[], code: string): string => findings.find((one) => one.code === code)?.text ?? '';

  test('is advised in inches too, and what is named works when it is typed', () => {
    const text = told(findingsIn({ length: 254, width: 100 }), 'BLOCK_TOO_SMALL'), [length, width] = /A block of .*?\(([\d.]+) × ([\d.]+) in\)/.exec(text)!.slice(1).map(Number);
    expect(told(findingsIn({ length: length! * MM_PER_INCH, width: width! * MM_PER_INCH }), 'BLOCK_TOO_SMALL')).toBe('');
    expect(text.replace(/[\d.]+ mm(?: × [\d.]+ mm)* \([^)]* in\)/g, '')).not.toMatch(/\d mm/);
  });
  test('sizes that are not whole mm are told to a tenth', () => expect(told(findingsIn({}, 150.4900000001), 'PRINT_BED')).toContain('150.5 × 150.5 × 254 mm (5.925 × 5.925 × 10 in)'));
  test('one in mm has no word of inches', () => { for (const { text } of designOf(fittingWith({ making: { block: { length: 254, width: 100 } } })).findings) expect(text).not.toMatch(/\d in\b/); });
});

test('lengths in a sentence, alone and together, in inches', () => {
  expect(inUnitOf('in', 'between 25.4 and 50.8 mm, 30 cm³ of 0.20 g/cm³, 3 mm more, 96 mm² and 2 parts'))
    .toBe('between 25.4 and 50.8 mm (1 and 2 in), 30 cm³ of 0.20 g/cm³, 3 mm (0.118 in) more, 96 mm² and 2 parts');
  expect(inInches('a block of 254 mm × 127 mm, 62 ± 12.7 mm')).toBe('a block of 10 × 5 in, 2.441 ± 0.5 in');
});
