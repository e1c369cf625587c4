import type { Job } from "../../job/index.ts";
import { isWithin, ORDER, pathKey, sameJson } from "../../workroom/merge/index.ts";
import type { FieldChange, Json, NumberedOperation, OperationsPage } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { fieldWords, valueWords } from "./field-words.ts";

/** One field that someone changed, in words. */
export interface ChangeWords {
  field: string;
  before: string;
  after: string;
}

/**
 * What the operations between two versions changed.
 * @throws where the server does not answer
 */
export async function changesOf(
  jobId: string,
  { fromVersion, toVersion }: { fromVersion: number; toVersion: number },
): Promise<FieldChange[]> {
  const operations: NumberedOperation[] = [];
  for (let after = fromVersion - 1, more = true; more && after < toVersion; ) {
    const page = await askServer<OperationsPage>("operations", {
      params: { job: jobId },
      query: { after: String(after) },
    });
    operations.push(...page.operations.filter(({ version }) => version <= toVersion));
    after = page.operations.at(-1)?.version ?? toVersion;
    more = page.more;
  }
  return inAll(operations.flatMap(({ changes }) => changes));
}

/** Changes one after the other as one of each field: as it was first, and as it is last. What came and went is left out. */
export function inAll(changes: readonly FieldChange[]): FieldChange[] {
  const all = new Map<string, FieldChange>();
  for (const change of changes) {
    const key = pathKey(change.path);
    const first = all.get(key);
    const isOfNew = [...all.values()].some(
      ({ path, from }) =>
        from === undefined && path.length < change.path.length && isWithin(change.path, path),
    );
    // A field of what came into being here is told with it.
    if (isOfNew) continue;
    const { from: _, ...rest } = change;
    const from = first === undefined ? change.from : first.from;
    all.set(key, from === undefined ? rest : { ...rest, from });
  }
  return [...all.values()].filter(({ from, to }) => !isSame(from, to));
}

function isSame(from: Json | undefined, to: Json | undefined): boolean {
  return from === undefined || to === undefined ? from === to : sameJson(from, to);
}

/** Fields that change with others and say nothing by themselves. */
const SILENT = new Set(["format", "version"]);

/** Changes as they are read: the names of what they belong to, what stood there, what stands there now. */
export function changeWords(job: Job, changes: readonly FieldChange[]): ChangeWords[] {
  return changes.flatMap(({ path, from, to }): ChangeWords[] => {
    const last = path.at(-1);
    if (typeof last === "string" && SILENT.has(last)) return [];
    const field = fieldWords(job, path, to ?? from);
    if (last === ORDER) return [{ field, before: "", after: "changed" }];
    const isThing = typeof last === "object";
    if (isThing && from === undefined) return [{ field, before: "", after: "added" }];
    if (isThing && to === undefined) return [{ field, before: "", after: "taken away" }];
    return [
      {
        field,
        before: from === undefined ? "nothing" : valueWords(job, path, from),
        after: valueWords(job, path, to),
      },
    ];
  });
}
