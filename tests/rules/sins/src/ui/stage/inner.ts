export const stage = 1;
