import papaparse from "papaparse";
import { planFiles } from "../../src/cli/plan-files.ts";
import type { OutFile } from "../../src/cli/write-files.ts";
import type { Job } from "../../src/job/index.ts";
import { type CuttingPlan, type Plan, planAndCut } from "../../src/plan/index.ts";
import { openPdf, type ReadPage, readPages } from "../workbook/read-pdf.ts";

/** Everything that is written for a job, read back by readers that are not ours. */
export interface OutFiles {
  plan: Plan;
  cutting: CuttingPlan | undefined;
  /** Text files by path. */
  texts: ReadonlyMap<string, string>;
  pages: ReadPage[];
}

export async function outFiles(job: Job): Promise<OutFiles> {
  // Few tries: what is compared does not hang on how good the cutting plan is.
  const { plan, cutting } = planAndCut(job, {}, 3);
  const texts = new Map<string, string>();
  let pages: ReadPage[] = [];
  const paper = plan.units.system === "imperial" ? "letter" : "a4";
  const createdOn = new Date(Date.UTC(2025, 2, 1));
  for await (const { path, content } of planFiles({
    plan,
    ...(cutting ? { cutting } : {}),
    paper,
    createdOn,
  })) {
    const bytes = await bytesOf(content);
    if (path.endsWith(".pdf")) pages = await readPages(await openPdf(bytes));
    else texts.set(path, new TextDecoder().decode(bytes));
  }
  return { plan, cutting, texts, pages };
}

/** A file as it would be written, whole or piece by piece. */
async function bytesOf(content: OutFile["content"]): Promise<Uint8Array> {
  if (typeof content === "string") return new TextEncoder().encode(content);
  if (typeof content !== "function") return content;
  const pieces: Uint8Array[] = [];
  await content(async (piece) => {
    pieces.push(piece);
  });
  return Buffer.concat(pieces);
}

/** A list as a spreadsheet reads it: one record a row, by its headings. */
export function listIn({ texts }: OutFiles, name: string): Record<string, string>[] {
  const text = texts.get(`lists/${name}.csv`) ?? texts.get(`cutting/${name}.csv`);
  if (text === undefined) throw new Error(`no list ${name}`);
  const { data, errors } = papaparse.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  });
  if (errors.length > 0) throw new Error(`${name}: ${JSON.stringify(errors[0])}`);
  return data;
}

/** Pages of one set, found by its name at their foot, as one text. */
export function setIn({ pages }: OutFiles, title: string): string {
  return pages
    .filter(({ runs, heightPt }) => runs.some((run) => run.text === title && run.y > heightPt - 50))
    .map((page) => page.text)
    .join(" ");
}

/** A text without its blanks: words are broken at line ends and hyphens where it is printed. */
export function unbroken(text: string): string {
  return text.replace(/\s+/g, "");
}
