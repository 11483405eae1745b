// sin: model-order-hydrostatics
import { statics } from "../statics";

export const sin = statics;
