export const document = 1;
