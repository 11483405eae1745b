export { state } from "./inner";
