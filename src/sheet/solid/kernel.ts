import Module from "manifold-3d";
import type { ManifoldToplevel } from "manifold-3d";

/** The solid library. It is large and compiled for the browser's own machine: whoever asks for it waits for it. */
export async function solidKernel(): Promise<ManifoldToplevel> {
  const kernel = await Module();
  kernel.setup();
  return kernel;
}
