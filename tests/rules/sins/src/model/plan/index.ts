export { plan } from "./inner";
