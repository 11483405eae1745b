// sin: model-order-bench
import { motion } from "../motion";

export const sin = motion;
