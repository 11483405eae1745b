// sin: model-order-base
import type { shape } from "../shape";

export type Sin = typeof shape;
