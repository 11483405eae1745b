import type { Fonts } from "../paper/font";
import { LINES, type Item, type Page, type Point, type Weight } from "../paper/page";

/** A fixed day: the bytes of a sheet depend on its document alone. */
const DAY = "D:20000101000000+00'00'";
const FAMILY = "SourceSans3";
const STYLES: Readonly<Record<Weight, "normal" | "bold">> = { regular: "normal", bold: "bold" };
/** Points of type to a millimetre (an inch is 72 of them). */
const POINTS = 72 / 25.4;

/** A font file as the text that the PDF library takes: one sign for each byte. */
function asText(bytes: Uint8Array): string {
  const piece = 0x8000;
  let text = "";
  for (let i = 0; i < bytes.length; i += piece) text += String.fromCharCode(...bytes.subarray(i, i + piece));
  return text;
}

/**
 * The pages as a PDF in true size. Viewers are asked not to scale it when they print.
 * @param id 32 hexadecimal digits that stand for the document
 */
export async function pdfOf(
  pages: readonly Page[],
  fonts: Fonts,
  title: string,
  id: string,
): Promise<Uint8Array> {
  const { jsPDF } = await import("jspdf");
  const [first] = pages;
  if (!first) throw new RangeError("A PDF has one page or more.");
  const format = ({ size }: Page): [number, number] => [size.width, size.height];
  const pdf = new jsPDF({ unit: "mm", format: format(first), compress: true, putOnlyUsedFonts: true });
  pdf.setCreationDate(DAY);
  pdf.setFileId(id.toUpperCase());
  pdf.setDocumentProperties({ title, creator: "Trimwright" });
  pdf.viewerPreferences({ PrintScaling: "None", DisplayDocTitle: true });
  for (const weight of ["regular", "bold"] as const) {
    const file = `${FAMILY}-${weight}.ttf`;
    pdf.addFileToVFS(file, asText(fonts[weight].bytes));
    pdf.addFont(file, FAMILY, STYLES[weight]);
  }
  const trace = (points: readonly Point[], closed: boolean): void => {
    points.forEach(({ x, y }, i) => (i === 0 ? pdf.moveTo(x, y) : pdf.lineTo(x, y)));
    if (closed) pdf.close();
  };
  const draw = (item: Item): void => {
    switch (item.kind) {
      case "path": {
        const { width, dash, grey } = LINES[item.role];
        pdf.setLineWidth(width);
        pdf.setLineDashPattern([...dash], 0);
        pdf.setDrawColor(String(grey));
        trace(item.points, item.closed);
        pdf.stroke();
        return;
      }
      case "fill":
        pdf.setFillColor(String(item.grey));
        for (const one of item.polygons) trace(one, true);
        pdf.fill();
        return;
      case "text":
        pdf.setFont(FAMILY, STYLES[item.weight]);
        pdf.setFontSize(item.size * POINTS);
        pdf.setTextColor(String(item.grey));
        pdf.text(item.words, item.at.x, item.at.y, item.upright ? { angle: 90 } : {});
    }
  };
  pages.forEach((page, i) => {
    if (i > 0) pdf.addPage(format(page));
    page.items.forEach(draw);
  });
  return new Uint8Array(pdf.output("arraybuffer"));
}
