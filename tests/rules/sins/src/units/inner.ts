export const units = 1;
