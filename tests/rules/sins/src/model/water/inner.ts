export const water = 1;
