export { forces } from "./inner";
