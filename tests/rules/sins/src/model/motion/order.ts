// sin: model-order-motion
// sin: model-known-rooms
import { attic } from "../attic";

export const sin = attic;
