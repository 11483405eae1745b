// sin: model-order-bait
import { statics } from "../statics";

export const sin = statics;
