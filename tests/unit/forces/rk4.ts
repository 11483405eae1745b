import type { Acceleration, State } from "../../../src/model/forces";

/** One classical Runge–Kutta step of a free body's state, in place. `rate` gives du/dt, dw/dt, dq/dt. */
export function advance(s: State, h: number, rate: (state: State) => Acceleration): void {
  type Rate = readonly [number, number, number, number, number, number];
  const full = (p: State): Rate => {
    const [du, dw, dq] = rate(p);
    const sin = Math.sin(p.pitch);
    const cos = Math.cos(p.pitch);
    return [du, dw, dq, p.q, p.u * cos - p.w * sin, p.u * sin + p.w * cos];
  };
  const moved = (k: Rate, f: number): State => ({
    u: s.u + f * k[0],
    w: s.w + f * k[1],
    q: s.q + f * k[2],
    pitch: s.pitch + f * k[3],
    X: s.X + f * k[4],
    Z: s.Z + f * k[5],
  });
  const k1 = full(s);
  const k2 = full(moved(k1, h / 2));
  const k3 = full(moved(k2, h / 2));
  const k4 = full(moved(k3, h));
  const mean = (i: 0 | 1 | 2 | 3 | 4 | 5): number => (h / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  s.u += mean(0);
  s.w += mean(1);
  s.q += mean(2);
  s.pitch += mean(3);
  s.X += mean(4);
  s.Z += mean(5);
}
