export const bait = 1;
