import type { WorkingBook } from "../figures/index.ts";
import type { Cloth, ResolvedShade } from "../job/index.ts";
import type { Grid, Size, Trim } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { inches, lengthText, upToMark } from "../units/index.ts";
import { boardAllowanceMm } from "./make-up.ts";

const LAP = sourced(inches(1), "mm", cite("from-memory", "1 in to staple through"));
const TURN = sourced(inches(0.5), "mm", cite("common-practice", "1/2 in turned under"));

/** Cover, returns and dust strip: cloth that belongs to the board and is not lifted. */
export function boardTrims(resolved: ResolvedShade, size: Size, grid: Grid, book: WorkingBook): Trim[] {
  return [cover(resolved, size, book), ...returns(resolved, grid, book), ...dustStrip(resolved, size, book)];
}

/** Cloth for what is hidden: the lining where there is one. */
function hiddenCloth(resolved: ResolvedShade, from: "lining" | "face"): Cloth {
  return from === "lining" ? (resolved.cloths.lining ?? resolved.cloths.face) : resolved.cloths.face;
}

/** Once around the board and lapped; the ends folded in like a parcel. Longer than its cloth is wide it is pieced. */
function cover(resolved: ResolvedShade, size: Size, book: WorkingBook): Trim {
  const { depthMm, thicknessMm } = resolved.board;
  const cloth = hiddenCloth(resolved, resolved.making.board.coverFrom);
  const lap = [LAP.value, "mm", "lap"] as const;
  const t = [thicknessMm, "mm", "thickness of the board"] as const;
  const widthMm = book.figure("cloth.cover-width", {
    label: "Cover of the board: width",
    symbol: "w",
    unit: "mm",
    formula: "2·(d + t) + o",
    given: { d: [depthMm, "mm", "depth of the board"], t, o: lap },
    cite: LAP.cite,
    compute: ({ d, t: thick, o }) => 2 * (d + thick) + o,
  });
  const lengthMm = book.figure("cloth.cover-length", {
    label: "Cover of the board: length",
    symbol: "l",
    unit: "mm",
    formula: "B + 2·t + o",
    given: { B: [size.boardLengthMm, "mm", "length of the board"], t, o: lap },
    cite: LAP.cite,
    compute: ({ B, t: thick, o }) => B + 2 * thick + o,
  });
  const count = Math.max(1, Math.ceil(lengthMm / cloth.usableWidthMm - 1e-9));
  return {
    id: "board-cover",
    label: "Cover of the board",
    ...named(cloth),
    count,
    widthMm,
    lengthMm: lengthMm / count,
    grain: "free",
    why: `once round the board with a lap of ${lengthText(LAP.value, resolved.units)}${count > 1 ? `, in ${count} pieces: their joins lie out of sight` : ""}`,
    hangs: false,
  };
}

/** Two pieces that hide the board's ends on an outside mount, as deep as the board and as long as never folds. */
function returns(resolved: ResolvedShade, grid: Grid, book: WorkingBook): Trim[] {
  if (resolved.making.board.returns !== "pieces" || resolved.mount === "inside") return [];
  const cloth = resolved.cloths.face;
  const dropMm = resolved.making.board.returnDropMm ?? grid.headrailMm;
  const turn = [TURN.value, "mm", "turned under"] as const;
  const widthMm = book.figure("cloth.return-width", {
    label: "Return over the board’s end: cut width",
    symbol: "w",
    unit: "mm",
    formula: "d + 2·e",
    given: { d: [resolved.board.depthMm, "mm", "depth of the board"], e: turn },
    cite: cite("board-returns", "as deep as the board"),
    compute: ({ d, e }) => d + 2 * e,
  });
  const lengthMm = book.figure("cloth.return-length", {
    label: "Return over the board’s end: cut length",
    symbol: "l",
    unit: "mm",
    formula: "h + b + 2·e",
    given: {
      h: [dropMm, "mm", "how far it hangs down"],
      b: [boardAllowanceMm(resolved), "mm", "for the board"],
      e: turn,
    },
    cite: TURN.cite,
    compute: ({ h, b, e }) => h + b + 2 * e,
  });
  return [
    {
      id: "board-return",
      label: "Return over the board’s end",
      ...named(cloth),
      count: 2,
      widthMm,
      lengthMm,
      grain: "warp",
      why: `hides the end of the board, ${lengthText(resolved.board.depthMm, resolved.units)} deep, ${lengthText(dropMm, resolved.units)} down`,
      hangs: false,
    },
  ];
}

/** A strip that is stapled on the board at the back and lies over the gap to the wall or frame. */
function dustStrip(resolved: ResolvedShade, size: Size, book: WorkingBook): Trim[] {
  const depthMm = resolved.making.board.dustStripMm;
  if (depthMm === 0) return [];
  const cloth = hiddenCloth(resolved, "lining");
  const widthMm = book.figure("cloth.dust-strip-width", {
    label: "Dust strip: cut width",
    symbol: "w",
    unit: "mm",
    formula: "g + e + o",
    given: {
      g: [depthMm, "mm", "depth that closes the gap"],
      e: [TURN.value, "mm", "hem"],
      o: [LAP.value, "mm", "stapled on"],
    },
    cite: cite("from-memory", "a 1 to 2 in strip of lining closes the top gap"),
    compute: ({ g, e, o }) => g + e + o,
  });
  const lengthMm = upToMark(size.boardLengthMm + 2 * TURN.value, resolved.units.ruler);
  const count = Math.max(1, Math.ceil(lengthMm / cloth.usableWidthMm - 1e-9));
  return [
    {
      id: "dust-strip",
      label: "Dust strip",
      ...named(cloth),
      count,
      widthMm,
      lengthMm: lengthMm / count,
      grain: "free",
      why: `closes the gap behind the top of the shade, ${lengthText(depthMm, resolved.units)} deep`,
      hangs: false,
    },
  ];
}

function named(cloth: Cloth): Pick<Trim, "clothId" | "clothName"> {
  return { clothId: cloth.id, clothName: cloth.name };
}
