export const attic = 1;
