import * as z from "zod";
import { clothSchema } from "./cloth.ts";
import { hardwareSchema } from "./hardware.ts";
import type { Job } from "./job.ts";
import { PART_KINDS, type PartEntry, type PartKind } from "./parts.ts";
import { MOST_PARTS, noteSchema } from "./primitives.ts";
import {
  givenText,
  issuesOf,
  type JobIssue,
  MOST_ISSUES,
  notRead,
  ownLengths,
  readDocument,
  repeatedIn,
} from "./read-document.ts";
import { partIdOf, type StockPiece } from "./stock.ts";

export const PARTS_FORMAT = "shadewright-parts";
export const PARTS_VERSION = 1;

/** The parts and cloths in a maker's hand, for all jobs: what the planner keeps on its bench, and a file for the command line. */
export const partsFileSchema = z
  .strictObject({
    format: z.literal(PARTS_FORMAT),
    version: z.literal(PARTS_VERSION),
    note: noteSchema.optional(),
    cloths: z.array(clothSchema).max(MOST_PARTS).optional(),
    ...hardwareSchema.shape,
  })
  .meta({
    title: "Shadewright parts",
    description: "Locks, cords, eyes, rings, tubes, drives, cloths and other parts at hand, for every job",
  });
export type PartsFile = z.output<typeof partsFileSchema>;

/** Parts at hand by kind, as on the bench. */
export type OwnParts = { [K in PartKind]?: PartEntry<K>[] };

export type OpenedParts = { ok: true; parts: PartsFile } | { ok: false; issues: JobIssue[] };

/** Reads a parts file from text. Never throws: whatever is wrong comes back as issues. */
export function openPartsText(text: string): OpenedParts {
  const read = readDocument(text, "a parts file");
  if (!read.ok) return read;
  const { document } = read;
  if (typeof document !== "object" || document === null || Array.isArray(document)) {
    return notRead("(file)", givenText(document), `an object with "format": "${PARTS_FORMAT}"`);
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== PARTS_FORMAT) return notRead("format", givenText(format), `"${PARTS_FORMAT}"`);
  if (version !== PARTS_VERSION) return notRead("version", givenText(version), String(PARTS_VERSION));
  const strange = ownLengths(document, []);
  if (strange.length > 0) return { ok: false, issues: strange.slice(0, MOST_ISSUES) };
  const parsed = partsFileSchema.safeParse(document);
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, document) };
  const repeated = PART_KINDS.flatMap((kind) =>
    repeatedIn((parsed.data[kind] ?? []).map(({ id }, i) => ({ id, field: `${kind}[${i}].id` }))),
  );
  return repeated.length > 0
    ? { ok: false, issues: repeated.slice(0, MOST_ISSUES) }
    : { ok: true, parts: parsed.data };
}

/** The parts as a file holds them: kinds without a part are left out. */
export function partsText(own: OwnParts, note?: string): string {
  const kinds = PART_KINDS.flatMap((kind) => {
    const list = own[kind] ?? [];
    return list.length === 0 ? [] : [[kind, list] as const];
  });
  const document = {
    format: PARTS_FORMAT,
    version: PARTS_VERSION,
    ...(note === undefined ? {} : { note }),
    ...Object.fromEntries(kinds),
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** A part that a job has a copy of, which is not as it lies on the bench now. */
export interface ChangedPart {
  kind: PartKind;
  id: string;
  name: string;
  /** Fields in which the two differ, in the order of the copy. */
  fields: string[];
}

/** Parts of the job of which the bench holds another version: the same id, other fields. */
export function changedSince(job: Pick<Job, "cloths" | "hardware">, own: OwnParts): ChangedPart[] {
  return PART_KINDS.flatMap((kind) => {
    const bench = new Map<string, PartEntry>((own[kind] ?? []).map((part) => [part.id, part]));
    return ownPartsOf(job, kind).flatMap((copy): ChangedPart[] => {
      const now = bench.get(copy.id);
      if (now === undefined) return [];
      const fields = fieldsApart(copy, now);
      return fields.length === 0 ? [] : [{ kind, id: copy.id, name: copy.name, fields }];
    });
  });
}

/** A job, or a shop, with a copy of every part that it does not have yet; what it has stays as it was planned with. */
export function withPartsFrom<T extends Pick<Job, "cloths" | "hardware">>(job: T, own: OwnParts): T {
  const added = <K extends PartKind>(kind: K): PartEntry<K>[] => {
    const has = ownPartsOf(job, kind) as PartEntry<K>[];
    const ids = new Set(has.map(({ id }) => id));
    const fresh = ((own[kind] ?? []) as PartEntry<K>[]).filter(({ id }) => !ids.has(id));
    return fresh.length === 0 ? has : [...has, ...fresh].slice(0, MOST_PARTS);
  };
  const hardware = Object.fromEntries(
    PART_KINDS.flatMap((kind) => {
      const list = kind === "cloths" ? [] : added(kind);
      return list.length === 0 ? [] : [[kind, list] as const];
    }),
  );
  return { ...job, cloths: added("cloths"), hardware };
}

/** The maker's own parts of one kind in a job. */
export function ownPartsOf(
  { cloths, hardware }: Pick<Job, "cloths" | "hardware">,
  kind: PartKind,
): readonly PartEntry[] {
  return kind === "cloths" ? cloths : (hardware[kind] ?? []);
}

/** The cloth or part that a piece is of, among those that are held. */
export function partsOfPiece(held: Pick<Job, "cloths" | "hardware">, piece: StockPiece): OwnParts {
  const id = partIdOf(piece);
  return Object.fromEntries(
    PART_KINDS.map((kind) => [kind, ownPartsOf(held, kind).filter((part) => part.id === id)]),
  );
}

function fieldsApart(a: object, b: object): string[] {
  const [one, other] = [a, b] as [Record<string, unknown>, Record<string, unknown>];
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].filter(
    (key) => sorted(one[key]) !== sorted(other[key]),
  );
}

/** A value as text in which the order of its fields does not show. */
function sorted(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === "object" && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
