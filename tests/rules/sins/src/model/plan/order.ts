// sin: model-order-plan
import { forces } from "../forces";

export const sin = forces;
