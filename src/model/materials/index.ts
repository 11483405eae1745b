export type { LineMaterial, Material, MaterialClass } from "./types";
export { densitySpread, lineMaterial, material, materials, nearestNames } from "./find";
export { lineMaterials, lineStiffness } from "./lines";
