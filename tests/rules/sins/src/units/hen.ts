import { egg } from "./egg";

export const hen = (): unknown => egg;
