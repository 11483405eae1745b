import { document } from "../document";
import { motion } from "../model/motion";
import { units } from "../units";

export const good = [document, motion, units];
