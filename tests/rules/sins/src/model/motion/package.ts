// sin: motion-only-planck
import { mean } from "d3-array";

export const sin = mean;
