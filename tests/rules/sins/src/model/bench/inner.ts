export const bench = 1;
