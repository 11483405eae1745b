// sin: pixi-only-in-stage
import { Graphics } from "pixi.js";

export const sin = Graphics;
