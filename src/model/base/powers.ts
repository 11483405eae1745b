/** x². The operator ** is the built-in power, whose last bit differs between engines: the model does not use it. */
export const square = (x: number): number => x * x;
/** x³. */
export const cube = (x: number): number => x * x * x;

/** √(a² + b²), without protection from overflow: lengths and forces here are far from it. */
export const hypot = (a: number, b: number): number => Math.sqrt(a * a + b * b);
