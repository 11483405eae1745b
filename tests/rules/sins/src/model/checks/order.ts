// sin: model-order-checks
import { forces } from "../forces";

export const sin = forces;
