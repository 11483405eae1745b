// sin: model-order-tow
import { motion } from "../motion";

export const sin = motion;
