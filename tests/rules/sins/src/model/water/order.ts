// sin: model-order-water
import { shape } from "../shape";

export const sin = shape;
