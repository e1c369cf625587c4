import type { Bolt, BoltPlan, ClothCutPlan, ClothProblem, Cut, Piece, Placement, Rect } from "./problem.ts";

/** Lengths nearer than this are the same, mm: a cut is never made so finely. */
const SAME_MM = 0.01;
/** A piece may lie so far from its place in the repeat: half a step of the grid of 0.1 mm. */
const SAME_POSITION_MM = 0.051;

/**
 * What is wrong with a plan, in sentences; nothing when it can be cut. Written without the solver: from the problem and
 * the plan alone.
 */
export function verifyCloth(problem: ClothProblem, plan: ClothCutPlan): string[] {
  const faults = new Faults();
  checkDemand(problem, plan, faults);
  const pieces = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  for (const bolt of plan.bolts) checkBolt(problem, pieces, bolt, faults);
  checkLots(problem, plan, faults);
  checkJoins(problem, pieces, plan, faults);
  checkHeld(problem, plan, faults);
  checkSums(problem, plan, faults);
  return faults.list;
}

class Faults {
  readonly list: string[] = [];

  unless(right: boolean, sentence: string): boolean {
    if (!right) this.list.push(sentence);
    return right;
  }
}

function checkDemand({ pieces, bolts }: ClothProblem, plan: ClothCutPlan, faults: Faults): void {
  const wanted = new Map(pieces.map((piece) => [piece.id, 0]));
  for (const { placements } of plan.bolts) {
    for (const { pieceId } of placements) {
      if (!faults.unless(wanted.has(pieceId), `${pieceId} is cut but not asked for`)) continue;
      wanted.set(pieceId, (wanted.get(pieceId) ?? 0) + 1);
    }
  }
  for (const [id, count] of wanted) faults.unless(count === 1, `${id} is cut ${count} times`);
  const known = new Set(bolts.map(({ id }) => id));
  const seen = new Set<string>();
  for (const { boltId } of plan.bolts) {
    faults.unless(known.has(boltId), `there is no bolt ${boltId}`);
    faults.unless(!seen.has(boltId), `bolt ${boltId} is cut twice`);
    seen.add(boltId);
  }
}

const right = (rect: Rect) => rect.xMm + rect.widthMm;
const bottom = (rect: Rect) => rect.yMm + rect.lengthMm;

type Pieces = ReadonlyMap<string, Piece>;

function checkBolt(problem: ClothProblem, pieces: Pieces, cut: BoltPlan, faults: Faults): void {
  const bolt = problem.bolts.find(({ id }) => id === cut.boltId);
  if (!bolt) return;
  for (const placement of cut.placements) {
    const piece = pieces.get(placement.pieceId);
    if (!piece) continue;
    checkPlace(bolt, placement, cut.usedMm, faults);
    checkWay(problem, piece, placement, faults);
    checkRepeat(problem, bolt, piece, placement, faults);
  }
  checkApart(problem.gapMm, cut, faults);
  checkCuts(problem, bolt, cut, faults);
}

function checkPlace(bolt: Bolt, placement: Placement, usedMm: number, faults: Faults): void {
  const { pieceId } = placement;
  faults.unless(
    placement.xMm >= -SAME_MM &&
      placement.yMm >= -SAME_MM &&
      right(placement) <= bolt.widthMm + SAME_MM &&
      bottom(placement) <= (bolt.lengthMm ?? Number.POSITIVE_INFINITY) + SAME_MM,
    `${pieceId} lies outside bolt ${bolt.id}`,
  );
  faults.unless(
    bottom(placement) <= usedMm + SAME_MM,
    `${pieceId} lies beyond the length used of ${bolt.id}`,
  );
  for (const flaw of bolt.flaws) {
    faults.unless(!overlap(placement, flaw, 0), `${pieceId} lies on a flaw of bolt ${bolt.id}`);
  }
}

/** Whether two rectangles come nearer than the gap. */
function overlap(a: Rect, b: Rect, gapMm: number): boolean {
  return (
    a.xMm < right(b) + gapMm - SAME_MM &&
    b.xMm < right(a) + gapMm - SAME_MM &&
    a.yMm < bottom(b) + gapMm - SAME_MM &&
    b.yMm < bottom(a) + gapMm - SAME_MM
  );
}

function checkWay({ repeat }: ClothProblem, piece: Piece, placement: Placement, faults: Faults): void {
  const { turn } = placement;
  const quarter = turn === 90 || turn === 270;
  const mayTurn = piece.grain === "free" && piece.nap === "either" && repeat === undefined;
  faults.unless(!quarter || mayTurn, `${piece.id} is turned by a quarter`);
  faults.unless(turn !== 180 || piece.nap === "either", `${piece.id} lies upside down`);
  const [width, length] = quarter ? [piece.lengthMm, piece.widthMm] : [piece.widthMm, piece.lengthMm];
  // Sizes may be raised to the grid, never lowered.
  const fits = (is: number, should: number) => is >= should - SAME_MM && is <= should + 0.1 + SAME_MM;
  faults.unless(
    fits(placement.widthMm, width) && fits(placement.lengthMm, length),
    `${piece.id} is not cut to its size`,
  );
}

/** Distance to the nearest multiple, mm. */
function offMm(valueMm: number, repeatMm: number): number {
  return Math.abs(valueMm - Math.round(valueMm / repeatMm) * repeatMm);
}

function checkRepeat(
  { repeat }: ClothProblem,
  bolt: Bolt,
  piece: Piece,
  placement: Placement,
  faults: Faults,
): void {
  if (!repeat || !piece.start) return;
  const { alongMm, acrossMm } = piece.start;
  if (acrossMm !== undefined && repeat.acrossMm) {
    const off = offMm(placement.xMm - (bolt.columnMm ?? 0) - acrossMm, repeat.acrossMm);
    faults.unless(
      off <= SAME_POSITION_MM,
      `${piece.id} lies ${off.toFixed(1)} mm beside its column of the repeat`,
    );
  }
  if (alongMm === undefined) return;
  const off = offMm(placement.yMm - shiftMm(repeat, bolt, piece, placement) - alongMm, repeat.alongMm);
  faults.unless(off <= SAME_POSITION_MM, `${piece.id} lies ${off.toFixed(1)} mm from its row of the repeat`);
}

/** Where the rows of the repeat begin for a piece, mm: in a half drop every second column or width by half a row. */
function shiftMm(
  repeat: NonNullable<ClothProblem["repeat"]>,
  bolt: Bolt,
  piece: Piece,
  placement: Placement,
): number {
  let shift = bolt.rowMm ?? 0;
  if (repeat.match !== "half-drop") return shift;
  if (repeat.acrossMm && piece.start?.acrossMm !== undefined) {
    const columns = Math.round(
      (placement.xMm - (bolt.columnMm ?? 0) - piece.start.acrossMm) / repeat.acrossMm,
    );
    shift += (columns * repeat.alongMm) / 2;
  }
  if (piece.join) shift += (piece.join.index * repeat.alongMm) / 2;
  return shift;
}

function checkApart(gapMm: number, { boltId, placements }: BoltPlan, faults: Faults): void {
  const sorted = placements.toSorted((a, b) => a.yMm - b.yMm);
  sorted.forEach((a, at) => {
    for (let k = at + 1; k < sorted.length; k++) {
      const b = sorted[k] as Placement;
      if (b.yMm >= bottom(a) + gapMm) break;
      faults.unless(!overlap(a, b, gapMm), `${a.pieceId} and ${b.pieceId} lie too close on bolt ${boltId}`);
    }
  });
}

interface OpenSheet extends Rect {
  placements: Run;
}

/** Some placements, by where they begin along the bolt: a part of a list, since a copy for every cut would take hours. */
interface Run {
  all: readonly Placement[];
  from: number;
  to: number;
}

const runOf = (all: readonly Placement[]): Run => ({ all, from: 0, to: all.length });

const placementsOf = ({ all, from, to }: Run): readonly Placement[] => all.slice(from, to);

/** The first that does not begin before the cut. */
function firstBeyond({ all, from, to }: Run, atMm: number): number {
  let at = from;
  while (at < to && (all[at] as Placement).yMm < atMm - SAME_MM) at++;
  return at;
}

/** Follows the cuts one by one with the sheets that they leave. */
function checkCuts(problem: ClothProblem, bolt: Bolt, plan: BoltPlan, faults: Faults): void {
  const straight = problem.cutting.kind === "straight";
  if (plan.cuts.length === 0) {
    const isWhole = plan.placements.every((only) => coversBolt(bolt, only));
    faults.unless(!straight || isWhole, `bolt ${bolt.id} has no cuts`);
    return;
  }
  const lengthMm = bolt.lengthMm ?? Number.POSITIVE_INFINITY;
  const placements = plan.placements.toSorted((a, b) => a.yMm - b.yMm);
  const sheets = new Map<number, OpenSheet>([
    [0, { xMm: 0, yMm: 0, widthMm: bolt.widthMm, lengthMm, placements: runOf(placements) }],
  ]);
  const mostMm = longestCutMm(problem, placements);
  let before: OpenSheet | undefined;
  plan.cuts.forEach((cut, at) => {
    faults.unless(cut.number === at + 1, `cut ${cut.number} of bolt ${bolt.id} is out of order`);
    const alongMm = cut.direction === "along" ? (sheets.get(cut.sheet)?.lengthMm ?? 0) : 0;
    faults.unless(
      alongMm <= mostMm + SAME_MM,
      `cut ${cut.number} of bolt ${bolt.id} is longer than the table`,
    );
    if (cut.withCut !== undefined) checkDoubled(problem, sheets, plan.cuts[at - 1], cut, before, faults);
    before = sheets.get(cut.sheet);
    makeCut(bolt, sheets, cut, faults);
  });
  checkStages(problem, bolt, plan.cuts, faults);
  checkLeaves(bolt, plan, sheets, faults);
}

/** Sheets cut at one go are of plain cloth and of one size, and cut at one place. */
function checkDoubled(
  { repeat }: ClothProblem,
  sheets: ReadonlyMap<number, OpenSheet>,
  first: Cut | undefined,
  cut: Cut,
  under: OpenSheet | undefined,
  faults: Faults,
): void {
  const over = sheets.get(cut.sheet);
  const same = (a: number, b: number) => Math.abs(a - b) <= SAME_MM;
  const isOne =
    repeat === undefined &&
    over !== undefined &&
    under !== undefined &&
    first !== undefined &&
    first.number === cut.withCut &&
    first.direction === cut.direction &&
    same(over.widthMm, under.widthMm) &&
    same(over.lengthMm, under.lengthMm) &&
    same(over.xMm, under.xMm) &&
    (cut.direction === "along"
      ? same(first.atMm, cut.atMm)
      : same(first.atMm - under.yMm, cut.atMm - over.yMm));
  faults.unless(isOne, `cut ${cut.number} is not one with the cut before`);
}

function coversBolt(bolt: Bolt, { xMm, yMm, widthMm, lengthMm }: Placement): boolean {
  return (
    Math.abs(xMm) <= SAME_MM &&
    Math.abs(yMm) <= SAME_MM &&
    Math.abs(widthMm - bolt.widthMm) <= 0.1 &&
    Math.abs(lengthMm - (bolt.lengthMm ?? Number.POSITIVE_INFINITY)) <= 0.1
  );
}

/** The longest cut along, mm: the table, or the longest piece and the repeat before it where that is longer. */
function longestCutMm({ tableMm, cutting, repeat }: ClothProblem, placements: readonly Placement[]): number {
  if (tableMm === undefined || cutting.kind !== "straight") return Number.POSITIVE_INFINITY;
  const longestMm = placements.reduce((most, { lengthMm }) => Math.max(most, lengthMm), 0);
  return Math.max(tableMm, longestMm + (repeat?.alongMm ?? 0));
}

function makeCut(bolt: Bolt, sheets: Map<number, OpenSheet>, cut: Cut, faults: Faults): void {
  const name = `cut ${cut.number} of bolt ${bolt.id}`;
  const sheet = sheets.get(cut.sheet);
  if (!sheet) {
    faults.unless(false, `${name} goes through a sheet that is not there`);
    return;
  }
  sheets.delete(cut.sheet);
  const across = cut.direction === "across";
  const [from, to] = across ? [sheet.yMm, bottom(sheet)] : [sheet.xMm, right(sheet)];
  faults.unless(cut.atMm > from && cut.atMm < to, `${name} misses its sheet`);
  const start = (p: Placement) => (across ? p.yMm : p.xMm);
  const end = (p: Placement) => (across ? bottom(p) : right(p));
  // Across a long bolt thousands of pieces begin beyond the cut, and need no look.
  const beyond = across ? firstBeyond(sheet.placements, cut.atMm) : sheet.placements.to;
  const near = placementsOf({ ...sheet.placements, to: beyond });
  for (const piece of near) {
    const through = start(piece) < cut.atMm - SAME_MM && end(piece) > cut.atMm + SAME_MM;
    faults.unless(!through, `${name} goes through ${piece.pieceId}`);
  }
  const before = runOf(near.filter((piece) => start(piece) + end(piece) < 2 * cut.atMm));
  const late = near.filter((piece) => start(piece) + end(piece) >= 2 * cut.atMm);
  const rest = { ...sheet.placements, from: beyond };
  const after = late.length === 0 ? rest : runOf(late.concat(placementsOf(rest)));
  const first = across
    ? { ...sheet, lengthMm: cut.atMm - from, placements: before }
    : { ...sheet, widthMm: cut.atMm - from, placements: before };
  const second = across
    ? { ...sheet, yMm: cut.atMm, lengthMm: to - cut.atMm, placements: after }
    : { ...sheet, xMm: cut.atMm, widthMm: to - cut.atMm, placements: after };
  faults.unless(
    !sheets.has(cut.first) && !sheets.has(cut.second),
    `${name} leaves sheets that are there already`,
  );
  sheets.set(cut.first, first);
  sheets.set(cut.second, second);
  const left = across && bolt.lengthMm !== undefined ? bolt.lengthMm - cut.atMm : undefined;
  if (cut.boltLeftMm !== undefined) {
    faults.unless(
      left !== undefined && Math.abs(left - cut.boltLeftMm) <= SAME_MM + 0.1,
      `${name} leaves another length of bolt than it says`,
    );
  }
}

/** The stages that a cut needs are counted afresh: one more wherever the direction changes from a sheet to its part. */
function checkStages({ cutting }: ClothProblem, bolt: Bolt, cuts: readonly Cut[], faults: Faults): void {
  if (cutting.kind !== "straight") return;
  const stages = cutting.stages ?? Number.POSITIVE_INFINITY;
  const came = new Map<number, { direction: Cut["direction"]; stage: number }>([
    [0, { direction: "across", stage: 1 }],
  ]);
  for (const cut of cuts) {
    const from = came.get(cut.sheet);
    if (!from) continue;
    const stage = from.stage + (from.direction === cut.direction ? 0 : 1);
    const name = `cut ${cut.number} of bolt ${bolt.id}`;
    faults.unless(stage <= stages + (cut.trim ? 1 : 0), `${name} is in stage ${stage}`);
    came.set(cut.first, { direction: cut.direction, stage });
    came.set(cut.second, { direction: cut.direction, stage });
  }
}

/** At the end every piece lies alone on a sheet of its own size, and all sheets are accounted for. */
function checkLeaves(bolt: Bolt, plan: BoltPlan, sheets: Map<number, OpenSheet>, faults: Faults): void {
  const leaves = new Map(plan.leaves.map((leaf) => [leaf.sheet, leaf]));
  for (const [id, sheet] of sheets) {
    const held = placementsOf(sheet.placements);
    const [piece, ...more] = held;
    if (more.length > 0) faults.unless(false, `${held.map((p) => p.pieceId).join(", ")} are not cut apart`);
    if (piece && more.length === 0) {
      faults.unless(sameRect(sheet, piece), `${piece.pieceId} is not cut out on all sides`);
    }
    const leaf = leaves.get(id);
    if (!Number.isFinite(sheet.lengthMm)) continue;
    if (!faults.unless(leaf !== undefined, `sheet ${id} of bolt ${bolt.id} is not accounted for`) || !leaf)
      continue;
    faults.unless(sameRect(sheet, leaf), `sheet ${id} of bolt ${bolt.id} has another size than said`);
    const holds = leaf.holds.kind === "piece" ? leaf.holds.pieceId : undefined;
    faults.unless(holds === piece?.pieceId, `sheet ${id} of bolt ${bolt.id} holds something else than said`);
  }
  for (const id of leaves.keys()) faults.unless(sheets.has(id), `there is no sheet ${id} of bolt ${bolt.id}`);
  const kept = new Map(
    plan.leaves.flatMap((leaf) => (leaf.holds.kind === "remnant" ? [[leaf.holds.name, leaf] as const] : [])),
  );
  for (const remnant of plan.remnants) {
    const leaf = kept.get(remnant.name);
    faults.unless(
      leaf !== undefined && sameRect(leaf, remnant),
      `remnant ${remnant.name} is not among the sheets`,
    );
    for (const flaw of bolt.flaws)
      faults.unless(!overlap(remnant, flaw, 0), `remnant ${remnant.name} has a flaw`);
  }
}

function sameRect(a: Rect, b: Rect): boolean {
  // A bolt narrower than the grid by a rounding is the same bolt.
  const same = (p: number, q: number) => Math.abs(p - q) <= 0.1 + SAME_MM;
  return same(a.xMm, b.xMm) && same(a.yMm, b.yMm) && same(right(a), right(b)) && same(bottom(a), bottom(b));
}

function checkLots(
  { pieces, bolts, boundLots = {} }: ClothProblem,
  plan: ClothCutPlan,
  faults: Faults,
): void {
  const given = new Set((plan.otherLots ?? []).map(({ lotGroup }) => lotGroup));
  const lotOf = new Map(bolts.map(({ id, lot }) => [id, lot === undefined ? `bolt ${id}` : `lot ${lot}`]));
  const groupOf = new Map(pieces.map(({ id, lotGroup }) => [id, lotGroup]));
  const lots = new Map<string, Set<string>>();
  for (const { boltId, placements } of plan.bolts) {
    for (const { pieceId } of placements) {
      const group = groupOf.get(pieceId);
      if (group === undefined) continue;
      lots.set(group, (lots.get(group) ?? new Set()).add(lotOf.get(boltId) ?? boltId));
    }
  }
  for (const [group, used] of lots) {
    faults.unless(used.size === 1, `${group} comes from ${used.size} dye lots`);
    const bound = boundLots[group];
    const isOf = bound === undefined || given.has(group) || used.has(`lot ${bound}`);
    faults.unless(isOf, `${group} comes from another dye lot than what is cut of it, ${bound}`);
  }
}

/** What somebody has laid lies there still, where the plan does not say that it could not. */
function checkHeld({ held = [] }: ClothProblem, plan: ClothCutPlan, faults: Faults): void {
  const letGo = new Set((plan.notHeld ?? []).map(({ pieceId }) => pieceId));
  for (const { pieceId, boltId, xMm, yMm, turn } of held) {
    if (letGo.has(pieceId)) continue;
    const bolt = plan.bolts.find((one) => one.boltId === boltId);
    const found = bolt?.placements.find((one) => one.pieceId === pieceId);
    const stays =
      found !== undefined &&
      found.turn === turn &&
      Math.abs(found.xMm - xMm) <= SAME_POSITION_MM &&
      Math.abs(found.yMm - yMm) <= SAME_POSITION_MM;
    faults.unless(stays, `${pieceId} does not lie where it was laid`);
  }
}

/** Panels of one join show the same part of the repeat at their tops, half a repeat on from width to width in a half drop. */
function checkJoins(
  { repeat, bolts }: ClothProblem,
  pieces: Pieces,
  plan: ClothCutPlan,
  faults: Faults,
): void {
  if (!repeat) return;
  const firsts = new Map<string, { piece: Piece; top: number }>();
  for (const { boltId, placements } of plan.bolts) {
    const bolt = bolts.find(({ id }) => id === boltId);
    if (!bolt) continue;
    for (const placement of placements) {
      const piece = pieces.get(placement.pieceId);
      if (!piece?.join || piece.start?.alongMm !== undefined) continue;
      const top = placement.yMm - shiftMm(repeat, bolt, piece, placement);
      const first = firsts.get(piece.join.group);
      if (!first) firsts.set(piece.join.group, { piece, top });
      else {
        const off = offMm(top - first.top, repeat.alongMm);
        faults.unless(
          off <= SAME_POSITION_MM,
          `${piece.id} does not match ${first.piece.id}: ${off.toFixed(1)} mm off`,
        );
      }
    }
  }
}

function checkSums({ bolts }: ClothProblem, plan: ClothCutPlan, faults: Faults): void {
  let cost = 0;
  for (const { boltId, usedMm, placements } of plan.bolts) {
    const end = placements.reduce((most, placement) => Math.max(most, bottom(placement)), 0);
    faults.unless(
      Math.abs(end - usedMm) <= SAME_MM,
      `the pieces on bolt ${boltId} do not end at the length used`,
    );
    cost += usedMm * (bolts.find(({ id }) => id === boltId)?.costPerMm ?? 0);
  }
  const near = 1e-6 * Math.max(1, cost);
  faults.unless(Math.abs(cost - plan.cost) <= near, "the lengths used do not come to the cost of the plan");
  faults.unless(plan.bound.cost <= plan.cost + near, "the plan costs less than its bound");
  const isOptimal = plan.cost - plan.bound.cost <= near;
  faults.unless(plan.status !== "optimal" || isOptimal, "the plan is called optimal and is not");
}
