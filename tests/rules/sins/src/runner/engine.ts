// sin: planck-only-in-motion
import { World } from "planck";

export const sin = World;
