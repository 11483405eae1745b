/** The window that begins a new bait, in English. */
export const texts = {
  title: "A new bait",
  lead: "All of this can be changed later. It begins as a lipped blank with hooks and coats; its ballast is planned from the weights in your box, or from usual ones.",
  name: "Name",
  notes:
    "A plain lipped blank of the sizes given. Its hooks, eyes, coats and first weights are guesses: weigh yours.",
  nameless: "New bait",
  form: "Form",
  size: "Size, without bib and hooks",
  length: "Length",
  height: "Height",
  breadth: "Breadth",
  woodWater: "Wood and water",
  wood: "Wood",
  water: "Water",
  "water.fresh": "fresh",
  "water.brackish": "brackish",
  "water.salt": "salt",
  temperature: "Its temperature",
  wish: "What it shall do (may be left open)",
  planning: "Planning its ballast …",
  make: "Make this bait",
} as const;
