export const parts = 1;
