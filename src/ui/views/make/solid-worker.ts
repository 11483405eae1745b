import { compile, USUAL_DRILLS } from "../../../document";
import { solidFigures, solidFiles, solidKernel, solveHalf } from "../../../sheet";
import { toSI } from "../../../units";
import type { SolidAsked, SolidTold } from "./solid";

/** What is used of a worker's own scope. */
interface Scope {
  postMessage(told: SolidTold, moved?: Transferable[]): void;
  addEventListener(type: "message", then: (event: MessageEvent<SolidAsked>) => void): void;
}
const scope = self as unknown as Scope;

scope.addEventListener("message", ({ data: { scenario, drills_mm } }) => {
  make(scenario, drills_mm).catch((fault: unknown) =>
    scope.postMessage({ kind: "failed", why: fault instanceof Error ? fault.message : String(fault) }),
  );
});

async function make(scenario: SolidAsked["scenario"], drills: readonly number[]): Promise<void> {
  const tell = (done: number, of: number, what: string): void =>
    scope.postMessage({ kind: "progress", done, of, what });
  tell(0, 1, "library");
  const kernel = await solidKernel();
  const { bait } = compile(scenario);
  const mm = drills.length > 0 ? drills : USUAL_DRILLS;
  const solved = solveHalf(
    kernel,
    bait,
    mm.map((one) => toSI(one, "mm")),
    (done, of, what) => tell(done, of + 1, what),
  );
  const { edges, open, cuts, out, mesh } = solved;
  tell(cuts.length + 2, cuts.length + 3, "files");
  const files = solidFiles(scenario, solved);
  scope.postMessage(
    {
      kind: "made",
      made: {
        figures: solidFigures(bait, solved),
        edges,
        open,
        cuts,
        out,
        triangles: mesh.triangles.length / 3,
        files,
      },
    },
    files.map((one) => one.bytes.buffer as ArrayBuffer),
  );
}
