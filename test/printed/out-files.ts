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
  const cut = cutting === undefined ? {} : { cutting };
  for await (const { path, content } of planFiles({ plan, ...cut, paper, createdOn: new Date(0) })) {
    if (path.endsWith(".pdf")) pages = await readPages(await openPdf(await bytesOf(content)));
    else texts.set(path, typeof content === "string" ? content : WITH_MARK.decode(await bytesOf(content)));
  }
  return { plan, cutting, texts, pages };
}

/** A byte order mark is part of what is written. */
const WITH_MARK = new TextDecoder("utf-8", { ignoreBOM: true });

/** What is written piece by piece, whole. */
async function bytesOf(content: OutFile["content"]): Promise<Uint8Array> {
  if (typeof content === "string") return new TextEncoder().encode(content);
  if (typeof content !== "function") return content;
  const chunks: Uint8Array[] = [];
  await content(async (chunk) => {
    chunks.push(chunk);
  });
  return new Uint8Array(Buffer.concat(chunks));
}

/** `From selvage, mm` → `fromSelvedgeMm`: as the list has it within the program. */
function columnName(heading: string): string {
  const [words = "", unit] = heading
    .replace(/selvage/g, "selvedge")
    .replace(/fabric/gi, (word) => (word === "Fabric" ? "Cloth" : "cloth"))
    .split(", ");
  const camel = words
    .replace(/ (.)/g, (_, letter: string) => letter.toUpperCase())
    .replace(/^./, (letter) => letter.toLowerCase());
  return unit === undefined ? camel : `${camel}${unit === "mm" ? "Mm" : "In"}`;
}

/** A list as a spreadsheet reads it: one record a row, by its headings. */
export function listIn({ texts }: OutFiles, name: string): Record<string, string>[] {
  const text = texts.get(`lists/${name}.csv`) ?? texts.get(`cutting/${name}.csv`);
  if (text === undefined) throw new Error(`no list ${name}`);
  const { data, errors } = papaparse.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
    transformHeader: columnName,
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
