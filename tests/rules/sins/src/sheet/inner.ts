export const sheet = 1;
