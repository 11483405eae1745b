export { units } from "./inner";
