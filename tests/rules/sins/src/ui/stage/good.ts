import { Application } from "pixi.js";
import { drawing } from "../../drawing";
import { motion } from "../../model/motion";

export const good = [Application, drawing, motion];
