import type { Label } from "../../workroom/protocol/index.ts";
import { askServer, TurnedDown } from "./ask-server.ts";
import { LABELS_KEY } from "./room-state.ts";

/** Codes of labels that this device has seen, so that they open their shades without a connection as well. */
function keptLabels(): Label[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(LABELS_KEY) ?? "[]");
    return Array.isArray(kept) ? (kept as Label[]) : [];
  } catch {
    return [];
  }
}

function keep(labels: readonly Label[]): void {
  const others = keptLabels().filter(({ code }) => labels.every((one) => one.code !== code));
  try {
    localStorage.setItem(LABELS_KEY, JSON.stringify([...others, ...labels].slice(-MOST_KEPT)));
  } catch {
    // A browser that keeps nothing asks the server.
  }
}

const MOST_KEPT = 5000;

/**
 * The codes of a job's shades, made where there are none yet.
 * @throws where the server does not answer, or not for this person
 */
export async function labelsOf(jobId: string, windows: readonly string[]): Promise<Label[]> {
  const { labels } = await askServer<{ labels: Label[] }>("makeLabels", {
    params: { job: jobId },
    body: { windows },
  });
  keep(labels);
  return labels;
}

/**
 * The shade of a code.
 * @throws {TurnedDown} where the workroom has none; another error where it does not answer and this device knows of none
 */
export async function shadeOfCode(code: string): Promise<Label> {
  try {
    const label = await askServer<Label>("label", { params: { code } });
    keep([label]);
    return label;
  } catch (error) {
    const known = keptLabels().find((one) => one.code === code);
    if (error instanceof TurnedDown || known === undefined) throw error;
    return known;
  }
}
