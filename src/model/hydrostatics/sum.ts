/** A volume under water (m³) and its first moments ∫x dV, ∫z dV (m⁴). */
export interface Sum {
  volume: number;
  x: number;
  z: number;
}

/** Adds a volume with its centroid at (x, z). */
export function add(sum: Sum, volume: number, x: number, z: number): void {
  sum.volume += volume;
  sum.x += volume * x;
  sum.z += volume * z;
}
