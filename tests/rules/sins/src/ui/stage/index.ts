export { stage } from "./inner";
