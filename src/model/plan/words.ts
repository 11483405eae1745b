export const grams = (kg: number): string => `${(kg * 1e3).toFixed(2)} g`;
export const millimetres = (m: number): string => `${(m * 1e3).toFixed(1)} mm`;
export const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)}°`;
