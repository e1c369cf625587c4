import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf } from "../../test/workbook/read-pdf.ts";
import { stoppedJob } from "../../test/workbook/stopped-job.ts";
import { x1Job } from "../../test/workbook/x1-job.ts";
import { planAndCut } from "../plan/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { PRINT_SETS } from "./print-sets/index.ts";

interface Node {
  role?: string;
  type?: string;
  id?: string;
  alt?: string;
  children?: Node[];
}

describe.each([
  ["a shade", x1Job(), "36 in"],
  ["a shade whose every page is stamped", stoppedJob(), "34 7⁄8 in"],
])("%s", (_name, job, width) => {
  let pdf: PDFDocumentProxy;
  /** Tree of each page. */
  const trees: Node[] = [];

  beforeAll(async () => {
    pdf = await openPdf(
      await makeWorkbook({ ...planAndCut(job), sets: PRINT_SETS, paper: "a4", fonts: FONTS }),
    );
    for (let number = 1; number <= pdf.numPages; number += 1) {
      trees.push((await (await pdf.getPage(number)).getStructTree()) as Node);
    }
  });

  function all(node: Node, role: string): Node[] {
    const own = node.role === role ? [node] : [];
    return [...own, ...(node.children ?? []).flatMap((child) => all(child, role))];
  }

  const everywhere = (role: string) => trees.flatMap((tree) => all(tree, role));

  test("says that it is tagged", async () => {
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
  });

  test("one title, a heading for each page that opens, sections under them", () => {
    expect(everywhere("H1").length).toBeGreaterThan(0);
    expect(everywhere("H1").length + everywhere("H2").length).toBeGreaterThan(15);
    expect(everywhere("H3").length).toBeGreaterThan(20);
  });

  test("every figure says what it shows", () => {
    const figures = everywhere("Figure");
    expect(figures.length).toBeGreaterThan(15);
    for (const figure of figures) expect(figure.alt?.length ?? 0).toBeGreaterThan(20);
    const front = figures.find((figure) => figure.alt?.startsWith("Front."));
    expect(front?.alt?.replaceAll("\u00a0", " ")).toContain(`Finished width: ${width}`);
  });

  test("tables have heads for their columns and rows", () => {
    for (const table of everywhere("Table")) {
      for (const row of all(table, "TR")) {
        expect(all(row, "TH").length).toBeGreaterThan(0);
      }
    }
    expect(everywhere("TD").length).toBeGreaterThan(200);
  });

  // PDF/UA-1 (ISO 14289-1), 7.1: all content is tagged as real content or marked as an artifact.
  test("all text belongs to an element or to an artifact", async () => {
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const page = await pdf.getPage(number);
      const { items } = await page.getTextContent({ includeMarkedContent: true });
      const open: string[] = [];
      for (const item of items) {
        if ("str" in item) {
          if (item.str.trim() !== "") expect(open.length, `page ${number}: ${item.str}`).toBeGreaterThan(0);
        } else if (item.type === "endMarkedContent") open.pop();
        else open.push(item.type);
      }
      expect(open).toEqual([]);
    }
  });

  test("every piece of content named in the tree is on its page", async () => {
    for (const [i, tree] of trees.entries()) {
      const page = await pdf.getPage(i + 1);
      const { items } = await page.getTextContent({ includeMarkedContent: true });
      const onPage = new Set(items.flatMap((item) => ("id" in item && item.id ? [item.id] : [])));
      const named = contentIds(tree);
      for (const id of named) expect(onPage.has(id), `page ${i + 1}: ${id}`).toBe(true);
    }
  });
});

function contentIds(node: Node): string[] {
  const own = node.type === "content" && node.id !== undefined ? [node.id] : [];
  return [...own, ...(node.children ?? []).flatMap(contentIds)];
}
