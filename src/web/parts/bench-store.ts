import { create } from "zustand";
// The validator must know that this page makes no code from text before it reads its first part.
import "../state/job-door.ts";
import {
  type BenchTest,
  canBeMeasured,
  type KnownBy,
  type OwnParts,
  PART_SCHEMAS,
  type PartEntry,
  type PartKind,
  type PartsFile,
} from "../../job/index.ts";
import { deletePart, readBench, writeParts } from "../persistence/bench-shelf.ts";
import { hearTabs, tellTabs } from "../persistence/tab-talk.ts";

interface Bench {
  /** Undefined until the bench has been read. */
  parts?: OwnParts;
  /** The browser keeps nothing. */
  trouble: boolean;
}

/** The parts in the maker's hand, on this device, for all jobs. */
export const useBench = create<Bench>()(() => ({ trouble: false }));

/** Parts of one kind on the bench. */
export function benchList(parts: OwnParts | undefined, kind: PartKind): readonly PartEntry[] {
  return parts?.[kind] ?? [];
}

/** Reads the bench, and again whenever another tab changes it, until the returned function is called. */
export function followBench(): () => void {
  void load();
  return hearTabs((message) => {
    if (message.kind === "bench") void load();
  });
}

async function load(): Promise<void> {
  try {
    useBench.setState({ parts: await readBench(), trouble: false });
  } catch {
    useBench.setState((bench) => ({ parts: bench.parts ?? {}, trouble: true }));
  }
}

/** Writes follow each other, so that the last word typed is the last one kept. */
let writing: Promise<unknown> = Promise.resolve();

function keep(write: () => Promise<void>): void {
  writing = writing
    .then(write)
    .then(() => tellTabs({ kind: "bench" }))
    .catch(() => useBench.setState({ trouble: true }));
}

function put(kind: PartKind, part: PartEntry): void {
  const list = benchList(useBench.getState().parts, kind);
  const at = list.findIndex(({ id }) => id === part.id);
  const next = at < 0 ? [...list, part] : list.with(at, part);
  useBench.setState(({ parts }) => ({ parts: { ...parts, [kind]: next } }));
  keep(() => writeParts([{ kind, part }]));
}

/** Lays a part of this kind on the bench: it has a name, and nothing else is known. */
export function layOut(kind: PartKind, id: string, name: string): void {
  put(kind, PART_SCHEMAS[kind].parse({ id, name }));
}

export function takeAway(kind: PartKind, id: string): void {
  const list = benchList(useBench.getState().parts, kind).filter((part) => part.id !== id);
  useBench.setState(({ parts }) => ({ parts: { ...parts, [kind]: list } }));
  keep(() => deletePart(kind, id));
}

type Loose = Record<string, unknown> & { known?: Record<string, KnownBy> };

/** Sets a field. What is typed is the seller's word until the maker says that it was measured. */
export function setField(kind: PartKind, part: PartEntry, field: string, value: unknown): void {
  const { [field]: _, known = {}, ...rest } = part as unknown as Loose;
  const { [field]: how, ...others } = known;
  if (value === undefined) {
    put(kind, { ...rest, known: others } as unknown as PartEntry);
    return;
  }
  const marks = canBeMeasured(field) ? { ...others, [field]: how ?? ("stated" as const) } : known;
  put(kind, { ...part, [field]: value, known: marks } as PartEntry);
}

/** Says how a field is known; one that is not known has no value. */
export function setKnown(kind: PartKind, part: PartEntry, field: string, how: KnownBy): void {
  if (how === "not-known") setField(kind, part, field, undefined);
  else put(kind, { ...part, known: { ...(part as { known?: object }).known, [field]: how } } as PartEntry);
}

/** Keeps the readings of a test with the part, or takes them away. */
export function setTest(
  kind: PartKind,
  part: PartEntry,
  test: BenchTest,
  readings: object | undefined,
): void {
  const { [test]: _, ...others } = (part as { tests?: Record<string, object> }).tests ?? {};
  const tests = readings === undefined ? others : { ...others, [test]: readings };
  put(kind, { ...part, tests } as PartEntry);
}

/** Lays the parts of a file on the bench; those of an id that is there take its place. */
export function layOutAll(file: PartsFile): number {
  const { format: _, version: __, note: ___, ...own } = file;
  const all = Object.entries(own).flatMap(([kind, list]) =>
    (list ?? []).map((part) => ({ kind: kind as PartKind, part: part as PartEntry })),
  );
  for (const { kind, part } of all) put(kind, part);
  return all.length;
}
