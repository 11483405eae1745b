import { encode } from "uqr";
import type { SheetJob } from "../job";
import type { Flow } from "../paper/flow";
import { TYPE, wrapped } from "../paper/pen";

/** Side of the code, mm, and the white that a reader needs round it, in modules (ISO/IEC 18004). */
const SIDE = 27;
const QUIET = 4;
const HAIR = 0.02;

/** What the code says. Capitals make it smaller: the code has a shorter alphabet for them. */
export const codeText = ({ fingerprint }: SheetJob): string =>
  `TRIMWRIGHT SHA-256 ${fingerprint.full.toUpperCase()}`;

/** The document's fingerprint as text and as a QR code. */
export function identity(flow: Flow, job: SheetJob): void {
  const { full, short } = job.fingerprint;
  flow.block(SIDE + 1, (pen, width) => {
    const { data, size } = encode(codeText(job), { ecc: "M", border: 0 });
    const module = SIDE / (size + 2 * QUIET);
    const left = width - SIDE + QUIET * module;
    const top = QUIET * module;
    // Neighbouring dark modules of a row are one area: no hairline of white is printed between them.
    const dark = data.flatMap((row, y) => {
      const runs: { x: number; y: number; n: number }[] = [];
      row.forEach((on, x) => {
        const before = runs.at(-1);
        if (!on) return;
        if (before && before.x + before.n === x) before.n += 1;
        else runs.push({ x, y, n: 1 });
      });
      return runs;
    });
    pen.fill(
      0,
      ...dark.map(({ x, y, n }) => {
        const [x0, y0] = [left + x * module, top + y * module];
        // A hair taller, so that rows touch.
        const [x1, y1] = [x0 + n * module, y0 + module + HAIR];
        return [
          { x: x0, y: y0 },
          { x: x1, y: y0 },
          { x: x1, y: y1 },
          { x: x0, y: y1 },
        ];
      }),
    );
    const room = width - SIDE - 4;
    pen.text({ x: 0, y: 4 }, `Fingerprint ${short}`, { size: TYPE.heading, weight: "bold" });
    const words = `It is the beginning of the SHA-256 of the bait's file as Trimwright saves it. The sheet and a saved file belong together where these digits agree: ${full}`;
    wrapped(pen.fonts, pen.words(words), room, TYPE.small).forEach((line, i) =>
      pen.text({ x: 0, y: 9.5 + i * 1.3 * TYPE.small }, line, { size: TYPE.small, own: true }),
    );
  });
}
