import { expect, test } from "vitest";
import { newJob, newWindow } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import { planFiles } from "./plan-files.ts";
import type { WorkbookFiles } from "./workbook-files.ts";

/** Paths of the workbooks that a job of so many windows, 20 to a room, is bound into. */
async function bound(count: number, files?: WorkbookFiles): Promise<string[]> {
  const windows = Array.from({ length: count }, (_, n) =>
    newWindow({ id: `w${n}`, name: `W ${n}`, widthMm: 900, heightMm: 1200 + n, mount: "inside" }),
  );
  const rooms = Array.from({ length: Math.ceil(count / 20) }, (_, r) => ({
    id: `r${r}`,
    name: `Room ${r}`,
    windows: windows.slice(20 * r, 20 * r + 20),
  }));
  const planned = plan({ ...newJob({ id: "j", name: "Contract, demo", system: "metric" }), rooms });
  const paths: string[] = [];
  const more = files === undefined ? {} : { files };
  for await (const { path } of planFiles({ plan: planned, paper: "a4", createdOn: new Date(0), ...more })) {
    if (path.startsWith("lists/")) break;
    paths.push(path);
  }
  return paths.filter((path) => path.endsWith(".pdf"));
}

test("up to 60 windows are one workbook, more are a front for the job and one a room, unless told", async () => {
  expect(await bound(60)).toEqual(["workbook.pdf"]);
  expect(await bound(61)).toEqual([
    "workbook.pdf",
    ...["workbooks/r0.pdf", "workbooks/r1.pdf", "workbooks/r2.pdf", "workbooks/r3.pdf"],
  ]);
  expect(await bound(61, "one")).toEqual(["workbook.pdf"]);
  expect(await bound(2, "shade")).toEqual(["workbook.pdf", "workbooks/w0.pdf", "workbooks/w1.pdf"]);
});
