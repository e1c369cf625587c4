import { figureRule, type Worked } from "../figures/index.ts";
import { boardAllowanceMm, type Cloth } from "../job/index.ts";
import type { Grid, Size, Trim } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { inches, lengthText, upToMark } from "../units/index.ts";
import type { ClothShade } from "./cloth-input.ts";
import { TURN } from "./turned-under.ts";

const LAP = sourced(inches(1), "mm", cite("from-memory", "1 in to staple through"));
const COVER_WIDTH = figureRule({
  id: "cloth.cover-width",
  label: "Board cover: width",
  symbol: "w",
  unit: "mm",
  formula: "2·(d + t) + o",
  inputs: {
    d: ["mm", "depth of the board", "board/section"],
    t: ["mm", "thickness of the board", "board/section"],
    o: ["mm", "lap"],
  },
  cite: LAP.cite,
  compute: ({ d, t, o }) => 2 * (d + t) + o,
});

const COVER_LENGTH = figureRule({
  id: "cloth.cover-length",
  label: "Board cover: length",
  symbol: "l",
  unit: "mm",
  formula: "B + 2·t + o",
  inputs: {
    B: ["mm", "length of the board", "figure:measure.board-length"],
    t: ["mm", "thickness of the board", "board/section"],
    o: ["mm", "lap"],
  },
  cite: LAP.cite,
  compute: ({ B, t, o }) => B + 2 * t + o,
});

const RETURN_WIDTH = figureRule({
  id: "cloth.return-width",
  label: "Return over the board’s end: cut width",
  symbol: "w",
  unit: "mm",
  formula: "d + 2·e",
  inputs: {
    d: ["mm", "depth of the board", "board/returns", "board/section", "shade/mount"],
    e: ["mm", "turned under"],
  },
  cite: cite("board-returns", "as deep as the board"),
  compute: ({ d, e }) => d + 2 * e,
});

const RETURN_LENGTH = figureRule({
  id: "cloth.return-length",
  label: "Return over the board’s end: cut length",
  symbol: "l",
  unit: "mm",
  formula: "h + b + 2·e",
  inputs: {
    h: [
      "mm",
      "how far it hangs down",
      "board/returns",
      "board/returnDropMm",
      "figure:shape.headrail",
      "shade/mount",
    ],
    b: ["mm", "for the board", "hems/boardAllowanceMm", "board/attachment", "board/section"],
    e: ["mm", "turned under"],
  },
  cite: TURN.cite,
  compute: ({ h, b, e }) => h + b + 2 * e,
});

const DUST_STRIP_WIDTH = figureRule({
  id: "cloth.dust-strip-width",
  label: "Dust strip: cut width",
  symbol: "w",
  unit: "mm",
  formula: "g + e + o",
  inputs: {
    g: ["mm", "depth that closes the gap", "board/dustStripMm"],
    e: ["mm", "hem"],
    o: ["mm", "stapled on"],
  },
  cite: cite("from-memory", "a 1 to 2 in strip of lining closes the top gap"),
  compute: ({ g, e, o }) => g + e + o,
});

/** Cover, returns and dust strip: cloth that belongs to the board and is not lifted. */
export function boardTrims(shade: ClothShade, size: Size, grid: Grid): Worked<Trim[]> {
  const parts = [cover(shade, size), returns(shade, grid), dustStrip(shade, size)];
  return {
    values: parts.flatMap(({ values }) => values),
    workings: parts.flatMap(({ workings }) => workings),
  };
}

const NOTHING: Worked<Trim[]> = { values: [], workings: [] };

/** Cloth for what is hidden: the lining where there is one. */
function hiddenCloth(shade: ClothShade, from: "lining" | "face"): Cloth {
  return from === "lining" ? (shade.cloths.lining ?? shade.cloths.face) : shade.cloths.face;
}

/** Once around the board and lapped; the ends folded in like a parcel. Longer than its cloth is wide it is pieced. */
function cover(shade: ClothShade, size: Size): Worked<Trim[]> {
  const { depthMm, thicknessMm } = shade.board;
  const cloth = hiddenCloth(shade, shade.making.board.coverFrom);
  const width = COVER_WIDTH.figure({ d: depthMm, t: thicknessMm, o: LAP.value });
  const length = COVER_LENGTH.figure({ B: size.boardLengthMm, t: thicknessMm, o: LAP.value });
  const count = Math.max(1, Math.ceil(length.value / cloth.usableWidthMm - 1e-9));
  const trim: Trim = {
    id: "board-cover",
    label: "Board cover",
    ...named(cloth),
    count,
    widthMm: width.value,
    lengthMm: length.value / count,
    grain: "free",
    why: `once round the board with a lap of ${lengthText(LAP.value, shade.units)}${count > 1 ? `, in ${count} pieces: their joins lie out of sight` : ""}`,
    hangs: false,
  };
  return { values: [trim], workings: [width, length] };
}

/** Two pieces that hide the board's ends on an outside mount, as deep as the board and as long as never folds. */
function returns(shade: ClothShade, grid: Grid): Worked<Trim[]> {
  if (shade.making.board.returns !== "pieces" || shade.mount === "inside") return NOTHING;
  const dropMm = shade.making.board.returnDropMm ?? grid.headrailMm;
  const { depthMm } = shade.board;
  const width = RETURN_WIDTH.figure({ d: depthMm, e: TURN.value });
  const length = RETURN_LENGTH.figure({ h: dropMm, b: boardAllowanceMm(shade), e: TURN.value });
  const trim: Trim = {
    id: "board-return",
    label: "Return over the board’s end",
    ...named(shade.cloths.face),
    count: 2,
    widthMm: width.value,
    lengthMm: length.value,
    grain: "warp",
    why: `hides the end of the board, ${lengthText(depthMm, shade.units)} deep, ${lengthText(dropMm, shade.units)} down`,
    hangs: false,
  };
  return { values: [trim], workings: [width, length] };
}

/** A strip that is stapled on the board at the back and lies over the gap to the wall or frame. */
function dustStrip(shade: ClothShade, size: Size): Worked<Trim[]> {
  const depthMm = shade.making.board.dustStripMm;
  if (depthMm === 0) return NOTHING;
  const cloth = hiddenCloth(shade, "lining");
  const width = DUST_STRIP_WIDTH.figure({ g: depthMm, e: TURN.value, o: LAP.value });
  const lengthMm = upToMark(size.boardLengthMm + 2 * TURN.value, shade.units.ruler);
  const count = Math.max(1, Math.ceil(lengthMm / cloth.usableWidthMm - 1e-9));
  const trim: Trim = {
    id: "dust-strip",
    label: "Dust strip",
    ...named(cloth),
    count,
    widthMm: width.value,
    lengthMm: lengthMm / count,
    grain: "free",
    why: `closes the gap behind the top of the shade, ${lengthText(depthMm, shade.units)} deep`,
    hangs: false,
  };
  return { values: [trim], workings: [width] };
}

function named(cloth: Cloth): Pick<Trim, "clothId" | "clothName"> {
  return { clothId: cloth.id, clothName: cloth.name };
}
