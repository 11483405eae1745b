import { builtin } from "./steady-on";

Object.assign(Math, builtin);
