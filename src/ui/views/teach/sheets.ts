import type { Outcome, Student } from "../../../lesson";

/** The sheet of one student: the numbers of that student, and what they come to. */
export interface Sheet {
  readonly student: Student;
  readonly outcome: Outcome;
}
