// sin: no-development-packages
import fc from "fast-check";

export const sin = fc;
