export { shape } from "./inner";
