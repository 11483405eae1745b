export const plots = 1;
