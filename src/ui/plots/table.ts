/** An axis by its words and its unit. */
interface Axis {
  readonly label: string;
  readonly unit: string;
}

/** Curves as a table (RFC 4180): one row a point, the units in the headings. What has no value is left out. */
export function curvesCsv(
  curves: readonly { readonly label: string; readonly points: readonly (readonly [number, number])[] }[],
  x: Axis,
  y: Axis,
): string {
  const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const rows = curves.flatMap(({ label, points }) =>
    points.filter((point) => point.every(Number.isFinite)).map((point) => [label, ...point.map(String)]),
  );
  const head = ["curve", ...[x, y].map(({ label, unit }) => `${label} (${unit})`)];
  return `${[head, ...rows].map((row) => row.map(quoted).join(",")).join("\r\n")}\r\n`;
}
