export { density, densityIpts68, viscosity, water, WATER_RANGE } from "./water";
export type { Water } from "./water";
export { surfaceTension } from "./tension";
