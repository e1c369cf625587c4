import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import dxfParser from "dxf-parser";
import papaparse from "papaparse";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { emptyFolder, typed } from "../cli/typed.ts";

// The package exports the class itself, whatever its types say.
const DxfParser = dxfParser as unknown as typeof dxfParser.default;

/** Names that would do something, were they ever read as more than text. */
const NAMES = [
  `<script>globalThis.ran = 1</script>`,
  `</text></svg><img src=x onerror="globalThis.ran=1">`,
  `"><a href="javascript:alert(1)">x</a>`,
  `]]><!ENTITY x SYSTEM "file:///etc/passwd">&x;`,
  `=HYPERLINK("http://example.invalid","x")`,
  `@SUM(1+1)*cmd|' /C calc'!A0`,
  `../../../../tmp/escaped`,
  `%PDF-1.7 (x) Tj ET \\) endstream`,
  `$(touch /tmp/escaped); rm -rf ~`,
  `%%d %%c \\P \\U+202E {\\fArial;x}`,
  `\u202egnp.exe`,
  `NaN`,
  `-Infinity`,
  `undefined`,
  `𝔘𝔫𝔦 ❤️ 日本語 עברית`,
];

function jobWith(name: string): string {
  const window = (id: string) => ({
    id,
    name,
    opening: {
      widthsMm: [900],
      heightsMm: [1400],
      obstructions: [{ kind: "handle", projectionMm: 20, note: name }],
    },
    shade: { mount: "inside", face: "cloth", note: name },
  });
  return JSON.stringify({
    format: "shadewright-job",
    version: 1,
    id: "job",
    name,
    client: name,
    note: name,
    rooms: [{ id: "room", name, note: name, windows: [window("con"), window("A"), window("a")] }],
    cloths: [{ id: "cloth", name, usableWidthMm: 1370, massGsm: 200, note: name, pricePerM: 10 }],
  });
}

async function planned(name: string): Promise<string> {
  const folder = emptyFolder();
  const file = join(folder, "job.json");
  writeFileSync(file, jobWith(name));
  const out = join(folder, "out");
  const ending = await typed(["plan", file, "--out", out, "--shade", "A"]);
  expect([ending.code, ending.err]).toEqual([0, expect.stringContaining("1 shade planned")]);
  // Nothing beside the folder that was asked for, and nothing that a name chose.
  expect(readdirSync(folder).sort()).toEqual(["job.json", "out"]);
  expect(existsSync("/tmp/escaped")).toBe(false);
  return out;
}

const read = (path: string) => readFileSync(path, "utf8");
const filesIn = (folder: string, ending: string) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name));

describe.each(NAMES)("a name such as %j", (name) => {
  test("is text in every file that is written", async () => {
    const out = await planned(name);

    for (const path of filesIn(out, ".svg")) {
      // Elements by a list of what drawings need; everything else of the name must be escaped text.
      const elements = [...read(path).matchAll(/<\s*\/?\s*([^\s>/]+)[^>]*>/g)];
      expect(
        elements.filter(([, tag]) => !TAGS.has(String(tag))),
        path,
      ).toEqual([]);
      for (const [element] of elements) {
        // What a label says stays within its quotation marks; no attribute is made of it, and none leads anywhere.
        const bare = element.replace(/="[^"]*"/g, '=""');
        expect(bare, path).not.toMatch(/["\s]on\w+\s*=|javascript:/i);
        expect(element, path).not.toMatch(/\s(?:xlink:)?href="(?!#|data:image\/)/i);
      }
    }

    for (const path of filesIn(out, ".csv")) {
      const { data, errors } = papaparse.parse<string[]>(read(path), { skipEmptyLines: true });
      expect(errors).toEqual([]);
      const width = data[0]?.length;
      for (const row of data) {
        expect(row.length).toBe(width);
        for (const cell of row) if (Number.isNaN(Number(cell))) expect(cell).not.toMatch(/^[=+@\t\r-]/);
      }
    }

    for (const path of filesIn(out, ".dxf")) {
      const drawing = new DxfParser().parseSync(read(path));
      expect(drawing?.entities.length, path).toBeGreaterThan(0);
    }

    const pdf = await getDocument({
      data: new Uint8Array(readFileSync(join(out, "workbook.pdf"))),
      verbosity: 0,
    }).promise;
    expect(await pdf.hasJSActions()).toBe(false);
    expect(await pdf.getAttachments()).toBeNull();
    for (let number = 1; number <= pdf.numPages; number++) {
      const page = await pdf.getPage(number);
      for (const { url } of await page.getAnnotations()) expect(url).toBeUndefined();
    }
    await pdf.destroy();

    expect(JSON.parse(read(join(out, "plan.json"))).jobName).toBe(name);
  });
});

/** What a drawing is made of. */
const TAGS = new Set([
  "svg",
  "title",
  "desc",
  "g",
  "path",
  "circle",
  "rect",
  "line",
  "polyline",
  "polygon",
  "text",
  "tspan",
  "defs",
  "clipPath",
  "use",
  "style",
  "?xml",
]);

test("ids that a file system would confuse get names of their own", async () => {
  const folder = emptyFolder();
  const { code } = await typed(["plan", "-", "--out", folder], jobWith("Plain"));
  expect(code).toBe(0);
  expect(readdirSync(join(folder, "drawings")).sort()).toEqual(["A", "a-2", "con_"]);
});
