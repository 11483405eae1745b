export { sheet } from "./inner";
