export const shaping = 1;
