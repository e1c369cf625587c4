/** One workbook, or a front for the job and one workbook a room or a shade. */
export type WorkbookFiles = "one" | "room" | "shade";

/** Windows up to which all is one workbook where nobody says: about a ream of paper. */
export const MOST_IN_ONE_BOOK = 60;

/** How the workbooks of so many windows are bound where nobody says. */
export function usualFiles(windows: number): WorkbookFiles {
  return windows > MOST_IN_ONE_BOOK ? "room" : "one";
}
