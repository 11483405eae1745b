export const hydrostatics = 1;
