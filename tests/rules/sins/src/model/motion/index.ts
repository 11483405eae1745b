export { motion } from "./inner";
