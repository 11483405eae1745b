export { density, densityIpts68, viscosity, water } from "./water";
export type { Water } from "./water";
export { surfaceTension } from "./tension";
