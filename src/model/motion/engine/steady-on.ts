// Runs before the engine's own module (see planck.ts): it takes sin, cos and atan2 from Math once, when it loads, and the
// built-in ones differ in the last bit from one JavaScript engine to another. `steady-off` puts them back.
import { atan2 } from "../../base";
import { keptCos, keptSin } from "./turns";

export const builtin = { sin: Math.sin, cos: Math.cos, atan2: Math.atan2 };

Object.assign(Math, { sin: keptSin, cos: keptCos, atan2 });
