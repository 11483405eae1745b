import { Application } from "pixi.js";
import { motion } from "../../model/motion";

export const good = [Application, motion];
