import type { Scenario } from "../../document";
import { stemOf, type MadeFile } from "../files";
import { fingerprintOf } from "../fingerprint";
import { laid } from "./mesh";
import type { SolvedHalf } from "./solve";
import { stlOf, threeMfOf } from "./write";

/** The two halves as files: each lies on its inner face, in millimetres, 1 : 1. */
export function solidFiles(scenario: Scenario, { mesh }: SolvedHalf): readonly MadeFile[] {
  const fingerprint = fingerprintOf(scenario);
  const stem = `${stemOf({ scenario, fingerprint })}-1to1-mm`;
  const title = (part: string): string =>
    `${part}, 1:1, mm, fingerprint ${fingerprint.short}, ${scenario.name}`;
  return [
    ...(["right", "left"] as const).map((half): MadeFile => ({
      name: `${stem}-${half}-half.stl`,
      type: "model/stl",
      bytes: stlOf(laid(mesh, half), title(`${half} half`)),
    })),
    { name: `${stem}-halves.3mf`, type: "model/3mf", bytes: threeMfOf(mesh, title("both halves")) },
  ];
}
