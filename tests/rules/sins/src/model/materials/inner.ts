export const materials = 1;
