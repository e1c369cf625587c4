import * as z from "zod";
import { PLACES, PURPOSES } from "../../job/index.ts";
import { PHYSICAL_TESTS } from "../../shade-plan/index.ts";
import { SOURCES, type SourceId } from "../../sources/index.ts";
import {
  COMPARISONS,
  CONFIDENCES,
  QUANTITIES,
  RULE_KINDS,
  RULE_STATES,
  RULE_STATUSES,
  RULE_UNITS,
} from "./rule.ts";

const mm = z.number().min(0).max(20_000);

const conditionSchema = z.discriminatedUnion("if", [
  z.strictObject({ if: z.literal("installation-height-known") }),
  z.strictObject({ if: z.literal("installation-height-unknown") }),
  z.strictObject({ if: z.literal("blind-height-at-most"), mm }),
  z.strictObject({ if: z.literal("blind-height-over"), mm }),
  z.strictObject({ if: z.literal("device-with-breakaway") }),
]);

const limitSchema = z.union([
  z.number().min(0).max(20_000),
  z.strictObject({ blindHeightShare: z.number().positive().max(1), plusMm: z.number().min(-5000).max(5000) }),
]);

export const checkSchema = z
  .strictObject({
    quantity: z.enum(QUANTITIES),
    comparison: z.enum(COMPARISONS),
    limit: limitSchema.optional(),
    unit: z.enum(RULE_UNITS),
    pullN: z.number().positive().max(200).optional(),
    states: z.enum(RULE_STATES),
    belowFloorMm: mm.optional(),
    when: z.array(conditionSchema).min(1).optional(),
    orElse: z.literal("rear-release").optional(),
    test: z.enum(PHYSICAL_TESTS).optional(),
  })
  .refine((check) => check.limit !== undefined || check.test !== undefined, {
    error: "a check without a limit names the test that stands in",
  })
  .refine((check) => check.unit !== "yes-no" || check.limit === 0 || check.limit === 1, {
    error: "yes-no limits are 0 or 1",
  })
  .refine((check) => (check.unit === "yes-no") === (check.comparison === "equals"), {
    error: "yes-no and equals belong together",
  });

/** A row of a place's file: what the type cannot say is checked here, by a test. */
export const ruleSchema = z
  .strictObject({
    id: z.string().regex(/^[A-Z]+(?:-[A-Z0-9]+)+$/),
    words: z.string().min(20).max(400),
    cite: z.strictObject({
      source: z.enum(Object.keys(SOURCES) as [SourceId, ...SourceId[]]),
      at: z.string().min(1).optional(),
    }),
    asOf: z.string().regex(/^(?:\d{4}(?:-\d{2}){0,2}|undated)$/),
    confidence: z.enum(CONFIDENCES),
    kind: z.enum(RULE_KINDS),
    status: z.enum(RULE_STATUSES),
    goods: z.enum(["any", "custom", "stock"]),
    binds: z.array(z.enum(PURPOSES)),
    madeFrom: z
      .string()
      .regex(/^\d{4}-\d{2}-\d{2}$/)
      .optional(),
    check: checkSchema.optional(),
    note: z.string().min(1).optional(),
  })
  .refine((rule) => rule.check !== undefined || rule.note !== undefined, {
    error: "a row that is only listed says why",
  })
  .refine((rule) => !/vacated|superseded/.test(rule.status) || rule.binds.length === 0, {
    error: "what is no longer in force binds nobody",
  });

export const placeRulesSchema = z.strictObject({
  place: z.enum(PLACES),
  whom: z.string().min(20),
  outside: z.string().min(20),
  unsettled: z.partialRecord(z.enum(PURPOSES), z.string().min(20)).optional(),
  cautionFor: z.array(z.enum(PURPOSES)),
  rules: z.array(ruleSchema).min(1),
});
