export const motion = 1;
