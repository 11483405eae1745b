export const forces = 1;
