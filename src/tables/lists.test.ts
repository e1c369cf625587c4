import papaparse from "papaparse";
import { describe, expect, it } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { plan } from "../plan/index.ts";
import { inches, markMm, parseLength } from "../units/index.ts";
import {
  allLists,
  BOARD_LIST,
  CORD_LIST,
  CUT_LIST,
  FINDINGS_LIST,
  LABOUR_LIST,
  MARKING_LIST,
  SHOPPING_LIST,
  type Table,
  toCsv,
  WORKINGS_LIST,
  wholeList,
} from "./index.ts";

/** Run X1 of the trade notes: 36 × 60 in, T 3 in, five columns, seven rows. */
const x1 = jobWith({
  name: '=HYPERLINK("http://example.invalid","Nursery, left")',
  opening: { widthsMm: [inches(36)], heightsMm: [inches(60)], sillAboveFloorMm: inches(30) },
  shade: {
    mount: "to-size",
    making: {
      fold: { headrailMm: inches(3) },
      hems: { boardAllowanceMm: inches(3.5) },
      lift: { tailMm: inches(30), knotsMm: inches(6) },
    },
  },
});
const made = plan(x1);

function column(table: Table, name: string) {
  const index = table.header.indexOf(name);
  if (index < 0) throw new Error(`no column ${name}`);
  return table.rows.map((row) => row[index]);
}

describe("the lists of X1", () => {
  it("cut: 42 × 66 1/2 in of face, then all the rest", () => {
    const cut = wholeList(CUT_LIST, made);
    expect(column(cut, "piece")).toEqual(["Face", "Lining", "Board cover", "Weight bar", "Board"]);
    expect(column(cut, "length")[0]).toBe("66 1/2 in");
    expect(column(cut, "width")[0]).toBe("42 in");
  });

  it("marking: 35 rings, the first row 3.8 in and the first column 2 in from their edges", () => {
    const marks = wholeList(MARKING_LIST, made);
    expect(marks.rows.length).toBe(35);
    expectNear(Number(column(marks, "fromHemMm")[0]), inches(3.8), 0.001, "first row");
    expect(column(marks, "fromLeftEdge")[0]).toBe("2 in");
  });

  it("cords: each with what makes up its length, in the order in which they are threaded", () => {
    const cords = wholeList(CORD_LIST, made);
    expect(cords.rows.length).toBe(5);
    const turns = column(cords, "turn").map(Number);
    expect([...turns].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5]);
    cords.rows.forEach((_, i) => {
      const part = (name: string) => Number(column(cords, name)[i]);
      const sum = part("riseMm") + part("alongBoardMm") + part("tailMm") + part("knotsMm");
      expect(part("cutMm")).toBeGreaterThanOrEqual(sum - 0.01);
      expect(part("cutMm")).toBeLessThan(sum + inches(1 / 8));
    });
  });

  it("board: from its own left end, an eighth in from the shade's edge (board = W − 1/4 in)", () => {
    const board = wholeList(BOARD_LIST, made);
    expectNear(Number(column(board, "fromLeftEndMm")[0]), inches(2 - 1 / 8), 0.001, "first eye");
    expect(column(board, "mark").filter((mark) => mark === "screw eye").length).toBe(5);
  });

  it("shopping and labour are those of the job, money included", () => {
    const costs = column(wholeList(SHOPPING_LIST, made), "cost").map(Number);
    expectNear(
      costs.reduce((total, cost) => total + cost, 0),
      made.cost.materials,
      0.005,
      "materials",
    );
    expect(wholeList(LABOUR_LIST, made).rows.length).toBe(made.cost.labour.length);
  });

  it("findings and workings: every one of the job and of its shade", () => {
    const count = (key: "findings" | "workings") =>
      made[key].length + made.shades.reduce((total, shade) => total + shade[key].length, 0);
    expect(wholeList(FINDINGS_LIST, made).rows.length).toBe(count("findings"));
    expect(wholeList(WORKINGS_LIST, made).rows.length).toBe(count("workings"));
    expect(column(wholeList(WORKINGS_LIST, made), "figure")).toContain("cost.total");
  });
});

describe("all lists", () => {
  it("have as many cells as headings, and a name of their own", () => {
    const lists = allLists(made);
    expect(new Set(lists.map((list) => list.name)).size).toBe(lists.length);
    for (const list of lists) {
      expect(list.rows.length).toBeGreaterThan(0);
      for (const row of list.rows) expect(row.length).toBe(list.header.length);
    }
  });

  it("say the same length twice: in millimetres and on the maker's ruler", () => {
    let compared = 0;
    for (const list of allLists(made)) {
      for (const name of list.header.filter((heading) => heading.endsWith("Mm"))) {
        const texts = column(list, name.slice(0, -2));
        column(list, name).forEach((lengthMm, i) => {
          const text = String(texts[i]);
          if (lengthMm === "" || text.startsWith("−")) return;
          const parsed = parseLength(text, "mm");
          if (!parsed.ok) throw new Error(`${list.name}.${name}: ${text}`);
          expectNear(parsed.lengthMm, Number(lengthMm), markMm("1/8 in") / 2 + 0.001, `${list.name}.${name}`);
          compared++;
        });
      }
    }
    expect(compared).toBeGreaterThan(125);
  });

  it("come back from CSV cell by cell, and the name that is a formula is led by an apostrophe", () => {
    for (const list of allLists(made)) {
      const { data, errors } = papaparse.parse<string[]>(toCsv(list), { skipEmptyLines: true });
      expect(errors).toEqual([]);
      const hostile = '=HYPERLINK("http://example.invalid","Nursery, left")';
      const expected = [list.header, ...list.rows].map((row) =>
        row.map((cell) => (cell === hostile ? `'${cell}` : String(cell))),
      );
      expect(data).toEqual(expected);
    }
  });
});

describe("the lists of a top that comes down", () => {
  const railed = plan(
    jobWith({
      opening: { widthsMm: [900], heightsMm: [1500] },
      shade: { mount: "to-size", making: { lift: { kind: "cleat" }, fold: { topDropMm: 400 } } },
    }),
  );
  const rail = railed.shades[0]?.lift.topRail;

  it("board: its eyes and lock from the left end and from the wall, its lock’s screws with it", () => {
    const board = wholeList(BOARD_LIST, railed);
    const rows = board.rows.filter((row) => `${row[2]}`.includes("top rail"));
    expect(rows).toHaveLength((rail?.eyes.length ?? 0) + 1);
    const [first] = rows;
    const at = (name: string) => Number(first?.[board.header.indexOf(name)]);
    expectNear(at("fromLeftEndMm"), (rail?.eyes[0]?.xMm ?? 0) - (railed.shades[0]?.board.leftMm ?? 0), 0.001);
    expectNear(at("fromWallMm"), rail?.eyes[0]?.zMm ?? 0, 0.001);
    expect(column(board, "mark").filter((mark) => mark === "rail lock screw")).toHaveLength(
      rail?.seat.screwsMm.length ?? 0,
    );
  });

  it("cords: each of the rail’s, made up of drop, run, tail and knots", () => {
    const cords = wholeList(CORD_LIST, railed);
    const rows = cords.rows.filter((row) => `${row[2]}`.startsWith("rail "));
    expect(rows).toHaveLength(rail?.cords.length ?? 0);
    for (const row of rows) {
      const part = (name: string) => Number(row[cords.header.indexOf(name)]);
      const sum = ["riseMm", "alongBoardMm", "tailMm", "knotsMm"].reduce((all, name) => all + part(name), 0);
      expect(part("cutMm")).toBeGreaterThanOrEqual(sum - 0.01);
      expect(part("cutMm")).toBeLessThan(sum + inches(1 / 8));
    }
  });
});
