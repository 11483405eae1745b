export { statics } from "./inner";
