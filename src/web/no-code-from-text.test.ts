import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { ROOT } from "../../scripts/run.mjs";

/** How often code is made from text while a schema is built and used, in a process of its own. */
function madeFromText(first: string): number {
  const script = `
    ${first}
    let made = 0;
    globalThis.Function = new Proxy(Function, { construct(own, given) { made += 1; return Reflect.construct(own, given); } });
    const { object, string } = await import("zod");
    object({ a: string() }).parse({ a: "b" });
    console.log(made);`;
  const given = ["--import", "tsx", "--input-type=module", "--eval", script];
  return Number(execFileSync(process.execPath, given, { cwd: ROOT, encoding: "utf8" }));
}

test("a page that imported this makes no code from text", () => {
  expect(madeFromText("")).toBeGreaterThan(0);
  expect(madeFromText('await import("./src/web/no-code-from-text.ts");')).toBe(0);
});
