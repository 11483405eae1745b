// sin: only-doors
import { shape } from "../shape/inner";

export const sin = shape;
