// sin: folder-order-lesson
import { drawing } from "../drawing";

export const sin = drawing;
