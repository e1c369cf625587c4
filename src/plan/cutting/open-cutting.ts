import * as z from "zod";
import { type ClothCutPlan, verifyCloth } from "../../cutting/index.ts";
import { issuesOf, type JobIssue, notRead, readDocument } from "../../job/index.ts";
import { type ClothCutting, CUTTING_FORMAT, CUTTING_VERSION } from "./cutting-plan.ts";

const mm = z.number().min(-1e7).max(1e7);
const count = z.number().int().min(0).max(1e7);
const text = z.string().max(1000);
const MOST = 100_000;

const rect = { xMm: mm, yMm: mm, widthMm: mm, lengthMm: mm };
const optional = <T extends z.ZodType>(type: T) => z.exactOptional(type);

const bolt = z.object({
  id: text,
  name: optional(text),
  remnant: z.boolean(),
  widthMm: mm.positive(),
  lengthMm: optional(mm.positive()),
  flaws: z.array(z.object(rect)).max(MOST),
  costPerMm: z.number().min(0),
  lot: optional(text),
  rowMm: optional(mm),
  columnMm: optional(mm),
});

const piece = z.object({
  id: text,
  shade: text,
  part: text,
  widthMm: mm.positive(),
  lengthMm: mm.positive(),
  grain: z.enum(["fixed", "free"]),
  nap: z.enum(["one-way", "either"]),
  start: optional(z.object({ alongMm: optional(mm), acrossMm: optional(mm) })),
  join: optional(z.object({ group: text, index: count })),
  hidden: optional(z.boolean()),
  lotGroup: optional(text),
});

const problem = z.object({
  id: text,
  bolts: z.array(bolt).max(MOST),
  pieces: z.array(piece).max(MOST),
  repeat: optional(
    z.object({
      alongMm: mm.positive(),
      acrossMm: optional(mm.positive()),
      match: z.enum(["straight", "half-drop"]),
    }),
  ),
  gapMm: mm.min(0),
  cutting: z.union([
    z.object({ kind: z.literal("straight"), stages: optional(count) }),
    z.object({ kind: z.literal("free") }),
  ]),
  tableMm: optional(mm.positive()),
  table: optional(
    z.object({
      doubled: optional(z.boolean()),
      leftHanded: optional(z.boolean()),
      toleranceMm: optional(mm.min(0)),
    }),
  ),
  keep: z.object({ widthMm: mm, lengthMm: mm }),
  boundLots: optional(z.record(text, text)),
  held: optional(
    z
      .array(z.object({ pieceId: text, boltId: text, xMm: mm, yMm: mm, turn: z.literal([0, 90, 180, 270]) }))
      .max(MOST),
  ),
  seed: z.number(),
});

const cut = z.object({
  number: count,
  direction: z.enum(["across", "along"]),
  stage: count,
  sheet: count,
  first: count,
  second: count,
  atMm: mm,
  trim: z.boolean(),
  withCut: optional(count),
  boltLeftMm: optional(mm),
});

const leaf = z.object({
  ...rect,
  sheet: count,
  holds: z.union([
    z.object({ kind: z.literal("piece"), pieceId: text }),
    z.object({ kind: z.literal("remnant"), name: text }),
    z.object({ kind: z.enum(["rest", "waste"]) }),
  ]),
});

const boltPlan = z.object({
  boltId: text,
  usedMm: mm.min(0),
  placements: z.array(z.object({ ...rect, pieceId: text, turn: z.literal([0, 90, 180, 270]) })).max(MOST),
  cuts: z.array(cut).max(MOST),
  leaves: z.array(leaf).max(MOST),
  remnants: z.array(z.object({ ...rect, name: text, boltId: text })).max(MOST),
});

const answer = z.object({
  status: z.enum(["optimal", "feasible", "stopped"]),
  bolts: z.array(boltPlan).max(2000),
  cost: z.number(),
  bound: z.object({ cost: z.number(), which: z.enum(["area", "wide", "bars", "every-way"]) }),
  gap: z.number(),
  evaluations: z.number(),
  notHeld: optional(z.array(z.object({ pieceId: text, reason: text })).max(MOST)),
  otherLots: optional(z.array(z.object({ lotGroup: text, lot: text })).max(MOST)),
});

const cuttingSchema = z.object({
  format: z.literal(CUTTING_FORMAT),
  version: z.literal(CUTTING_VERSION),
  jobId: text,
  cloths: z
    .array(
      z.object({
        clothId: text,
        clothName: text,
        newBoltId: text,
        boltNames: z.record(text, text),
        problem,
        answer: z.union([answer, z.looseObject({ status: z.enum(["infeasible", "not-found", "withheld"]) })]),
      }),
    )
    .max(500),
});

/** A cutting plan that was read: the cloths of it that have a plan. */
export interface OpenedCutting {
  jobId: string;
  cloths: ClothCutting[];
}

/** Reads the cloths of a cutting plan that was written before. Never throws: whatever is wrong comes back as issues. */
export function openCuttingText(
  textGiven: string,
): { ok: true; cutting: OpenedCutting } | { ok: false; issues: JobIssue[] } {
  const read = readDocument(textGiven, "a cutting plan");
  if (!read.ok) return read;
  const parsed = cuttingSchema.safeParse(read.document);
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, read.document) };
  const cloths = parsed.data.cloths.flatMap(({ answer: given, ...cloth }): ClothCutting[] =>
    given.status === "optimal" || given.status === "feasible" || given.status === "stopped"
      ? [{ ...cloth, answer: given as ClothCutPlan }]
      : [],
  );
  for (const [n, cloth] of cloths.entries()) {
    const [fault] = verifyCloth(cloth.problem, cloth.answer as ClothCutPlan);
    if (fault !== undefined)
      return notRead(`cloths[${n}].answer`, fault, "a plan that can be cut, as it was written");
  }
  return { ok: true, cutting: { jobId: parsed.data.jobId, cloths } };
}
