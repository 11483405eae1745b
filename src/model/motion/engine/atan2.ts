import { cos, sin } from "../../base";

/**
 * atan2 from + − × / and the square root, so that every engine gives the same bits. Within 4e-16 of the true
 * value. A rough angle (Abramowitz & Stegun 1964, 4.4.49: 1e-5), then Newton on x·sin a − y·cos a = 0, whose error falls
 * with the cube at each pass.
 */
export function atan2(y: number, x: number): number {
  const r = Math.sqrt(x * x + y * y);
  if (r === 0) return 0;
  if (!(r < Infinity)) return NaN;
  const ax = Math.abs(x);
  const ay = Math.abs(y);
  const t = ay > ax ? ax / ay : ay / ax;
  const s = t * t;
  const near = t * (0.999866 + s * (-0.3302995 + s * (0.180141 + s * (-0.085133 + s * 0.0208351))));
  let a = ay > ax ? Math.PI / 2 - near : near;
  if (x < 0) a = Math.PI - a;
  if (y < 0) a = -a;
  for (let pass = 0; pass < 2; pass++) {
    const sa = sin(a);
    const ca = cos(a);
    a += (y * ca - x * sa) / (x * ca + y * sa);
  }
  return a;
}
