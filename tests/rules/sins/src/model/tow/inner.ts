export const tow = 1;
