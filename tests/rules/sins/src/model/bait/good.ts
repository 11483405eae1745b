import { base } from "../base";
import { shape } from "../shape";

export const good = base + shape;
