/** The menu of the bar at the top, in English; what stands in the bar too is in page/. */
export const texts = {
  openFile: "Open a file",
  saveFile: "Save to a file",
  "unit.length": "Lengths",
  "unit.mass": "Weights",
  "unit.temperature": "Temperature",
  paper: "Paper",
  "paper.auto": "As the system",
  "paper.light": "Light",
  "paper.dark": "Dark",
  language: "Language",
  languageNote: "Still in English: {views}.",
  recipe: "Recipe and versions",
  pictures: "Pictures and tables",
  lead: "Lead me to a bait",
  cautions: "Show the cautions again",
} as const;
