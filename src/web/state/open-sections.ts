/** Which sections and lists of settings were open in each job, on this device. */
export type OpenSections = Partial<Record<string, boolean>>;

/** What stands open in a job that was never looked at. */
const FIRST: OpenSections = { measure: true };
const KEY = "shadewright-open";
/** Jobs remembered; the one looked at longest ago is forgotten. */
const MOST_JOBS = 40;

type Kept = [jobId: string, open: string[]][];

function isKept(value: unknown): value is Kept {
  return (
    Array.isArray(value) &&
    value.every((one) => Array.isArray(one) && typeof one[0] === "string" && Array.isArray(one[1]))
  );
}

function kept(): Kept {
  try {
    const known: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    return isKept(known) ? known : [];
  } catch {
    return [];
  }
}

export function openSectionsOf(jobId: string): OpenSections {
  const known = kept().find(([id]) => id === jobId);
  return known ? Object.fromEntries(known[1].map((name) => [String(name), true])) : FIRST;
}

export function rememberOpen(jobId: string, open: OpenSections): void {
  const names = Object.keys(open).filter((name) => open[name] === true);
  const others = kept().filter(([id]) => id !== jobId);
  try {
    localStorage.setItem(KEY, JSON.stringify([...others, [jobId, names]].slice(-MOST_JOBS)));
  } catch {
    // A device that keeps nothing opens each job at its first section.
  }
}
