// sin: model-order-materials
import { water } from "../water";

export const sin = water;
