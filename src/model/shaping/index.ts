export { bodyOfForm, FORM_LIMITS, FORMS } from "./forms";
export type { BodyForm, FormWords } from "./forms";
export { fitSection } from "./caliper";
export type { CaliperReading, SectionFit } from "./caliper";
export { tracedBreadth, tracedOutline } from "./outline";
export type { TracedBreadth, TracedOutline } from "./outline";
