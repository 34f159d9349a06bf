import type { BlockOrder, Tool } from '../fitting/making.ts';
import { inDegrees } from '../geometry/units.ts';
import type { ShoeBlock } from '../making/made.ts';
import { ballScallop } from '../making/block/stepOver.ts';

/** Blocks in the numbers of a design: lengths in mm, in the frame the papers tell of (a right shoe's y mirrored). */

export const toolNumbers = ({ diameter, reach, end }: Tool): object => ({ diameterMm: diameter, reachMm: reach, end });

export const blockOrderNumbers = ({ length, width, sheet, sheets, faces, margin, dowel, tab, scallop }: BlockOrder): object => ({
  lengthMm: length, widthMm: width, sheetMm: sheet, sheets, faces, marginMm: margin, dowelMm: dowel, tabWidthMm: tab.width, tabHeightMm: tab.height, scallopMm: scallop,
});

export function blockNumbers({ side, block: { plan, setUps, usualTool } }: ShoeBlock): object {
  const { length, width, height, sheets, glueLines, low, high, lie, pocketWidth, dowels, tabs, tool } = plan, sign = side === 'left' ? 1 : -1;
  return {
    lengthMm: length, widthMm: width, heightMm: height, sheets, glueLinesMm: glueLines, tool: { ...toolNumbers(tool), usual: usualTool },
    partFromMm: low, partToMm: high, turnDeg: inDegrees(lie.turn) * sign, heelMm: [lie.shift[0], lie.shift[1] * sign, lie.shift[2]], pocketWidthMm: pocketWidth,
    dowels: dowels.map(({ at: [x, y], diameter }) => ({ xMm: x, yMm: y * sign, diameterMm: diameter })),
    tabs: tabs.tabs.map(({ place, side: at, at: [x, y], width: wide, from, to }) => ({ place, side: at, xMm: x, yMm: y * sign, widthMm: wide, fromMm: from, toMm: to })),
    setUps: setUps.map(({ face, depth, floor, stickOut, stepOver, passes }) => ({
      face, pocketDepthMm: depth, pocketFloorMm: floor, stickOutMm: stickOut, stepOverMm: stepOver, scallopLevelMm: tool.end === 'ball' ? ballScallop(tool.diameter, stepOver) : undefined, passesMm: passes,
    })),
  };
}
