export { water } from "./inner";
