// sin: model-order-base
import { water } from "../water";

export const sin = water;
