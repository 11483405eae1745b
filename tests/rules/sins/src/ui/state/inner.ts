export const state = 1;
