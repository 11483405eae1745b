export { floatFigures } from "./afloat";
export { answers } from "./answers.svelte";
export { leverFigure, restFigure, uprightUnderWater } from "./attitude";
export { asking, attitudeWords, degrees, type Figure } from "./figure";
export { massFigures } from "./mass";
export { chanceFigure, netFigure, verdictSentence } from "./net";
export { riseFigures } from "./rise";
