import type { PDFDocumentProxy, PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { jobLessons } from "../../src/answers/index.ts";
import type { Job } from "../../src/job/index.ts";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, PRINT_SETS } from "../../src/workbook/index.ts";
import { FONTS } from "./fonts.ts";
import { openPdf } from "./read-pdf.ts";
import { stoppedJob } from "./stopped-job.ts";
import { x1Job } from "./x1-job.ts";

/**
 * What a machine can check of PDF/UA-1 (ISO 14289-1:2014), by the failure conditions of the Matterhorn Protocol 1.1
 * (PDF Association, 2021), whose numbers stand with each check. What only a person can judge, whether a text says
 * what a picture shows, stands nowhere here.
 */

interface Node {
  role?: string;
  type?: string;
  id?: string;
  alt?: string;
  children?: Node[];
}

const isElement = (node: Node) => node.role !== undefined;

function elements(node: Node): Node[] {
  return [...(isElement(node) ? [node] : []), ...(node.children ?? []).flatMap(elements)];
}

/** Operators that put something on the page. */
const PAINTS = new Set<number>([
  OPS.stroke,
  OPS.closeStroke,
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
  OPS.showText,
  OPS.showSpacedText,
  OPS.paintImageXObject,
  OPS.constructPath,
]);

interface Unmarked {
  /** Painted outside of any mark. */
  bare: number;
  /** Content inside an artifact, or an artifact inside content. */
  crossed: number;
}

async function unmarkedOf(page: PDFPageProxy): Promise<Unmarked> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const open: string[] = [];
  const found: Unmarked = { bare: 0, crossed: 0 };
  fnArray.forEach((op, i) => {
    if (op === OPS.beginMarkedContent || op === OPS.beginMarkedContentProps) {
      const kind = String(argsArray[i]?.[0]) === "Artifact" ? "artifact" : "content";
      if (open.length > 0 && open.some((one) => one !== kind)) found.crossed += 1;
      open.push(kind);
    } else if (op === OPS.endMarkedContent) open.pop();
    else if (PAINTS.has(op) && open.length === 0) found.bare += 1;
  });
  return found;
}

const CASES: [string, Job, "letter" | "a4"][] = [
  ["a shade", x1Job(), "letter"],
  ["a shade whose every page is stamped", stoppedJob(), "a4"],
];

describe.each(CASES)("%s, every set", (_name, job, paper) => {
  let raw: string;
  let pdf: PDFDocumentProxy;
  const trees: Node[] = [];

  beforeAll(async () => {
    const bytes = await makeWorkbook({
      ...planAndCut(job),
      lessonsOf: jobLessons(job),
      sets: PRINT_SETS,
      paper,
      fonts: FONTS,
    });
    raw = Buffer.from(bytes).toString("latin1");
    pdf = await openPdf(bytes);
    for (let number = 1; number <= pdf.numPages; number += 1) {
      trees.push((await (await pdf.getPage(number)).getStructTree()) as Node);
    }
  });

  test("06-001 to 06-004, 07-001, 11-006: it names its standard, its title and its language", async () => {
    const { metadata, info } = await pdf.getMetadata();
    expect(raw).toMatch(/<pdfuaid:part>1<\/pdfuaid:part>/);
    expect(metadata?.get("dc:title")).toBeTruthy();
    expect((info as { Language?: string }).Language).toBe("en-GB");
    expect(raw).toMatch(/\/DisplayDocTitle true/);
  });

  test("01-003 to 01-005: all that is painted is content or artifact, and neither lies in the other", async () => {
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const { bare, crossed } = await unmarkedOf(await pdf.getPage(number));
      expect({ number, bare, crossed }).toEqual({ number, bare: 0, crossed: 0 });
    }
  });

  test("14-002, 14-003, 14-006: headings begin with the first level and leave none out", () => {
    let last = 0;
    for (const { role } of trees.flatMap(elements)) {
      const level = Number(/^H(\d)$/.exec(role ?? "")?.[1] ?? 0);
      if (level === 0) continue;
      expect(level - last, `H${level} after H${last}`).toBeLessThanOrEqual(1);
      last = level;
    }
    expect(last).toBeGreaterThan(0);
  });

  test("09-004 to 09-006: parts of lists and tables stand in what they are parts of", () => {
    const parents: Record<string, readonly string[]> = {
      LI: ["L"],
      Lbl: ["LI"],
      LBody: ["LI"],
      TR: ["Table"],
      TH: ["TR"],
      TD: ["TR"],
    };
    const check = (node: Node, within: string | undefined) => {
      const allowed = parents[node.role ?? ""];
      if (allowed !== undefined) expect(allowed, `${node.role} in ${within}`).toContain(within);
      for (const child of node.children ?? []) check(child, isElement(node) ? node.role : within);
    };
    for (const tree of trees) check(tree, undefined);
  });

  test("13-004: every figure has words", () => {
    const figures = trees.flatMap(elements).filter(({ role }) => role === "Figure");
    expect(figures.length).toBeGreaterThan(10);
    for (const { alt } of figures) expect(alt?.length ?? 0).toBeGreaterThan(10);
  });

  test("15-003: every head of a table says what it heads", () => {
    const heads = raw.match(/\/S \/TH\b[\s\S]*?endobj/g) ?? [];
    expect(heads.length).toBeGreaterThan(10);
    for (const head of heads) expect(head).toMatch(/\/Scope \/(?:Column|Row|Both)/);
  });

  test("02-001, 02-004: every type is one of the standard’s", () => {
    const known =
      /^(?:Root|Document|Part|Sect|Div|H[1-6]|P|L|LI|Lbl|LBody|Table|TR|TH|TD|Figure|Caption|Span)$/;
    for (const { role } of trees.flatMap(elements)) expect(role).toMatch(known);
  });

  test("31-009, 31-027, 31-030: fonts are embedded, their codes have letters, and none is a letter that is not there", () => {
    const fonts = raw.match(/<<[^<>]*\/Type \/Font\b[\s\S]*?endobj/g) ?? [];
    const outer = fonts.filter((font) => /\/Subtype \/Type0/.test(font));
    expect(outer.length).toBeGreaterThan(1);
    for (const font of outer) expect(font).toMatch(/\/ToUnicode \d+ 0 R/);
    const descriptors = raw.match(/\/Type \/FontDescriptor[\s\S]*?endobj/g) ?? [];
    expect(descriptors.length).toBe(outer.length);
    for (const descriptor of descriptors) expect(descriptor).toMatch(/\/FontFile[23]? \d+ 0 R/);
    expect(raw).not.toMatch(/\/BaseFont \/(?:Helvetica|Times|Courier|Symbol|ZapfDingbats)/);
  });

  test("26-001, 28-002: it is open to readers, and nothing on it needs pressing", () => {
    expect(raw).not.toMatch(/\/Encrypt \d/);
    expect(raw).not.toMatch(/\/Subtype \/(?:Widget|Link)/);
  });
});
