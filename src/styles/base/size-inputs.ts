/** The finished size as it enters a formula. */
export const FINISHED_WIDTH = ["mm", "finished width", "figure:measure.finished-width"] as const;
export const FINISHED_LENGTH = ["mm", "finished length", "figure:measure.finished-length"] as const;
