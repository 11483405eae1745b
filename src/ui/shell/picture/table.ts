/** A cell's words on one line. What only a screen reader is told is no part of the table; of a choice, what is chosen is. */
function wordsOf(node: Node): string {
  if (node instanceof HTMLSelectElement) return node.selectedOptions[0]?.textContent ?? "";
  if (node instanceof Element && (node.classList.contains("unseen") || node instanceof SVGElement)) return "";
  const text =
    node.nodeType === Node.TEXT_NODE ? node.textContent : [...node.childNodes].map(wordsOf).join(" ");
  return (text ?? "").replaceAll("\u2212", "-").replaceAll(/\s+/g, " ").trim();
}

/** The page writes numbers with a decimal point, and perhaps a comma between thousands; or with a decimal comma. */
export type DecimalMark = "." | ",";

/** A number with its unit, as the page writes them: ‘-4.14 g’, ‘12.0°’, ‘0.43’. */
const NUMBERS: Readonly<Record<DecimalMark, RegExp>> = {
  ".": /^([+-]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?)\s?([^\d\s,;()]{0,6}(?:\/[^\d\s,;()]{1,4})?)$/,
  ",": /^([+-]?\d+(?:,\d+)?)\s?([^\d\s,;()]{0,6}(?:\/[^\d\s,;()]{1,4})?)$/,
};
/** A number for other programs: a decimal point, nothing between thousands. */
const plain = (number: string, decimal: DecimalMark): string =>
  decimal === "." ? number.replaceAll(",", "") : number.replace(",", ".");

/** RFC 4180: what holds a comma, a quote or a line's end stands in quotes. */
const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/**
 * Rows of words as CSV (RFC 4180), the headings first. Where all numbers of a column have one unit, the unit stands in the
 * heading, and the numbers stand alone. They are those that the page shows, rounded as there, with a decimal point.
 */
export function csvOf(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  decimal: DecimalMark = ".",
): string {
  const NUMBER = NUMBERS[decimal];
  const units = head.map((_, column) => {
    const all = rows.flatMap((row) => {
      const unit = NUMBER.exec(row[column] ?? "")?.[2];
      return unit === undefined ? [] : [unit];
    });
    const [first] = all;
    return first !== undefined && first !== "" && all.every((one) => one === first) ? first : null;
  });
  const heading = head.map((text, i) => (units[i] === null ? text : `${text} (${units[i] ?? ""})`.trim()));
  const lines = rows.map((row) =>
    row.map((text, i) => {
      const number = NUMBER.exec(text);
      const own = number?.[2] ?? "";
      return number !== null && (own === "" || own === units[i]) ? plain(number[1] ?? "", decimal) : text;
    }),
  );
  return `${[heading, ...lines].map((row) => row.map(quoted).join(",")).join("\r\n")}\r\n`;
}

/** A table of the page as CSV. A cell that spans several columns stands in the first of them. */
export function tableText(table: HTMLTableElement, decimal: DecimalMark): string {
  const all = [...table.rows].map((row) =>
    [...row.cells].flatMap((cell) => [wordsOf(cell), ...Array.from({ length: cell.colSpan - 1 }, () => "")]),
  );
  const inHead = table.tHead?.rows.length ?? 0;
  const width = Math.max(0, ...all.map((row) => row.length));
  const head = Array.from({ length: width }, (_, i) =>
    all
      .slice(0, inHead)
      .map((row) => row[i] ?? "")
      .filter((one) => one !== "")
      .join(", "),
  );
  return csvOf(
    head,
    all.slice(inHead).map((row) => Array.from({ length: width }, (_, i) => row[i] ?? "")),
    decimal,
  );
}
