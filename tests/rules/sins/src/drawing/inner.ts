export const drawing = 1;
