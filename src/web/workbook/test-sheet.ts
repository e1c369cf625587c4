import { makeTestSheet, type PaperKind } from "../../workbook/index.ts";
import { download } from "../persistence/job-file.ts";
import { fetchWorkbookFonts } from "./fonts.ts";

/** Sets the sheet for the tests at the bench and hands it to the downloads. */
export async function downloadTestSheet(paper: PaperKind): Promise<void> {
  const bytes = await makeTestSheet(paper, await fetchWorkbookFonts());
  download(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/pdf" }), "bench-tests.pdf");
}
