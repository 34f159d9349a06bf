/** Layers along which something is cut, routed or bored. */
const CUTTING = ['CUT', 'CUT_IN', 'CUT_OUT', 'OUTSOLE_FLAT', 'POCKET', 'DOWELS', 'BOLTS', 'POUR_HOLE', 'VENTS', 'FLASH_GROOVE', 'CAVITY_EDGE', 'MOULD_BORDER'];

/** Colours of the layers of a drawing by their names, read from its table of layers: 2 is a name there, 62 a colour. */
function coloursIn(dxf: string): Map<string, number> {
  const lines = dxf.split('\r\n'), found = new Map<string, number>();
  for (let i = 0, name = ''; i + 1 < lines.length && lines[i + 1] !== 'ENTITIES'; i += 2) {
    if (Number(lines[i]) === 2) name = lines[i + 1]!;
    if (Number(lines[i]) === 62) found.set(name, Number(lines[i + 1]));
  }
  found.delete('0');   // every drawing has it, and nothing lies on it
  return found;
}

/** Pairs of layers in one drawing of which one is cut and the other is not, though a machine that sorts by colour cannot tell them apart. */
export function mistakenForCuts(dxf: string): string[] {
  const colours = [...coloursIn(dxf)], cut = colours.filter(([name]) => CUTTING.includes(name));
  return colours.filter(([name]) => !CUTTING.includes(name)).flatMap(([name, colour]) => cut.flatMap(([other, same]) => (same === colour ? [`${name} as ${other}`] : [])));
}
