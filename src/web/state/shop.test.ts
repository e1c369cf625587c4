import { expect, test } from "vitest";
import { withLocalStorage } from "../../../test/local-storage.ts";
import { jobSchema, newJob } from "../../job/index.ts";
import { differingSettings } from "./shop.ts";

const store = withLocalStorage();

test("a new job begins with what the shop has, and keeps its own copy", async () => {
  const { keepInShop, withShop } = await import("./shop.ts");
  keepInShop("rates", { currency: "EUR", labourPerHour: 40 });
  const job = withShop(newJob({ id: "job", name: "Job", system: "metric" }));
  expect(jobSchema.parse(job).rates).toEqual({ currency: "EUR", labourPerHour: 40 });
  keepInShop("rates", { currency: "CAD" });
  expect(job.rates.currency).toBe("EUR");
  expect(differingSettings(job.rates, { currency: "CAD" })).toEqual(["currency", "labourPerHour"]);
});

test("what the device kept is used as far as this release can read it", async () => {
  const kept = { rates: { currency: "euro" }, workshop: { lift: { kind: "spring" } }, place: "US" };
  store.set("shadewright-shop", JSON.stringify(kept));
  const { useShop } = await import("./shop.ts");
  expect(useShop.getState()).toEqual({ workshop: { lift: { kind: "spring" } } });
});

test("settings are compared one by one, in whatever order they stand", () => {
  expect(differingSettings({ a: { x: 1, y: 2 } }, { a: { y: 2, x: 1 } })).toEqual([]);
  expect(differingSettings({ a: { x: 1 } }, undefined)).toEqual(["a/x"]);
});
