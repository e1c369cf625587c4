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

test("what was left when all of a job was cut lies there for other jobs, and is gone again once that is undone", async () => {
  const { followStock, layInShop, useDeviceStock } = await import("./device-stock.ts");
  const stock = () => useDeviceStock.getState().stock;
  const bolt = { id: "bolt", cloth: "ticking", lengthMm: 5000 };
  const stick = { id: "stick", part: "board-1x2", lengthMm: 1300 };
  const before = { ...jobWith("cut", [PIECE, bolt]), stock: { cloth: [PIECE, bolt], lengths: [stick] } };
  for (const piece of [PIECE, bolt]) layInShop(before, "cloth", piece);
  layInShop(before, "lengths", stick);
  const rest = { ...bolt, lengthMm: 2000, lot: "7" };
  const remnant = { id: "left-1", cloth: "ticking", lengthMm: 600, widthMm: 500, lot: "7" };
  const cut = {
    ...before,
    stock: { cloth: [], lengths: [stick] },
    cutCloth: [
      {
        ...{ cloth: "ticking", boughtMm: 0, pieces: [] },
        bolts: [
          { bolt: "end", cutMm: 900 },
          { bolt: "bolt", cutMm: 3000 },
        ],
      },
    ],
    leftOver: { cloth: [rest, remnant], lengths: [] },
  };
  followStock(cut);
  followStock(cut);
  expect(useDeviceStock.getState()).toMatchObject({
    stock: { cloth: [rest, remnant], lengths: [] },
    takenBy: {},
  });
  // Another job takes what is left, and uses it up.
  const next = jobWith("next", [rest, remnant]);
  followStock(next);
  followStock(cut);
  expect(useDeviceStock.getState().takenBy).toMatchObject({ bolt: { id: "next" }, "left-1": { id: "next" } });
  followStock({ ...next, stock: { cloth: [rest] } });
  followStock(before);
  // What the other has stays there; the rest is as it was before the cut.
  expect(stock().cloth?.toSorted((a, b) => a.id.localeCompare(b.id))).toEqual([rest, PIECE]);
  expect(stock().lengths).toEqual([stick]);
  expect(useDeviceStock.getState().takenBy).toMatchObject({
    ...{ end: { id: "cut" }, stick: { id: "cut" }, bolt: { id: "next" } },
  });
});

test("a piece that is let go after a cut lies free; one that is cut up is gone until the cut is undone", async () => {
  const { followStock, layInShop, useDeviceStock } = await import("./device-stock.ts");
  const of = (cutMm: number) => [
    { ...{ cloth: "ticking", boughtMm: 0, pieces: [] }, bolts: [{ bolt: "end", cutMm }] },
  ];
  const job = jobWith("one", [PIECE]);
  layInShop(job, "cloth", PIECE);
  followStock({ ...jobWith("one", [{ ...PIECE, lengthMm: 400 }]), cutCloth: of(500) });
  followStock({ ...jobWith("one", []), cutCloth: of(500) });
  expect(useDeviceStock.getState()).toMatchObject({ stock: { cloth: [{ lengthMm: 400 }] }, takenBy: {} });
  followStock({ ...jobWith("one", [{ ...PIECE, lengthMm: 400 }]), cutCloth: of(500) });
  followStock({ ...jobWith("one", []), cutCloth: of(900) });
  expect(useDeviceStock.getState().stock.cloth).toEqual([]);
  followStock(job);
  expect(useDeviceStock.getState()).toMatchObject({
    stock: { cloth: [PIECE] },
    takenBy: { end: { id: "one" } },
  });
});

test("what cannot be read is not used", async () => {
  store.set("shadewright-shop-stock", JSON.stringify({ stock: { cloth: [{ id: 3 }] } }));
  const { useDeviceStock } = await import("./device-stock.ts");
  expect(useDeviceStock.getState().stock).toEqual({});
});
