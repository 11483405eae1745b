// sin: model-order-forces
import { line } from "../line";

export const sin = line;
