export const line = 1;
