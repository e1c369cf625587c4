import { expect, test } from "vitest";
import { newJob, newWindow } from "../job/index.ts";
import { plan, type ShadePlan } from "../plan/index.ts";
import { readableTable, speltTable, toCsv, WORKINGS_LIST, wholeList } from "../tables/index.ts";
import { asWritten } from "../words/index.ts";
import { planListFile } from "./list-file.ts";

const WINDOWS = 30;
const made = plan({
  ...newJob({ id: "j", name: "Contract, demo", system: "metric" }),
  rooms: [
    {
      id: "r",
      name: "Room",
      windows: Array.from({ length: WINDOWS }, (_, n) =>
        newWindow({ id: `w${n}`, name: `W ${n}`, widthMm: 900, heightMm: 1200 + n, mount: "inside" }),
      ),
    },
  ],
});

/** The list as it is written, and of how many shades the workings had been read at each write. */
async function written(): Promise<{ text: string; readBy: number[] }> {
  let read = 0;
  const shades = made.shades.map(
    (shade): ShadePlan => ({
      ...shade,
      get workings() {
        read += 1;
        return shade.workings;
      },
    }),
  );
  const { content } = planListFile("lists", WORKINGS_LIST, {
    plan: { ...made, shades },
    spell: asWritten,
    stamp: undefined,
  });
  if (typeof content !== "function") throw new Error("a list is written in parts");
  const readBy: number[] = [];
  let text = "";
  const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
  await content(async (chunk) => {
    readBy.push(read);
    text += decoder.decode(chunk, { stream: true });
  });
  return { text, readBy };
}

test("a long list is written before its last shade is read, and is the same as made whole", async () => {
  const { text, readBy } = await written();
  const whole = speltTable(readableTable(wholeList(WORKINGS_LIST, made), made.units.system), asWritten);
  expect(text).toBe(toCsv(whole));
  // 65,536 letters at a time, and a shade's workings are some 10,000.
  expect(readBy.length).toBeGreaterThan(3);
  expect(readBy[0]).toBeLessThan(WINDOWS / 3);
  expect(readBy.at(-1)).toBe(WINDOWS);
});
