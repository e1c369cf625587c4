import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { cordStyle, drawSheet, drawTag } from "../../src/drawing/index.ts";
import { type Job, LIFT_KINDS } from "../../src/job/index.ts";
import type { ShadePlan } from "../../src/plan/index.ts";
import { type CordLockLift, LAYER_NAMES, type TubeLift } from "../../src/shade-plan/index.ts";
import { markMm, N_PER_POUND_FORCE, NM_PER_POUND_FORCE_INCH } from "../../src/units/index.ts";
import { workroomJob } from "../workroom-job.ts";
import { chapterIn, listIn, type OutFiles, outFiles, unbroken } from "./out-files.ts";
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
  const tube = (): TubeLift | undefined => (shade.lift.kind === "cord-lock" ? undefined : shade.lift);

  /** A row of a list has these values: numbers in millimetres to a thousandth, all else as text. */
  function expectRow(
    row: Record<string, string> | undefined,
    wanted: Record<string, number | string | undefined>,
  ) {
    if (row === undefined) throw new Error(`no row for ${JSON.stringify(wanted)}`);
    for (const [heading, value] of Object.entries(wanted)) {
      const cell = row[heading];
      if (typeof value !== "number") expect(cell, heading).toBe(value ?? "");
      else if (!near(Number(cell), value) || cell === "") throw new Error(`${heading}: ${cell} for ${value}`);
    }
  }

  test("lists: cords", () => {
    const rows = listIn(out, "cord-list");
    expect(rows).toHaveLength(shade.lift.cords.length);
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
              entersFrom: cord.entersFrom,
              slot: cord.slot,
              turn: 1 + (lock()?.threading.indexOf(cord.number) ?? Number.NaN),
              wrapsOnSpoolMm: undefined,
            }
          : { wrapsOnSpoolMm: cord.wrapsMm, alongBoardMm: undefined, tailMm: undefined, slot: undefined }),
      });
    });
  });

  test("lists: marks, board, pieces, shopping", () => {
    const { grid, board, cloth, lift } = shade;
    const rings = listIn(out, "marking-list").filter(({ mark }) => mark === "ring");
    expect(rings).toHaveLength(grid.rows.length * grid.columns.length);
    let at = 0;
    for (const { number: row, fromHemMm } of grid.rows)
      for (const { number: column, xMm } of grid.columns)
        expectRow(rings[at++], { row, column, fromHemMm, fromLeftEdgeMm: xMm });

    const marks = listIn(out, "board-list");
    const named = (mark: string) => marks.filter((one) => one.mark === mark);
    board.eyes.forEach((eye, i) => {
      expectRow(named("screw eye")[i], {
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
    if (lift.kind !== "cord-lock") expectRow(stick("Lift tube"), { lengthMm: lift.tube.lengthMm });

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
    if (lift.kind !== "cord-lock") {
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
      expect(knots.text).toContain(`Leave cord ${nearest?.number}, nearest the lock,`);
    const trim = step("level-trim");
    expectLengths(trim?.text ?? "", "(?:all tails level,|the tail) ", [lift.tailLoweredMm], units);
    expectLengths(trim?.check ?? "", "hangs? ", [lift.tailRaisedMm], units);
    const cleat = step("hang-cleat")?.text ?? "";
    expectLengths(
      cleat,
      "The cord hangs ",
      [lift.tailLoweredMm, lift.tailRaisedMm],
      units,
      " below the lock when the shade is down and ",
    );
    expect(cleat).toContain(`on the ${lift.controlSide},`);
    const threaded = [
      ...(step("string-thread")?.text ?? "").matchAll(/cord (\d+) from the (\w+) end into slot (\d+)/g),
    ];
    expect(threaded.map(([, number, from, slot]) => [Number(number), from, Number(slot)])).toEqual(
      lift.threading.map((number) => {
        const cord = lift.cords.find((one) => one.number === number);
        return [number, cord?.entersFrom, cord?.slot];
      }),
    );
    for (const cord of lift.cords) {
      const [, ...passed] = cord.eyes;
      const words = new RegExp(
        `cord ${cord.number} through its own eye(?: only|, then through eyes? ([\\d, and]+))`,
      );
      const read = words.exec(step("string-eyes")?.text ?? "");
      expect((read?.[1] ?? "").match(/\d+/g)?.map(Number) ?? []).toEqual(passed);
    }
  });

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

  /** The first number behind some words, in the unit that is printed first. */
  function expectAmount(text: string, words: string, value: number, digits: number) {
    const read = new RegExp(`${literally(words)} (\\d+(?:\\.\\d+)?)`).exec(text);
    if (read === null) throw new Error(`“${words}” is not in: ${text.slice(0, 600)}`);
    if (!near(Number(read[1]), value, 0.5 * 10 ** -digits + 1e-9)) throw new Error(`${read[0]} for ${value}`);
  }
  const newtons = (n: number) => (units.system === "imperial" ? n / N_PER_POUND_FORCE : n);

  test("workbook: marks and cords", () => {
    const { grid, size, lift } = shade;
    const marking = chapterIn(out, "Marking plan");
    for (const { number, fromHemMm, yMm } of grid.rows)
      expectLengths(marking, `Row ${number} `, [fromHemMm, yMm], units);
    expectLengths(marking, "Top line ", [size.finishedLengthMm, 0], units);
    for (const { number, xMm } of grid.columns)
      expectLengths(marking, `Column ${number} `, [xMm, size.finishedWidthMm - xMm], units);

    const cords = chapterIn(out, "Cords");
    for (const cord of lift.cords) {
      const row = `(?<!\\d)${cord.number} ${literally(cordStyle(cord.number).colourName)} `;
      if ("runMm" in cord) {
        expectLengths(cords, row, [cord.riseMm, cord.runMm, cord.tailMm, cord.knotsMm, cord.cutMm], units);
        expect(cords).toMatch(new RegExp(`${row}(?:${LENGTH} ){5}${cord.slot}, ${cord.entersFrom}`));
      } else expectLengths(cords, row, [cord.riseMm, cord.wrapsMm, cord.knotsMm, cord.cutMm], units);
    }
    expectAmount(cords, "Weight on the cords, raised", newtons(lift.heldN), 1);
    if (lift.kind !== "motor")
      expectAmount(cords, "Pull at the hand, where it is greatest", newtons(lift.pullN), 1);
    if (lift.kind !== "cord-lock") return;
    expectLengths(cords, "Tail below the lock, lowered ", [lift.tailLoweredMm], units);
    expectLengths(cords, "Tail below the lock, raised ", [lift.tailRaisedMm], units);
    const floor: [string, number | undefined][] = [
      ["lowered", lift.tailEndAboveFloorLoweredMm],
      ["raised", lift.tailEndAboveFloorRaisedMm],
    ];
    for (const [when, mm] of floor)
      if (mm !== undefined) expectLengths(cords, `End of the tail above the floor, ${when} `, [mm], units);
  });

  test("workbook: the board, its lock or its tube", () => {
    const { board } = shade;
    const page = chapterIn(out, "Board");
    expectLengths(page, "Length ", [board.lengthMm], units);
    expectLengths(page, "Depth × thickness ", [board.depthMm, board.thicknessMm], units, " × ");
    expectLengths(page, `Screws ${board.screws.count}, each `, [board.screws.lengthMm], units);
    expectAmount(page, "Load on the fixings", newtons(board.loadN), 1);
    board.eyes.forEach(({ xMm, zMm }, i) => {
      expectLengths(page, `Eye ${i + 1} `, [xMm - board.leftMm, xMm, zMm], units);
    });
    for (const { number, xMm } of board.brackets)
      expectLengths(
        page,
        `${board.fixing === "brackets" ? "Bracket" : "Screw"} ${number} `,
        [xMm - board.leftMm, xMm],
        units,
      );
    const lockLift = lock();
    if (lockLift !== undefined) {
      const { seat, slots, threading, cords, controlSide } = lockLift;
      const rig = chapterIn(out, "Lock and threading");
      expectLengths(rig, "Centre from the board’s left ", [seat.xMm - board.leftMm], units);
      expectLengths(rig, "Centre from the left edge ", [seat.xMm], units);
      expectLengths(rig, "Centre from the wall side ", [seat.zMm], units);
      expect(rig).toContain(`Side ${controlSide} `);
      expect(rig).toContain(`Toothed roller towards the ${seat.facing} `);
      for (const slot of slots) expectLengths(rig, `Slot ${slot.number} `, [slot.zMm], units);
      threading.forEach((number, i) => {
        const cord = cords.find((one) => one.number === number);
        expect(rig).toContain(
          ` ${i + 1} ${number} ${cord?.entersFrom} ${cord?.slot} ${cord?.placeInSlot} ${cord?.eyes.join(", ")} `,
        );
      });
    }
    const tubeLift = tube();
    if (tubeLift === undefined) return;
    const rig = chapterIn(out, "Tube, spools and drive");
    const torque = (nm: number) => (units.system === "imperial" ? nm / NM_PER_POUND_FORCE_INCH : nm);
    const digits = units.system === "imperial" ? 1 : 2;
    expectAmount(rig, "Torque lowered", torque(tubeLift.torqueLoweredNm), digits);
    expectAmount(rig, "Torque raised", torque(tubeLift.torqueRaisedNm), digits);
    expectAmount(rig, "Turns left, lowered", tubeLift.wrapsLeft, 0);
    expectAmount(rig, "Turns to raise it", tubeLift.turns, 1);
    expectLengths(rig, `${literally(tubeLift.tube.name)}, cut `, [tubeLift.tube.lengthMm], units);
    expectLengths(rig, "Axis under board ", [tubeLift.tube.axisMm], units);
    for (const { number, xMm } of tubeLift.spools)
      expectLengths(rig, `Spool ${number} `, [xMm - board.leftMm, xMm], units);
    for (const { number, xMm } of tubeLift.supports)
      expectLengths(rig, `Support ${number} `, [xMm - board.leftMm, xMm], units);
    const { fromMm, toMm } = tubeLift.tube;
    expectLengths(rig, "Tube, left end ", [fromMm - board.leftMm, fromMm], units);
    expectLengths(rig, "Tube, right end ", [toMm - board.leftMm, toMm], units);
    if (tubeLift.kind === "tube-wand") expectLengths(rig, "Wand ", [tubeLift.wandMm], units);
    if (tubeLift.kind === "tube-loop") {
      expectLengths(rig, "Loop below drive ", [tubeLift.loopDropMm], units);
      expectLengths(rig, "Loop, all round ", [tubeLift.loopPerimeterMm], units);
      if (tubeLift.loopEndAboveFloorMm !== undefined)
        expectLengths(rig, "Loop above floor ", [tubeLift.loopEndAboveFloorMm], units);
    }
  });

  test("workbook: pieces, and what to buy", () => {
    const page = chapterIn(out, "Cutting");
    for (const { layer, clothName, panels, cutWidthMm, cutLengthMm } of shade.cloth.layers) {
      for (const { label, widthMm, lengthMm } of panels)
        expectLengths(page, `${literally(label)} ${literally(clothName)} `, [widthMm, lengthMm], units);
      const name = LAYER_NAMES[layer].toLowerCase();
      expectLengths(page, `Cut size of the ${name} .*?Cut size `, [cutWidthMm, cutLengthMm], units);
    }
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
    const hangs = lift.kind === "cord-lock" || lift.kind === "tube-loop";
    expect(said.includes("devices for the cords that came with this shade"), lift.kind).toBe(hangs);
    expect(said.includes("cords at the back")).toBe(lift.cords.length > 0);
    for (const danger of ["strangle", "loops", "out of the reach of children", "Do not tie cords together"])
      expect(said).toContain(danger);
  });
});
