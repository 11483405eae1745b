import { random } from "../base";
import type { Bait } from "../bait";
import { Uncertain } from "./uncertain";
import type { Draw } from "./uncertain";

/** Net buoyancy (kg) and the offset of G from B (m, x forward, z up) of one draw. */
export interface Drawn {
  readonly net: number;
  readonly x: number;
  readonly z: number;
}

export interface Draws {
  /** The bait of the file. */
  readonly own: Drawn;
  /** One draw after the other. */
  readonly all: readonly Drawn[];
  /** Each input by itself, one standard deviation up and down. */
  readonly inputs: readonly { readonly input: string; readonly up: Drawn; readonly down: Drawn }[];
}

/** The draws behind a band (docs/model.md §3, Uncertainty), for what is worked out from them elsewhere. */
export function draws(bait: Bait, density: number, samples: number, seed: number): Draws {
  const model = new Uncertain(bait, density);
  const normals = new Float64Array(model.size);
  const out: Draw = { netBuoyancy: 0, pitch: 0, BG: 0 };
  const take = (): Drawn => {
    model.draw(normals, out);
    return { net: out.netBuoyancy, x: -out.BG * Math.sin(out.pitch), z: -out.BG * Math.cos(out.pitch) };
  };
  const own = take();
  const inputs = model.labels.map((input, k) => {
    normals[k] = 1;
    const up = take();
    normals[k] = -1;
    const down = take();
    normals[k] = 0;
    return { input, up, down };
  });
  const normal = random(seed);
  const all = Array.from({ length: samples }, () => {
    for (let k = 0; k < normals.length; k++) normals[k] = normal.normal();
    return take();
  });
  return { own, all, inputs };
}
