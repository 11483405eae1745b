// sin: model-order-statics
import { forces } from "../forces";

export const sin = forces;
