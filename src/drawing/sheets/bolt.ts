import type { Bolt, BoltPlan, Rect as BoltRect, Leaf, Piece, Placement } from "../../cutting/index.ts";
import { type ClothCutting, type FollowedCut, followCuts } from "../../plan/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import type { Drawing, Fact, Marker, Point, Primitive } from "../model.ts";
import { type DrawnRect, dimensionOf, line, name, note, rect } from "./shapes.ts";

/** More repeats than this would only blacken the cloth. */
const MOST_REPEATS = 200;
/** Number of a cut, mm on paper. */
const CUT_TAG_MM = 3.2;

/** A part of a bolt that is drawn by itself, mm from the end that is cut first. */
interface BoltStretch {
  fromMm: number;
  toMm: number;
}

export interface BoltDrawingInput {
  units: UnitChoice;
  cutting: ClothCutting;
  bolt: BoltPlan;
}

/**
 * One bolt to scale as it lies on the table, right side up, the end that is cut first at the left, for a left-handed
 * cutter at the right: every piece with the
 * end at which its top lies, every cut with its number in the order of cutting, the repeat of the pattern under them,
 * what is left over.
 *
 * @throws where the plan names a bolt that is not in the problem: a bug
 */
export function drawBoltPlan(input: BoltDrawingInput): Drawing {
  return drawStretch(input, knownOf(input), { fromMm: 0, toMm: input.bolt.usedMm });
}

/**
 * The bolt in drawings of stretches no longer than `mostMm` where cuts from selvedge to selvedge allow, one after the
 * other.
 *
 * @throws where the plan names a bolt that is not in the problem: a bug
 */
export function* drawBoltStretches(input: BoltDrawingInput, mostMm: number): Generator<Drawing> {
  const known = knownOf(input);
  for (const stretch of boltStretches(input, known.followed, mostMm))
    yield drawStretch(input, known, stretch);
}

/** What every stretch of one bolt asks for: found once, since a contract has tens of thousands of pieces. */
interface Known {
  followed: readonly FollowedCut[];
  pieces: ReadonlyMap<string, Piece>;
  lie: Lie;
}

function knownOf(input: BoltDrawingInput): Known {
  return {
    followed: followCuts(boltOf(input), input.bolt),
    pieces: new Map(input.cutting.problem.pieces.map((piece) => [piece.id, piece])),
    lie: lieOf(input),
  };
}

function drawStretch(input: BoltDrawingInput, known: Known, { fromMm, toMm }: BoltStretch): Drawing {
  const { units, cutting, bolt: plan } = input;
  const { lie } = known;
  const bolt = boltOf(input);
  const within = (yMm: number, lengthMm: number) => yMm + lengthMm > fromMm + 0.05 && yMm < toMm - 0.05;
  const placements = plan.placements.filter(({ yMm, lengthMm }) => within(yMm, lengthMm));
  const leaves = plan.leaves.filter(({ yMm, lengthMm }) => within(yMm, lengthMm));
  const lines = known.followed.filter(({ cut, sheet }) =>
    cut.direction === "across"
      ? cut.atMm > fromMm + 0.05 && cut.atMm < toMm + 0.05
      : within(sheet.yMm, sheet.lengthMm),
  );
  const ground = areaOf({ xMm: 0, yMm: fromMm, widthMm: bolt.widthMm, lengthMm: toMm - fromMm }, lie);
  const isPart = fromMm > 0 || toMm < plan.usedMm - 0.05;
  const title = `${cutting.clothName}: ${cutting.boltNames[plan.boltId] ?? plan.boltId}`;
  return {
    id: `bolt-${plan.boltId}${isPart ? `-${Math.round(fromMm)}` : ""}`,
    title,
    caption: `Right side up, cut from the ${lie.leftHanded ? "right, the right" : "left, the left"} selvedge below${isPart ? `; ${lengthText(fromMm, units)} to ${lengthText(toMm, units)} of the bolt` : ""}. Numbers are cuts in their order; arrows point to the top of each piece.`,
    primitives: [
      rect("clothOnBolt", ground),
      ...leaves.filter(isWaste).map((leaf) => rect("waste", areaOf(leaf, lie), { part: "waste" })),
      ...(plan.leaves.length === 0 ? [rect("waste", ground)] : []),
      ...placements.map((placement) =>
        rect("faceCloth", areaOf(placement, lie), { part: placement.pieceId }),
      ),
      ...repeatLines(cutting, bolt, { fromMm, toMm }, lie),
      ...flawsOf(bolt, ground, lie),
      selvedge(ground, 0),
      selvedge(ground, bolt.widthMm),
      ...placements.flatMap((placement) => drawPiece(input, known, placement, toMm - fromMm)),
      ...leaves.flatMap((leaf) => drawKept(leaf, units, lie)),
      ...lines.flatMap((one) => drawCut(one, lie)),
      ...measures(ground, lines, { fromMm, toMm }, lie, units),
    ],
    facts: factsOf(units, known, placements),
  };
}

/** Stretches from one cut from selvedge to selvedge to another. */
function boltStretches(
  { bolt }: BoltDrawingInput,
  followed: readonly FollowedCut[],
  mostMm: number,
): BoltStretch[] {
  const ends = followed
    .filter(({ wholeWidth }) => wholeWidth)
    .map(({ cut }) => cut.atMm)
    .sort((a, b) => a - b);
  const stretches: BoltStretch[] = [];
  let fromMm = 0;
  let reachMm = 0;
  for (const endMm of [...ends, bolt.usedMm]) {
    if (endMm - fromMm > mostMm && reachMm > fromMm) {
      stretches.push({ fromMm, toMm: reachMm });
      fromMm = reachMm;
    }
    reachMm = Math.max(reachMm, Math.min(endMm, bolt.usedMm));
  }
  if (reachMm > fromMm) stretches.push({ fromMm, toMm: reachMm });
  return stretches;
}

function boltOf({ cutting, bolt: { boltId } }: Omit<BoltDrawingInput, "units">): Bolt {
  const found = cutting.problem.bolts.find(({ id }) => id === boltId);
  if (found === undefined) throw new Error(`invalid bolt: ${boltId}`);
  return found;
}

/** How a bolt lies before its cutter. */
interface Lie {
  leftHanded: boolean;
  widthMm: number;
}

function lieOf(input: Omit<BoltDrawingInput, "units">): Lie {
  return {
    leftHanded: input.cutting.problem.table?.leftHanded === true,
    widthMm: boltOf(input).widthMm,
  };
}

/**
 * A bolt runs to the right on paper with the tops at the left: right side up, its left selvedge is then the lower one.
 * So x of the bolt, which counts from there, runs upwards. Before a left-handed cutter it lies turned half round.
 */
function pointOf(xMm: number, yMm: number, { leftHanded, widthMm }: Lie): Point {
  return leftHanded ? [-yMm, xMm] : [yMm, widthMm - xMm];
}

function areaOf({ xMm, yMm, widthMm, lengthMm }: BoltRect, lie: Lie): DrawnRect {
  const [x1, y1] = pointOf(xMm, yMm, lie);
  const [x2, y2] = pointOf(xMm + widthMm, yMm + lengthMm, lie);
  return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: lengthMm, height: widthMm };
}

/**
 * Where a part of a bolt is drawn.
 *
 * @throws where the plan names a bolt that is not in the problem: a bug
 */
export function areaOnBolt(input: Omit<BoltDrawingInput, "units">, area: BoltRect): DrawnRect {
  return areaOf(area, lieOf(input));
}

function isWaste({ holds }: Leaf): boolean {
  return holds.kind === "waste";
}

function selvedge({ x, width }: DrawnRect, y: number): Primitive {
  return line("selvedge", [
    [x, y],
    [x + width, y],
  ]);
}

/** Rows of the repeat across the bolt; with columns each its own, every second half a row on in a half drop. */
function repeatLines(
  { problem }: ClothCutting,
  bolt: Bolt,
  { fromMm, toMm }: BoltStretch,
  lie: Lie,
): Primitive[] {
  const { repeat } = problem;
  if (repeat === undefined || (toMm - fromMm) / repeat.alongMm > MOST_REPEATS) return [];
  const { alongMm, acrossMm, match } = repeat;
  const columns = acrossMm === undefined ? [] : [...steps(bolt.columnMm ?? 0, acrossMm, 0, bolt.widthMm)];
  const isDropped = match === "half-drop" && columns.length > 0;
  const lines = columns.map((xMm) =>
    line("repeatLine", [pointOf(xMm, fromMm, lie), pointOf(xMm, toMm, lie)]),
  );
  const bands = isDropped ? bandsOf(columns, bolt.widthMm) : [[0, bolt.widthMm] as const];
  for (const [from, to] of bands) {
    const column = isDropped ? Math.round((from - (bolt.columnMm ?? 0)) / (acrossMm ?? 1)) : 0;
    const shift = column % 2 === 0 ? 0 : alongMm / 2;
    for (const yMm of steps((bolt.rowMm ?? 0) + shift, alongMm, fromMm, toMm)) {
      lines.push(line("repeatLine", [pointOf(to, yMm, lie), pointOf(from, yMm, lie)]));
    }
  }
  return lines;
}

function* steps(originMm: number, stepMm: number, fromMm: number, toMm: number): Generator<number> {
  const first = originMm + Math.ceil((fromMm - originMm) / stepMm - 1e-9) * stepMm;
  for (let at = first; at < toMm - 1e-6; at += stepMm) yield at;
}

/** From column to column, and what lies before the first. */
function bandsOf(columns: readonly number[], widthMm: number): (readonly [number, number])[] {
  const step = (columns[1] ?? widthMm) - (columns[0] ?? 0);
  const first = columns[0] ?? 0;
  const edges = first > 0.05 ? [first - step, ...columns] : columns;
  return edges.map((from) => [Math.max(0, from), Math.min(widthMm, from + step)] as const);
}

function flawsOf(bolt: Bolt, ground: DrawnRect, lie: Lie): Primitive[] {
  return bolt.flaws
    .map((flaw) => areaOf(flaw, lie))
    .filter(({ x, width }) => x + width > ground.x && x < ground.x + ground.width)
    .flatMap((area) => {
      const corner = (dx: number, dy: number): Point => [area.x + dx * area.width, area.y + dy * area.height];
      return [
        rect("flaw", area),
        line("flaw", [corner(0, 0), corner(1, 1)]),
        line("flaw", [corner(0, 1), corner(1, 0)]),
        note(corner(0.5, 0.5), "flaw", { yields: true, role: "flaw" }),
      ];
    });
}

function drawPiece(
  { units, cutting, bolt: plan }: BoltDrawingInput,
  { pieces, lie }: Known,
  placement: Placement,
  drawnMm: number,
): Primitive[] {
  const area = areaOf(placement, lie);
  const piece = pieces.get(placement.pieceId);
  const outline = plan.cuts.length === 0 ? [rect("numberedCut", area, { part: placement.pieceId })] : [];
  const words = `${piece?.shade ?? ""}: ${piece?.part ?? placement.pieceId}`;
  const ref = { part: placement.pieceId, ground: "faceCloth" as const };
  const middle: Point = [area.x + area.width / 2, area.y + area.height / 2];
  const slimMm = Math.max(SLIM_SHARE * widestBolt(cutting), SLIM_SHARE_OF_LENGTH * drawnMm);
  if (Math.min(area.height, area.width / 2) < slimMm) {
    const lies = area.width > area.height;
    const roomMm = [area.width * (lies ? 0.7 : 1), area.height * (lies ? 1 : 0.8)] as const;
    return [...outline, note(middle, words, { baseline: "middle", roomMm, ...ref })];
  }
  const roomMm = [area.width * 0.86, area.height * 0.4] as const;
  const size = `${lengthText(placement.widthMm, units)} × ${lengthText(placement.lengthMm, units)}`;
  return [
    ...outline,
    ...(Math.min(area.height, area.width / 2) < ARROW_FROM * slimMm ? [] : [topArrow(area, placement, lie)]),
    name(middle, words, { baseline: "bottom", overSize: true, roomMm, ...ref }),
    note(middle, size, { baseline: "top", shiftPaperMm: [0, 0.7], roomMm, yields: true, ...ref }),
  ];
}

/** A piece across the bolt narrower than this share of it, or along it than twice that, has one line of words and no arrow. */
const SLIM_SHARE = 0.09;
/** Slim pieces have no arrow up to so many times that: numbers of cuts stand at its place. */
const ARROW_FROM = 1.7;
/** One narrower than this share of the length that is drawn has no more room either. */
const SLIM_SHARE_OF_LENGTH = 0.05;

function widestBolt({ problem }: ClothCutting): number {
  return problem.bolts.reduce((most, { widthMm }) => Math.max(most, widthMm), 0);
}

const ARROW: readonly Point[] = [
  [0.6, 0],
  [0, 0.4],
  [0, 0.14],
  [-0.6, 0.14],
  [-0.6, -0.14],
  [0, -0.14],
  [0, -0.4],
];

/** A small arrow in a corner of the piece that points to where its top lies: to the bolt's first end unless turned. */
function topArrow({ x, y, width, height }: DrawnRect, { turn }: Placement, { leftHanded }: Lie): Primitive {
  const size = Math.min(width, height) * 0.16;
  const [right, down] = { 0: [-1, 0], 90: [0, -1], 180: [1, 0], 270: [0, 1] }[turn] as [number, number];
  const [dx, dy] = leftHanded ? [-right, -down] : [right, down];
  return line(
    "label",
    ARROW.map(
      ([along, across]): Point => [
        x + 1.3 * size + size * (along * dx - across * dy),
        y + 1.3 * size + size * (along * dy + across * dx),
      ],
    ),
    { closed: true },
  );
}

function drawKept(leaf: Leaf, units: UnitChoice, lie: Lie): Primitive[] {
  if (leaf.holds.kind !== "remnant") return [];
  const area = areaOf(leaf, lie);
  const middle: Point = [area.x + area.width / 2, area.y + area.height / 2];
  const roomMm = [area.width * 0.9, area.height * 0.45] as const;
  const part = `kept-${Math.round(leaf.xMm)}-${Math.round(leaf.yMm)}`;
  const ref = { part, ground: "clothOnBolt" as const };
  const size = `${lengthText(leaf.widthMm, units)} × ${lengthText(leaf.lengthMm, units)}`;
  return [
    rect("covering", area, { part }),
    name(middle, `Keep: ${leaf.holds.name}`, { baseline: "bottom", overSize: true, roomMm, ...ref }),
    note(middle, size, { baseline: "top", shiftPaperMm: [0, 0.7], roomMm, yields: true, ...ref }),
  ];
}

/** The line of a cut, and its number at the edge where the scissors begin. */
function drawCut({ cut, sheet, wholeWidth }: FollowedCut, lie: Lie): Primitive[] {
  const { x, y, width, height } = areaOf(sheet, lie);
  const across = cut.direction === "across";
  const [atX, atY] = across ? pointOf(0, cut.atMm, lie) : pointOf(cut.atMm, 0, lie);
  const ends: [Point, Point] = across
    ? [
        [atX, y],
        [atX, y + height],
      ]
    : [
        [x, atY],
        [x + width, atY],
      ];
  const [start, end] = lie.leftHanded && !across ? [ends[1], ends[0]] : ends;
  const middle: Point = [start[0], (start[1] + end[1]) / 2];
  const inwards = lie.leftHanded ? -1 : 1;
  // Numbers of cuts along the bolt stand at the end nearer to the cutter, as far as there is room.
  const place: Partial<Marker> = across
    ? { at: wholeWidth ? end : middle, shiftPaperMm: [0, wholeWidth ? -CUT_TAG_MM * 0.6 : 0] }
    : { at: start, shiftPaperMm: [inwards * CUT_TAG_MM * 0.6, 0] };
  return [
    line("numberedCut", [start, end], { part: `cut-${cut.number}` }),
    {
      kind: "marker",
      role: "label",
      shape: "tag",
      at: end,
      text: String(cut.number),
      paperMm: CUT_TAG_MM,
      along: [start, end],
      part: `cut-${cut.number}`,
      ...place,
    },
  ];
}

/** The bolt’s width, and how far each cut from selvedge to selvedge lies from the end of what is drawn. */
function measures(
  ground: DrawnRect,
  lines: readonly FollowedCut[],
  { fromMm, toMm }: BoltStretch,
  lie: Lie,
  units: UnitChoice,
): Primitive[] {
  const bottom = ground.y + ground.height;
  const [startX] = pointOf(0, fromMm, lie);
  const span = (endMm: number): { from: Point; to: Point } => {
    const [x] = pointOf(0, endMm, lie);
    return { from: [Math.min(startX, x), bottom], to: [Math.max(startX, x), bottom] };
  };
  const ends = lines.filter(({ wholeWidth }) => wholeWidth).map(({ cut }) => cut.atMm);
  const shown = [...new Set([...ends, toMm])].filter((end) => end > fromMm + 0.05).sort((a, b) => a - b);
  return [
    dimensionOf({ from: [ground.x, 0], to: [ground.x, bottom], offset: -6 }, units),
    ...shown.map((end) =>
      dimensionOf(
        { ...span(end), offset: -7, ...(shown.length > 1 ? { running: "bolt", yields: true } : {}) },
        units,
      ),
    ),
  ];
}

function factsOf(units: UnitChoice, { pieces }: Known, placements: readonly Placement[]): Fact[] {
  return placements.map(({ pieceId, widthMm, lengthMm, xMm, yMm, turn }) => {
    const piece = pieces.get(pieceId);
    const turned = turn === 0 ? "" : turn === 180 ? ", upside down" : ", turned a quarter";
    return {
      label: `${piece?.shade ?? ""}, ${piece?.part ?? pieceId}`,
      text: `${lengthText(widthMm, units)} across × ${lengthText(lengthMm, units)} along, ${lengthText(yMm, units)} from the end and ${lengthText(xMm, units)} from the left selvedge${turned}`,
    };
  });
}
