import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { drawSheet, drawTag } from "../../src/drawing/index.ts";
import { type Job, LIFT_KINDS } from "../../src/job/index.ts";
import type { ShadePlan } from "../../src/plan/index.ts";
import type { CordLockLift, TubeLift } from "../../src/shade-plan/index.ts";
import { markMm, nearestMark, parseLength, toMark } from "../../src/units/index.ts";
import { capital } from "../../src/workbook/pages/sentence.ts";
import { workroomJob } from "../workroom-job.ts";
import { listIn, type OutFiles, outFiles, setIn, unbroken } from "./out-files.ts";
import { expectLengths, LENGTH, literally, numberedLengths } from "./read-lengths.ts";

/** A few shades of each kind of lift, drawn; the same ones at every run. */
const CASES: [string, Job][] = LIFT_KINDS.flatMap((kind): [string, Job][] =>
  fc
    .sample(
      workroomJob.filter(
        ({ rooms, workshop }) =>
          (rooms[0]?.windows[0]?.shade.making?.lift?.kind ?? workshop?.lift?.kind) === kind,
      ),
      { numRuns: kind === "cord-lock" ? 2 : 1, seed: 20261125 },
    )
    .map((job, i): [string, Job] => [`${kind} ${i + 1}`, job]),
);

const near = (a: number, b: number, by = 5e-4 + 1e-9) => Math.abs(a - b) <= by;

describe.each(CASES)("what is printed for a shade is what was planned: %s", (_name, job) => {
  let out: OutFiles;
  let shade: ShadePlan;
  let units: OutFiles["plan"]["units"];
  beforeAll(async () => {
    out = await outFiles(job);
    const [first] = out.plan.shades;
    if (first === undefined) throw new Error("invalid test: no shade");
    shade = first;
    units = out.plan.units;
  });

  const lock = (): CordLockLift | undefined => (shade.lift.kind === "cord-lock" ? shade.lift : undefined);
  const tube = (): TubeLift | undefined => (shade.lift.takeUp === "tube" ? shade.lift : undefined);

  /**
   * A row of a list has these values: numbers in millimetres to a thousandth, those beside a length by the ruler at its
   * nearest mark; all else as text.
   */
  function expectRow(
    row: Record<string, string> | undefined,
    wanted: Record<string, number | string | undefined>,
  ) {
    if (row === undefined) throw new Error(`no row for ${JSON.stringify(wanted)}`);
    for (const [heading, value] of Object.entries(wanted)) {
      const cell = row[heading];
      if (typeof value !== "number") expect(cell, heading).toBe(value ?? "");
      else {
        const byRuler = heading.endsWith("Mm") && row[heading.slice(0, -"Mm".length)] !== undefined;
        const shown = byRuler ? toMark(value, units.ruler) : value;
        if (!near(Number(cell), shown) || cell === "") throw new Error(`${heading}: ${cell} for ${shown}`);
      }
    }
  }

  test("lists: cords", () => {
    const rows = listIn(out, "cord-list");
    const { topRail } = shade.lift;
    expect(rows).toHaveLength(shade.lift.cords.length + (topRail?.cords.length ?? 0));
    topRail?.cords.forEach(({ column, xMm, cutMm, knotsMm }, i) => {
      expectRow(rows[shade.lift.cords.length + i], {
        cord: `rail ${column}`,
        column,
        fromLeftEdgeMm: xMm,
        riseMm: topRail.dropMm,
        tailMm: topRail.tailDownMm,
        knotsMm,
        cutMm,
      });
    });
    shade.lift.cords.forEach((cord, i) => {
      expectRow(rows[i], {
        cord: cord.number,
        column: cord.number,
        fromLeftEdgeMm: shade.grid.columns[i]?.xMm,
        riseMm: cord.riseMm,
        knotsMm: cord.knotsMm,
        cutMm: cord.cutMm,
        ...("runMm" in cord
          ? {
              alongBoardMm: cord.runMm,
              tailMm: cord.tailMm,
              ...("slot" in cord
                ? {
                    entersFrom: cord.entersFrom,
                    slot: cord.slot,
                    turn: 1 + (lock()?.threading.indexOf(cord.number) ?? Number.NaN),
                  }
                : { entersFrom: undefined, slot: undefined, turn: undefined }),
              wrapsOnSpoolMm: undefined,
            }
          : { wrapsOnSpoolMm: cord.wrapsMm, alongBoardMm: undefined, tailMm: undefined, slot: undefined }),
      });
    });
  });

  test("lists: marks, board, pieces, shopping", () => {
    const { grid, board, cloth, lift } = shade;
    const rings = listIn(out, "marking-list").filter(({ mark }) => mark?.startsWith("ring"));
    expect(rings).toHaveLength(grid.rows.length * grid.columns.length);
    let at = 0;
    for (const { number: row, fromHemMm } of grid.rows)
      for (const { number: column, xMm } of grid.columns)
        expectRow(rings[at++], {
          row,
          column,
          fromHemMm,
          ...(shade.form.panel !== undefined && 2 * xMm > shade.size.finishedWidthMm
            ? { fromRightEdgeMm: shade.size.finishedWidthMm - xMm }
            : { fromLeftEdgeMm: xMm }),
        });

    const marks = listIn(out, "board-list");
    const named = (mark: string) => marks.filter((one) => one.mark === mark);
    board.eyes.forEach((eye, i) => {
      expectRow(marks.filter(({ mark }) => mark === "screw eye" || mark === "screw eye and last eye")[i], {
        number: i + 1,
        fromLeftEndMm: eye.xMm - board.leftMm,
        fromWallMm: eye.zMm,
      });
    });
    board.brackets.forEach(({ number, xMm }, i) => {
      const mark = board.fixing === "brackets" ? "bracket" : "screw up";
      expectRow(named(mark)[i], { number, fromLeftEndMm: xMm - board.leftMm });
    });
    if (lift.kind === "cord-lock") {
      const { xMm, zMm, screwsMm } = lift.seat;
      expectRow(named("lock, centre")[0], { fromLeftEndMm: xMm - board.leftMm, fromWallMm: zMm });
      screwsMm.forEach((screw, i) => {
        expectRow(named("lock screw")[i], { fromLeftEndMm: screw.xMm - board.leftMm, fromWallMm: screw.zMm });
      });
    } else if (lift.kind === "cleat") {
      const { xMm, zMm, column } = lift.turn;
      expect(named("last eye")).toHaveLength(column === undefined ? 1 : 0);
      const last = column === undefined ? "last eye" : "screw eye and last eye";
      expectRow(named(last)[0], { fromLeftEndMm: xMm - board.leftMm, fromWallMm: zMm });
    } else {
      lift.spools.forEach(({ number, xMm }, i) => {
        expectRow(named("spool, middle")[i], {
          number,
          fromLeftEndMm: xMm - board.leftMm,
          fromWallMm: lift.tube.zMm,
        });
      });
      lift.supports.forEach(({ number, xMm }, i) => {
        expectRow(named("tube support")[i], { number, fromLeftEndMm: xMm - board.leftMm });
      });
      expectRow(named("tube, one end")[0], { fromLeftEndMm: lift.tube.fromMm - board.leftMm });
      expectRow(named("tube, other end")[0], { fromLeftEndMm: lift.tube.toMm - board.leftMm });
      expectRow(named("drive, middle")[0], {
        fromLeftEndMm: lift.drive.xMm - board.leftMm,
        fromWallMm: lift.drive.zMm,
      });
    }

    const pieces = listIn(out, "cut-list");
    const panels = cloth.layers.flatMap((cut) =>
      cut.panels.map((panel) => ({ cut, panel, lay: cut.lays.find(({ panelId }) => panelId === panel.id) })),
    );
    panels.forEach(({ cut, panel, lay }, i) => {
      expectRow(pieces[i], {
        material: cut.clothName,
        count: 1,
        widthMm: panel.widthMm,
        lengthMm: panel.lengthMm,
        fromSelvedgeMm: lay?.xMm,
        alongBoltMm: lay?.yMm,
      });
    });
    cloth.trims.forEach((trim, i) => {
      const { label, count, widthMm, lengthMm } = trim;
      expectRow(pieces[panels.length + i], { piece: label, count, widthMm, lengthMm });
    });
    const stick = (piece: string) => pieces.find((one) => one.piece === piece);
    expectRow(stick("Board"), { lengthMm: board.cutMm, count: 1 });
    if (board.barLengthMm !== undefined) expectRow(stick("Weight bar"), { lengthMm: board.barLengthMm });
    if (cloth.ribLines.length > 0 && cloth.ribLengthMm !== undefined)
      expectRow(stick("Rib"), { lengthMm: cloth.ribLengthMm, count: cloth.ribLines.length });
    if (lift.takeUp === "tube") expectRow(stick("Lift tube"), { lengthMm: lift.tube.lengthMm });

    const bought = listIn(out, "shopping-list");
    expect(bought).toHaveLength(out.plan.cost.shopping.length);
    const plain = (text: string) => text.replaceAll("⁄", "/").replaceAll("\u00a0", " ");
    out.plan.cost.shopping.forEach(({ group, label, quantity, unit, cost, needText, buyText }, i) => {
      expectRow(bought[i], { need: plain(needText), buy: plain(buyText) });
      expectRow(bought[i], { group, item: label, quantity, unit, ...(cost === undefined ? {} : { cost }) });
    });
  });

  test("lists: every length in words is the one in millimetres beside it", () => {
    for (const [path, text] of out.texts) {
      if (!path.endsWith(".csv")) continue;
      const name = path.replace(/^.*\/|\.csv$/g, "");
      for (const row of listIn(out, name).slice(0, 200)) {
        for (const heading of Object.keys(row).filter((one) => one.endsWith("Mm") && row[one] !== "")) {
          const words = row[heading.slice(0, -2)]?.replace("/", "⁄").replace(/^[-−]/, "−");
          if (words === undefined) continue;
          expectLengths(words, "^", [Number(row[heading])], units);
        }
      }
      expect(text.startsWith("\ufeff")).toBe(true);
    }
  });

  const step = (id: string) => {
    const found = shade.steps.find((one) => one.id === id);
    return (
      found && {
        text: found.text.replaceAll("\u00a0", " "),
        check: (found.check ?? "").replaceAll("\u00a0", " "),
      }
    );
  };
  /** Numbered places in a text are these, in their order. */
  function expectNumbered(
    text: string,
    preposition: string,
    wanted: readonly { number: number; mm: number }[],
  ) {
    const read = numberedLengths(text, preposition);
    expect(read.map(({ number }) => number)).toEqual(wanted.map(({ number }) => number));
    wanted.forEach(({ number, mm }, i) => {
      if (!near(read[i]?.lengthMm ?? Number.NaN, mm, markMm(units.ruler) / 2 + 0.001))
        throw new Error(`${number} ${preposition} ${read[i]?.lengthMm} for ${mm}`);
    });
  }

  test("steps: cords, tails and knots", () => {
    const { lift, grid, size } = shade;
    const cut = step("string-cut");
    const knots = step("level-knots");
    if (cut === undefined || knots === undefined) throw new Error("invalid test: no cords");
    expectNumbered(
      knots.text,
      "at",
      grid.columns.map(({ number, xMm }) => ({ number, mm: xMm })),
    );
    const hemMm = size.hemAboveFloorMm;
    if (hemMm !== undefined && hemMm > 0)
      expectLengths(step("level-look")?.text ?? "", "is planned ", [hemMm], units);
    const raised = step("hang-try")?.text ?? "";
    if (/[Rr]aised/.test(raised)) expectLengths(raised, "is ", [grid.raisedHeightMm], units);
    if (lift.takeUp === "tube") {
      const { length } = lift.cords;
      expect(cut.text).toContain(`cut ${length} ${length === 1 ? "cord" : "cords"} of `);
      expectLengths(cut.text, `cut ${length} cords? of `, [lift.cords[0]?.cutMm ?? 0], units);
      return;
    }
    expectNumbered(
      cut.text,
      "to",
      lift.cords.map(({ number, cutMm }) => ({ number, mm: cutMm })),
    );
    const [nearest] = [...lift.cords].sort((a, b) => a.runMm - b.runMm);
    if (lift.cords.length > 1)
      expect(knots.text).toContain(
        `Leave cord ${nearest?.number}, nearest the ${lift.takeUp === "lock" ? "lock" : "last eye"},`,
      );
    const trim = step("level-trim");
    expectLengths(trim?.text ?? "", "(?:all tails level,|the tail) ", [lift.tailLoweredMm], units);
    expectLengths(trim?.check ?? "", "hangs? ", [lift.tailRaisedMm], units);
    const cleat = step("hang-cleat")?.text ?? "";
    expect(cleat).toContain(`on the ${lift.controlSide},`);
    if (lift.kind === "cleat") {
      if (lift.toCleatMm !== undefined) expectLengths(cleat, "That is ", [lift.toCleatMm], units);
      expectEyes(lift.cords);
      return;
    }
    expectLengths(
      cleat,
      "The cord hangs ",
      [lift.tailLoweredMm, lift.tailRaisedMm],
      units,
      " below the lock when the shade is down and ",
    );
    const threaded = [
      ...(step("string-thread")?.text ?? "").matchAll(/cord (\d+) from the (\w+) end into slot (\d+)/g),
    ];
    expect(threaded.map(([, number, from, slot]) => [Number(number), from, Number(slot)])).toEqual(
      lift.threading.map((number) => {
        const cord = lift.cords.find((one) => one.number === number);
        return [number, cord?.entersFrom, cord?.slot];
      }),
    );
    expectEyes(lift.cords);
  });

  function expectEyes(cords: readonly { number: number; eyes: number[] }[]) {
    for (const cord of cords) {
      const [, ...passed] = cord.eyes;
      const words = new RegExp(
        `cord ${cord.number} (?:over its own eye|through its own eye)(?: only|, then through (?:eyes? )?([\\d, and]+))?`,
      );
      const read = words.exec(step("string-eyes")?.text ?? "");
      expect((read?.[1] ?? "").match(/\d+/g)?.map(Number) ?? []).toEqual(passed);
    }
  }

  test("steps: the board and its fixings", () => {
    const { board, size } = shade;
    const fromEnd = board.brackets.map(({ xMm }) => xMm - board.leftMm);
    const saw = step("board-saw");
    expectLengths(saw?.text ?? "", "Saw the board, .*?, to ", [board.cutMm], units);
    expectLengths(
      saw?.check ?? "",
      "It is ",
      [board.depthMm, board.thicknessMm],
      units,
      " from front to back and ",
    );
    const listed = (text: string, words: string) => {
      const list = new RegExp(`${words}((?:${LENGTH}(?:, | and )?)+)`).exec(text)?.[1] ?? "";
      expectLengths(list, "^", fromEnd, units, "(?:, | and )");
    };
    const fixing = step("board-fixing")?.text ?? "";
    expect(fixing).toContain(` ${board.brackets.length} ${board.fixing === "brackets" ? "bracket" : "hole"}`);
    listed(fixing, " at ");
    if (board.fixing === "brackets") {
      const text = step("hang-brackets")?.text ?? "";
      listed(text, `${board.brackets.length} brackets? at `);
      expectLengths(text, "their upper faces come ", [board.thicknessMm], units);
      if (size.topAboveFloorMm !== undefined) expectLengths(text, "It is ", [size.topAboveFloorMm], units);
    } else {
      const text = step("hang-board")?.text ?? "";
      expectLengths(text, "a screw of ", [board.screws.lengthMm], units);
      listed(text, "hole, at ");
    }
    const wall = step("hang-wall")?.text ?? "";
    expect(wall).toContain(`counts on ${board.screws.count} screw`);
    expectLengths(wall, `counts on ${board.screws.count} screws? of `, [board.screws.lengthMm], units);
    const bar = step("string-bar")?.text ?? "";
    // A rod behind the shade goes in without its length.
    if (board.barLengthMm !== undefined && bar.includes(`${board.barName},`))
      expectLengths(bar, `${literally(board.barName ?? "")}, `, [board.barLengthMm], units);
  });

  test("workbook: marks", () => {
    const { grid, size, cloth } = shade;
    const sheets = setIn(out, "Table sheets");
    // Before it stands what is marked on the flat cloth, where rows lie elsewhere.
    const begins = sheets.search(
      /Measure every mark from the hem or from the edge|Where the rings come once/,
    );
    expect(begins).toBeGreaterThan(0);
    const finished = sheets.slice(begins);
    expectLengths(finished, "Top line ", [size.finishedLengthMm], units);
    for (const { number, fromHemMm } of grid.rows) {
      expectLengths(finished, `Row ${number} `, [fromHemMm], units);
      expectRest(finished, `Row ${number} `, size.finishedLengthMm - fromHemMm);
    }
    for (const { number, xMm } of grid.columns) {
      const rightMm = size.finishedWidthMm - xMm;
      // A panel that widens has no one width: each column stands by the edge beside it.
      if (shade.form.panel !== undefined) {
        expectLengths(finished, `Column ${number} `, [Math.min(xMm, rightMm)], units);
        continue;
      }
      expectLengths(finished, `Column ${number} `, [xMm], units);
      expectRest(finished, `Column ${number} `, rightMm);
    }
    for (const { label, atMm } of shade.existing === undefined ? shade.form.marks : [])
      expectLengths(sheets, `${literally(capital(label))} `, [atMm], units);
    cloth.ribLines.forEach((line, i) => {
      const where = line.between ? `above row ${line.row}` : `row ${line.row}`;
      expectLengths(sheets, ` ${i + 1}, ${where} `, [line.onLiningMm, line.fromHemMm], units);
    });
  });

  /** What is left of a whole stands behind a length without its unit, to a mark: both are rounded. */
  function expectRest(text: string, words: string, mm: number) {
    const bare = String.raw`(\d+ \d+⁄\d+|\d+⁄\d+|\d+)`;
    const read = new RegExp(`${words}${LENGTH} ${bare}(?= |$)`).exec(text)?.[1];
    const parsed = parseLength(`${read} ${units.system === "imperial" ? "in" : "mm"}`, "mm");
    const mark = markMm(units.ruler);
    if (!parsed.ok || !near(parsed.lengthMm, mm, mark + 0.001)) throw new Error(`${words}${read} for ${mm}`);
  }

  test("workbook: board, lock or tube, and cords", () => {
    const { board, lift } = shade;
    const sheets = setIn(out, "Table sheets");
    board.eyes.forEach(({ xMm, zMm }, i) => {
      const last = lift.kind === "cleat" && lift.turn.column === i + 1 ? ", the last" : "";
      expectLengths(sheets, `Eye ${i + 1}${last} `, [xMm - board.leftMm], units);
      if (i === 0) expectLengths(sheets, "Eyes ", [zMm], units);
    });
    if (nearestMark(board.leftMm, units.ruler) === 0) expect(sheets).toContain("Left end level with");
    else expectLengths(sheets, "Left end ", [board.leftMm], units);
    expectLengths(sheets, `Screws: ${board.screws.count}, `, [board.screws.lengthMm], units);
    const lockLift = lock();
    if (lockLift !== undefined) {
      const { seat, threading, cords, lockName } = lockLift;
      expectLengths(sheets, "Lock, middle ", [seat.xMm - board.leftMm], units);
      expectLengths(sheets, `${literally(lockName)}: middle `, [seat.zMm], units);
      expect(sheets).toContain(`toothed roller to the ${seat.facing}.`);
      const list = sheets.slice(sheets.indexOf("Cords, in the order of threading"));
      const rows = [...list.matchAll(new RegExp(`(?<!\\d)(\\d+) (${LENGTH}) (\\d+), (left|right)`, "g"))];
      expect(rows.map(([, number, , slot, from]) => [Number(number), Number(slot), from])).toEqual(
        threading.map((number) => {
          const cord = cords.find((one) => one.number === number);
          return [number, cord?.slot, cord?.entersFrom];
        }),
      );
      rows.forEach(([, number, cut = ""]) => {
        expectLengths(cut, "^", [cords.find((one) => one.number === Number(number))?.cutMm ?? 0], units);
      });
    }
    const tubeLift = tube();
    if (tubeLift === undefined) return;
    expectLengths(sheets, "Drive, middle ", [tubeLift.drive.xMm - board.leftMm], units);
    for (const { number, xMm } of tubeLift.spools)
      expectLengths(sheets, `Spool ${number} `, [xMm - board.leftMm], units);
    for (const { number, xMm } of tubeLift.supports)
      expectLengths(sheets, `Support ${number} `, [xMm - board.leftMm], units);
    const { tube: rod, wrapsLeft } = tubeLift;
    expectLengths(
      sheets,
      `${literally(rod.name)}: axis `,
      [rod.axisMm, rod.zMm],
      units,
      " under the board, ",
    );
    expect(sheets).toContain(`With the shade down ${Math.round(wrapsLeft)} turns stay`);
    for (const { number, cutMm } of lift.cords)
      expectLengths(sheets, `(?<!\\d)${number} (?=${LENGTH} ${number}(?:\\s|$))`, [cutMm], units);
  });

  test("workbook: hanging", () => {
    const { board, size, grid } = shade;
    const sheets = setIn(out, "Table sheets");
    const one = board.fixing === "brackets" ? "Bracket" : "Screw";
    const places = board.brackets.map(({ xMm }) => xMm - board.leftMm);
    expectLengths(sheets, `${one} places from the board’s left end `, places, units, " · ");
    expectLengths(sheets, "Top line to hem, raised ", [grid.raisedHeightMm], units);
    const lines: [string, (number | undefined)[]][] = [
      ["oard · hem above the floor ", [size.topAboveFloorMm, size.hemAboveFloorMm]],
      ["Cords below the lock, down · up ", [lock()?.tailLoweredMm, lock()?.tailRaisedMm]],
      ["Their end above the floor, raised ", [lock()?.tailEndAboveFloorRaisedMm]],
    ];
    for (const [words, lengthsMm] of lines) {
      const known = lengthsMm.filter((mm) => mm !== undefined);
      if (known.length === lengthsMm.length) expectLengths(sheets, words, known, units, " · ");
    }
  });

  test("workbook: pieces, and what to buy", () => {
    const { cloth, board, size } = shade;
    const sheets = setIn(out, "Table sheets");
    const finished = [size.finishedWidthMm, size.finishedLengthMm];
    expectLengths(sheets, "Finished, width × length ", finished, units, " × ");
    for (const { panels } of cloth.layers)
      for (const { label, widthMm, lengthMm } of panels)
        expectLengths(sheets, `${literally(label)} `, [widthMm, lengthMm], units);
    for (const { label, widthMm, lengthMm } of cloth.trims)
      expectLengths(sheets, `${literally(label)} `, [widthMm, lengthMm], units);
    expectLengths(sheets, `Board: ${literally(board.sectionName)} `, [board.cutMm], units);
    if (board.barLengthMm !== undefined)
      expectLengths(sheets, `Bar: ${literally(board.barName ?? "")} `, [board.barLengthMm], units);
    const rod = tube()?.tube;
    if (rod !== undefined) expectLengths(sheets, `Tube: ${literally(rod.name)} `, [rod.lengthMm], units);
    const shop = unbroken(out.pages.map(({ text }) => text).join(" "));
    for (const { label, needText, buyText } of out.plan.cost.shopping)
      expect(shop).toContain(unbroken(`${label}${needText}${buyText}`));
  });

  test("drawings: what they say beside the lines", () => {
    const { grid, size, board, lift } = shade;
    const said = new Map(
      (["front", "back", "side", "board", "marking", "lock"] as const).flatMap((kind) =>
        drawSheet(kind, out.plan, shade, { raise: 0 }).facts.map(({ label, text }): [string, string] => [
          `${kind}: ${label}`,
          text.replaceAll("\u00a0", " "),
        ]),
      ),
    );
    const fact = (label: string) => said.get(label) ?? `no “${label}”`;
    const expectFact = (label: string, mm: number | undefined) => {
      if (mm !== undefined) expectLengths(fact(label), "^", [mm], units);
    };
    expectFact("front: Finished width", size.finishedWidthMm);
    expectFact("front: Finished length", size.finishedLengthMm);
    expectFact("front: Top line to hem when raised", grid.raisedHeightMm);
    expectFact("front: Hem above the floor when lowered", size.hemAboveFloorMm);
    expect(fact("front: Rows of rings")).toBe(String(grid.rows.length));
    expect(fact("front: Columns of rings")).toBe(String(grid.columns.length));
    expect(fact("front: Control side")).toBe(lift.controlSide);
    expectFact("side: Board depth", board.depthMm);
    expectFact("side: Headrail allowance", grid.headrailMm);
    expectFact("board: Length", board.lengthMm);
    for (const sheet of ["back", "marking"]) {
      for (const { number, fromHemMm } of grid.rows)
        expectFact(`${sheet}: Row ${number} above the hem`, fromHemMm);
      for (const { number, xMm } of grid.columns)
        expectFact(`${sheet}: Column ${number} from the left edge seen from the room`, xMm);
    }
    for (const { number, xMm } of board.brackets)
      expectFact(`board: Bracket ${number} from the left end`, xMm - board.leftMm);
    if (lift.kind === "cord-lock") {
      board.eyes.forEach(({ xMm }, i) => {
        expectFact(`board: Eye ${i + 1} from the left end`, xMm - board.leftMm);
      });
      expectFact("board: Middle of the lock from the left end", lift.seat.xMm - board.leftMm);
      expect(fact("lock: Threading order")).toBe(lift.threading.join(", "));
      for (const { number, slot, entersFrom } of lift.cords)
        expect(fact(`back: Cord ${number}`)).toMatch(new RegExp(`${entersFrom} .*slot ${slot}$`));
      return;
    }
    if (lift.kind === "cleat") {
      const last = lift.turn.column === undefined ? "Last eye" : `Eye ${lift.turn.column}, the last,`;
      expectFact(`board: ${last} from the left end`, lift.turn.xMm - board.leftMm);
      expectFact("lock: Cords below the last eye, raised", lift.tailRaisedMm);
      if (lift.toCleatMm !== undefined) expectFact("lock: Cleat below the last eye", lift.toCleatMm);
      return;
    }
    for (const { number, xMm } of lift.spools)
      expectFact(`board: Spool ${number} from the left end`, xMm - board.leftMm);
    for (const { number, xMm } of lift.supports)
      expectFact(`board: Support ${number} from the left end`, xMm - board.leftMm);
    expectFact("board: Middle of the drive from the left end", lift.drive.xMm - board.leftMm);
    if (lift.kind === "tube-wand") expectFact("lock: Wand below the drive", lift.wandMm);
    if (lift.kind !== "tube-loop") return;
    expectFact("lock: Loop, down to its lowest point", lift.loopDropMm);
    expectFact("lock: Loop, all round", lift.loopPerimeterMm);
  });

  test("tag: warns of the cords and loops that there are", () => {
    const { lift, tag } = shade;
    const words = drawTag(shade)
      .flatMap(({ primitives }) =>
        primitives.flatMap((primitive) => (primitive.kind === "text" ? [primitive.text] : [])),
      )
      .join(" ");
    for (const { text } of tag.lines) for (const word of text.split(/[ _]+/)) expect(words).toContain(word);
    const said = tag.lines.map(({ text }) => text).join(" ");
    const hangs = lift.hangs === "tail" || lift.hangs === "loop";
    expect(said.includes("devices for the cords that came with this shade"), lift.kind).toBe(hangs);
    expect(said.includes("cords at the back")).toBe(lift.cords.length > 0);
    for (const danger of ["strangle", "loops", "out of the reach of children", "Do not tie cords together"])
      expect(said).toContain(danger);
  });
});
