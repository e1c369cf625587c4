import { expect, test, vi } from "vitest";
import { withLocalStorage } from "../../../test/local-storage.ts";
import { newJob } from "../../job/index.ts";

const store = withLocalStorage();

const PIECE = { id: "end", cloth: "ticking", lengthMm: 900 };

function jobWith(id: string, cloth: object[]) {
  const job = newJob({ id, name: id.toUpperCase(), system: "metric" });
  return { ...job, cloths: [{ id: "ticking", name: "Ticking" }], stock: { cloth } } as typeof job;
}

test("a piece goes to one job alone, lies free when that lets it go, and is as long as the job left it", async () => {
  const { followStock, layInShop, shopAfter, useDeviceStock } = await import("./device-stock.ts");
  const one = jobWith("one", [PIECE]);
  layInShop(one, "cloth", PIECE);
  expect(useDeviceStock.getState()).toMatchObject({
    cloths: [{ id: "ticking" }],
    stock: { cloth: [PIECE] },
    takenBy: { end: { id: "one", name: "ONE" } },
  });
  // Another job that has a piece of this id does not take it away.
  const two = jobWith("two", [PIECE]);
  expect(shopAfter(two, useDeviceStock.getState())).toBe(useDeviceStock.getState());
  followStock(jobWith("one", [{ ...PIECE, lengthMm: 400 }]));
  followStock(jobWith("one", []));
  expect(useDeviceStock.getState()).toMatchObject({ stock: { cloth: [{ lengthMm: 400 }] }, takenBy: {} });
  followStock(two);
  expect(useDeviceStock.getState().takenBy).toEqual({ end: { id: "two", name: "TWO" } });
  // What the device kept is what the next page begins with.
  vi.resetModules();
  const again = await import("./device-stock.ts");
  expect(again.useDeviceStock.getState()).toEqual(useDeviceStock.getState());
});

test("what cannot be read is not used", async () => {
  store.set("shadewright-shop-stock", JSON.stringify({ stock: { cloth: [{ id: 3 }] } }));
  const { useDeviceStock } = await import("./device-stock.ts");
  expect(useDeviceStock.getState().stock).toEqual({});
});
