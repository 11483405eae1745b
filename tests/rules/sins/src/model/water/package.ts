// sin: model-without-packages
import { scaleLinear } from "d3-scale";

export const sin = scaleLinear;
