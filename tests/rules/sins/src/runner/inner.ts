export const runner = 1;
