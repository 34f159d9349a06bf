import { strToU8, zipSync } from 'fflate';
import type { Mesh } from '../geometry/mesh.ts';
import type { Turn } from '../making/print/turns.ts';
import { weldedStl } from '../geometry/stlMesh.ts';
import { stlBytes } from './stl.ts';

/**
 * Parts on a print bed as a 3MF file: a zip of XML that names its unit and every part.
 * Source: 3MF Core Specification 1.3 (3MF Consortium), from memory: package parts, model, mesh, build, transforms.
 */

/** A part with the turn it is printed in and where it then stands, mm. */
export interface BedPart { readonly name: string; readonly mesh: Mesh; readonly turn: Turn; readonly by: readonly [number, number, number] }

/** The same parts give the same bytes: a zip has no date before 1980. */
const SAME_DAY = new Date(1980, 0, 1);

/**
 * @param title what the file is, like `K-207 left and right`
 * @throws Error when a part is not one closed skin, which is a fault of this program
 */
export function threeMfBytes(parts: readonly BedPart[], title: string): Uint8Array {
  const files = { '[Content_Types].xml': CONTENT_TYPES, '_rels/.rels': RELATIONS, '3D/3dmodel.model': model(parts, title) };
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, xml]) => [name, strToU8(xml)])), { mtime: SAME_DAY, level: 6 });
}

const XML = '<?xml version="1.0" encoding="UTF-8"?>\n';
const CONTENT_TYPES = `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
`;
const RELATIONS = `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
`;

const model = (parts: readonly BedPart[], title: string): string => `${XML}<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
<metadata name="Title">${escaped(title)}</metadata>
<resources>
${parts.map(object).join('')}</resources>
<build>
${parts.map(({ turn, by }, i) => `<item objectid="${i + 1}" transform="${transform(turn, by)}"/>\n`).join('')}</build>
</model>
`;

/** The very corners of the STL file of the part: what one program reads, the other does too. */
function object({ name, mesh }: BedPart, i: number): string {
  const { positions: p, triangles: t } = weldedStl(stlBytes(mesh, name)), lines: string[] = [];
  for (let k = 0; k < p.length; k += 3) lines.push(`<vertex x="${written(p[k]!)}" y="${written(p[k + 1]!)}" z="${written(p[k + 2]!)}"/>`);
  lines.push('</vertices>', '<triangles>');
  for (let k = 0; k < t.length; k += 3) lines.push(`<triangle v1="${t[k]!}" v2="${t[k + 1]!}" v3="${t[k + 2]!}"/>`);
  return `<object id="${i + 1}" type="model" name="${escaped(name)}">\n<mesh>\n<vertices>\n${lines.join('\n')}\n</triangles>\n</mesh>\n</object>\n`;
}

/** The format multiplies a row of numbers from the left, so the turn is written column by column. */
const transform = ([a, b, c]: Turn, by: BedPart['by']): string =>
  [a[0], b[0], c[0], a[1], b[1], c[1], a[2], b[2], c[2], ...by].map((value) => written(value, 9)).join(' ');

/** Never an exponent, never minus nought. */
const written = (value: number, places = 6): string => String(Number(value.toFixed(places)) + 0);

const MARKS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (mark) => MARKS[mark]!);
