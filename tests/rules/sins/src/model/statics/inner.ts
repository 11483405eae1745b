export const statics = 1;
