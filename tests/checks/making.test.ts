import { describe, expect, test } from 'vitest';
import { layOn, smallestSquare } from '../../src/checks/bedFit.ts';
import { inDegrees } from '../../src/geometry/units.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { codesOf, one, rockerWith, type Part } from './support.ts';

describe('making', () => {
  test('the cutter must stick out 5 mm beyond the part', () => {
    const { least, most } = heightsOf(rockerWith()), needed = most - least + 5;
    const reach = (value: number): string[] => codesOf({ making: { tool: { diameter: 12, reach: value } } }).filter((code) => code === 'TOOL_REACH');
    expect(reach(needed - 0.01)).toHaveLength(1);
    expect(reach(needed)).toHaveLength(0);
    expect(codesOf()).not.toContain('TOOL_REACH');
    const named = Number(/one that reaches (\d+) mm/.exec(one('TOOL_REACH', { making: { tool: { diameter: 12, reach: 10 } } })!.text)![1]);
    expect([reach(named), reach(named - 1)]).toEqual([[], ['TOOL_REACH']]);
  });
  const heightsOf = ({ solids: { foam } }: RockerShoe): { least: number; most: number } => {
    const heights = [...foam.positions].filter((_, i) => i % 3 === 2);
    return { least: Math.min(...heights), most: Math.max(...heights) };
  };
  const bed = (x: number, y = x, z = 200): Part => ({ making: { printBed: { x, y, z } } });
  test('a small bed warns with a size that takes the sole, a large one is silent, one between has it turned', () => {
    const found = one('PRINT_BED', bed(220))!, size = Number(/A bed of (\d+) ×/.exec(found.text)![1]);
    expect(codesOf(bed(size)).filter((code) => code.startsWith('PRINT'))).toEqual(expect.arrayContaining(['PRINT_TURNED']));
    const turned = one('PRINT_TURNED', bed(size))!;
    expect([turned.unit, `long axis ${turned.measured!.toFixed(0)}°`]).toEqual(['deg', /long axis \d+°/.exec(turned.text)![0]]);
    expect(codesOf(bed(size))).not.toContain('PRINT_BED');
    expect(codesOf(bed(size - 2))).toContain('PRINT_BED');
    expect(codesOf(bed(300)).filter((code) => code.startsWith('PRINT'))).toEqual([]);
    expect(codesOf(bed(120, 300)).filter((code) => code.startsWith('PRINT'))).toEqual([]);
  });
  test('a low printer warns with the height that works', () => {
    const found = one('PRINT_BED', bed(300, 300, 40))!, height = Number(/needs (\d+) mm of height/.exec(found.text)![1]);
    expect(codesOf(bed(300, 300, height))).not.toContain('PRINT_BED');
  });
  /** A bar of a width with round ends, length over all. */
  const bar = (length: number, width: number): Point[] => [-1, 1].flatMap((end) => Array.from({ length: 181 }, (_, i): Point => {
    const angle = ((i - 90) * Math.PI) / 180, radius = width / 2;
    return [end * (length / 2 - radius + radius * Math.cos(angle)), radius * Math.sin(angle)];
  }));
  test.each([[220, 257.6], [235, 278.8], [256, 308.5]])('a bed of %d mm takes a bar of %d mm, 95 round at the ends, laid diagonally', (side, length) => {
    // Plain geometry: (side - 2 margin - width) times the root of 2, and the width.
    expect(length).toBeCloseTo((side - 10 - 95) * Math.SQRT2 + 95, 1);
    const laid = layOn(bar(length - 0.1, 95), { x: side, y: side }, 5);
    expect(laid.fits).toBe(true);
    expect(inDegrees(laid.turn)).toBeCloseTo(45, 0);
    expect(smallestSquare(bar(length - 0.1, 95), 5).side).toBeCloseTo(side, 0);
    expect(layOn(bar(length + 0.2, 95), { x: side, y: side }, 5).fits).toBe(false);
  });
});
