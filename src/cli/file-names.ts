import { slugOf } from "../words/index.ts";

/** Names that Windows keeps for devices, whatever ending they carry. */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A file name for each id. Ids are letters, digits, - and _ (the schema sees to it), so that nothing in a
 * job can name a path; ids that differ in case alone are kept apart for file systems that do not.
 */
export function fileNames(ids: readonly string[]): Map<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const id of ids) {
    if (!/^[\w-]+$/.test(id)) throw new Error(`invalid id: ${JSON.stringify(id)}`);
    const base = RESERVED.test(id) ? `${id}_` : id;
    let name = base;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${base}-${n}`;
    taken.add(name.toLowerCase());
    names.set(id, name);
  }
  return names;
}

/** The beginning of a job's id from its name: `Harbour house, 2nd floor` → `harbour-house-2nd-floor`. */
export function idFromName(name: string): string {
  const slug = slugOf(name).slice(0, 40).replace(/-$/, "");
  return slug === "" ? "job" : slug;
}
