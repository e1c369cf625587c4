import { deflateRawSync, inflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyJob } from "../../../test/arbitrary-job.ts";
import { jobSchema, newJob } from "../../job/index.ts";
import { packJob, unpackJob } from "./packed-job.ts";

const job = newJob({ id: "job", name: "Landing", system: "metric" });

describe("a job in a link", () => {
  test("is read back as it was, but for pictures", async () => {
    await fc.assert(
      fc.asyncProperty(anyJob, async (given) => {
        const packed = await packJob(given);
        if (packed === undefined) return;
        expect(packed).toMatch(/^[A-Za-z0-9_-]+$/);
        const opened = await unpackJob(packed);
        if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
        const cloths = given.cloths.map(({ photo: _, ...cloth }) => cloth);
        expect(opened.job).toEqual({ ...given, cloths });
      }),
      { numRuns: 60 },
    );
  });

  test("is deflated JSON that another library reads (zlib)", async () => {
    const packed = (await packJob(job)) ?? "";
    expect(JSON.parse(inflateRawSync(Buffer.from(packed, "base64url")).toString())).toMatchObject({
      name: "Landing",
    });
  });

  test.each([
    ["cut short", async () => ((await packJob(job)) ?? "").slice(0, 40), /cut short or changed/],
    ["no text of a link", async () => "%%%", /cut short or changed/],
    ["nothing", async () => "", /cut short or changed/],
    [
      "swollen to forty million characters",
      async () => deflateRawSync(Buffer.alloc(40_000_000, " ")).toString("base64url"),
      /more than 2 million characters/,
    ],
    ["another text", async () => deflateRawSync("hello").toString("base64url"), /not JSON/],
  ])("that is %s is refused in words", async (_, text, given) => {
    const opened = await unpackJob(await text());
    expect(opened.ok ? "opened" : opened.issues[0]?.given).toMatch(given);
  });

  test("of a hundred different windows is too long for a link", async () => {
    const windows = Array.from({ length: 400 }, (_, n) => ({
      id: `w${n}`,
      name: `Window ${(n * 7919) % 1000}`,
      opening: { widthsMm: [700 + ((n * 131) % 977)], heightsMm: [1000 + ((n * 173) % 991)] },
    }));
    const many = jobSchema.parse({ ...job, rooms: [{ id: "r", name: "Room", windows }] });
    expect(await packJob(many)).toBeUndefined();
  });
});
