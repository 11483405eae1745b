// sin: motion-only-planck
import { scaleLinear } from "d3-scale";

export const sin = scaleLinear;
