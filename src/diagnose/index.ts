export { askLock, type LockAnswer } from "./ask-lock.ts";
export type { Cause, Evidence } from "./cause.ts";
export { answersCause, CAUSES, diagnose } from "./diagnose.ts";
export { type KnotMove, type Levelling, levelHem, type MeasuredHem } from "./level-hem.ts";
export { PART_TESTS, type PartTest, type TestReading, testResultText } from "./measure-your-part.ts";
export { SYMPTOM_NAMES, SYMPTOMS, type Symptom } from "./symptoms.ts";
