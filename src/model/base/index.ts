export type { SurfacePlane, Sym3, Vec, Wrench } from "./types";
