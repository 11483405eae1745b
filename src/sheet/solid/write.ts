import { zipSync } from "fflate";
import { laid, type Mesh } from "./mesh";

/** A file of triangles, binary (the common form of STL): 80 bytes of text, the count, and 50 bytes for each. */
export function stlOf(mesh: Mesh, title: string): Uint8Array {
  const { points, triangles } = mesh;
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  const view = new DataView(bytes.buffer);
  // Plain letters only; a text that begins with "solid" would be taken for the form in words.
  const head = `Trimwright, ${title}`.normalize("NFKD").replaceAll(/[^\x20-\x7e]/g, "");
  bytes.set(new TextEncoder().encode(head.padEnd(80).slice(0, 80)));
  view.setUint32(80, count, true);
  const at = (corner: number): readonly [number, number, number] => {
    const p = 3 * (triangles[corner] ?? 0);
    return [points[p] ?? 0, points[p + 1] ?? 0, points[p + 2] ?? 0];
  };
  for (let i = 0; i < count; i++) {
    const [a, b, c] = [at(3 * i), at(3 * i + 1), at(3 * i + 2)];
    const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
    const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
    const size = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    const unit = size > 0 ? n.map((one) => one / size) : [0, 0, 0];
    [...unit, ...a, ...b, ...c].forEach((value, k) => view.setFloat32(84 + 50 * i + 4 * k, value, true));
  }
  return bytes;
}

/** Between the two halves on a printer's plate, mm. */
const GAP = 5;
const DIGITS = 5;

/**
 * Both halves as one file of the 3MF Consortium's core specification 1.3: a ZIP with the model as XML, in millimetres. The
 * halves lie on their inner faces, side by side.
 */
export function threeMfOf(right: Mesh, title: string): Uint8Array {
  const halves = [laid(right, "right"), laid(right, "left")] as const;
  const [low, high] = [least(halves[0]), least(halves[1])];
  const model = `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
 <metadata name="Title">${escaped(title)}</metadata>
 <metadata name="Application">Trimwright</metadata>
 <resources>
${halves.map((one, i) => objectOf(one, i + 1, i === 0 ? "right half" : "left half")).join("\n")}
 </resources>
 <build>
  <item objectid="1" transform="1 0 0 0 1 0 0 0 1 0 ${number(GAP / 2 - low)} 0"/>
  <item objectid="2" transform="1 0 0 0 1 0 0 0 1 0 ${number(-GAP / 2 - most(halves[1], high))} 0"/>
 </build>
</model>
`;
  const text = new TextEncoder();
  return zipSync(
    {
      "[Content_Types].xml": text.encode(
        '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n',
      ),
      "_rels/.rels": text.encode(
        '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>\n',
      ),
      "3D/3dmodel.model": text.encode(model),
    },
    // The same bytes on any day.
    { level: 6, mtime: new Date(1980, 0, 1) },
  );
}

const number = (value: number): string => String(Number(value.toFixed(DIGITS)));

function objectOf({ points, triangles }: Mesh, id: number, name: string): string {
  const vertices: string[] = [];
  for (let i = 0; i < points.length; i += 3)
    vertices.push(
      `<vertex x="${number(points[i] ?? 0)}" y="${number(points[i + 1] ?? 0)}" z="${number(points[i + 2] ?? 0)}"/>`,
    );
  const faces: string[] = [];
  for (let i = 0; i < triangles.length; i += 3)
    faces.push(
      `<triangle v1="${triangles[i] ?? 0}" v2="${triangles[i + 1] ?? 0}" v3="${triangles[i + 2] ?? 0}"/>`,
    );
  return `  <object id="${id}" type="model" name="${name}"><mesh>\n<vertices>\n${vertices.join("\n")}\n</vertices>\n<triangles>\n${faces.join("\n")}\n</triangles>\n</mesh></object>`;
}

/** The least and the greatest y of a mesh. */
function least({ points }: Mesh): number {
  let found = Infinity;
  for (let i = 1; i < points.length; i += 3) found = Math.min(found, points[i] ?? 0);
  return found;
}
function most({ points }: Mesh, from: number): number {
  let found = from;
  for (let i = 1; i < points.length; i += 3) found = Math.max(found, points[i] ?? 0);
  return found;
}

const escaped = (text: string): string =>
  text
    // What XML 1.0 has no place for.
    .replaceAll(/[^\t\n\r\x20-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll('"', "&quot;");
