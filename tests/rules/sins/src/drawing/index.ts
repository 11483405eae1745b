export { drawing } from "./inner";
