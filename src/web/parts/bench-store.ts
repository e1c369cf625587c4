import { create } from "zustand";
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

/** Counts changes, so that what was read before one never takes its place. */
let changes = 0;

async function load(): Promise<void> {
  const before = changes;
  try {
    await writing;
    const parts = await readBench();
    if (changes !== before) return await load();
    useBench.setState({ parts, trouble: false });
  } catch {
    useBench.setState((bench) => ({ parts: bench.parts ?? {}, trouble: true }));
  }
}

/** Makes a change once it is known what lies on the bench. */
function change(make: (parts: OwnParts) => OwnParts, write: () => Promise<void>): void {
  const { parts } = useBench.getState();
  if (parts === undefined) {
    void load().then(() => change(make, write));
    return;
  }
  changes += 1;
  useBench.setState({ parts: make(parts) });
  keep(write);
}

/** The list with a part in the place of the one of its id, or at the end. */
function withPart(list: readonly PartEntry[], part: PartEntry): PartEntry[] {
  const at = list.findIndex(({ id }) => id === part.id);
  return at < 0 ? [...list, part] : list.with(at, part);
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
  change(
    (parts) => ({ ...parts, [kind]: withPart(benchList(parts, kind), part) }),
    () => writeParts([{ kind, part }]),
  );
}

/** Lays a part of this kind on the bench: it has a name, and nothing else is known. */
export function layOut(kind: PartKind, id: string, name: string): void {
  put(kind, PART_SCHEMAS[kind].parse({ id, name }));
}

export function takeAway(kind: PartKind, id: string): void {
  change(
    (parts) => ({ ...parts, [kind]: benchList(parts, kind).filter((part) => part.id !== id) }),
    () => deletePart(kind, id),
  );
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
  change(
    (parts) => {
      const next: Record<string, PartEntry[]> = {};
      for (const [kind, list] of Object.entries(parts)) next[kind] = [...(list ?? [])];
      for (const { kind, part } of all) next[kind] = withPart(next[kind] ?? [], part);
      return next as OwnParts;
    },
    () => writeParts(all),
  );
  return all.length;
}
