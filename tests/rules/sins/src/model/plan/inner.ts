export const plan = 1;
