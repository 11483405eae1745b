import { cos, random, sin } from "../base";
import type { Bait } from "../bait";
import { noDraw, Uncertain } from "./uncertain";

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

/** The draws behind a band (docs/model.md §3, Uncertainty), for other results that are computed from the same draws. */
export function draws(bait: Bait, density: number, samples: number, seed: number): Draws {
  const model = new Uncertain(bait, density);
  const normals = new Float64Array(model.size);
  const out = noDraw();
  const drawn = (): Drawn => ({
    net: out.netBuoyancy,
    x: -out.BG * sin(out.pitch),
    z: -out.BG * cos(out.pitch),
  });
  const take = (): Drawn => {
    model.draw(normals, out);
    return drawn();
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
    model.next(normal, normals, out);
    return drawn();
  });
  return { own, all, inputs };
}
