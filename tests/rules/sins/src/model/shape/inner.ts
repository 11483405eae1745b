export const shape = 1;
