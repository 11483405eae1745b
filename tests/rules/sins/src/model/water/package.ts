// sin: model-without-packages
import { mean } from "d3-array";

export const sin = mean;
