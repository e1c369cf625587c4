import { counted } from "../../words/index.ts";
import { PRINT_SETS, SET_WORDS } from "../../workbook/print-sets/index.ts";
import { prefer, usePreferences } from "../state/preferences.ts";
import { useLettersLacking, usePageCounts } from "./page-counts.ts";
import type { PageCounts } from "./planning-worker.ts";

/** Pages of the sets that are ticked, with those that are said once for the job where it is made from them. */
function pagesOf(counts: PageCounts, sets: readonly (typeof PRINT_SETS)[number][]): number {
  const made = sets.includes("table") || sets.includes("steps");
  return sets.reduce((sum, set) => sum + (counts[set] ?? 0), made ? (counts.job ?? 0) : 0);
}

const WAITING = { counting: "counting pages", never: "counted while they are set" } as const;

/** What is printed, ticked set by set, and how many pages that is. */
export function PrintPanel({ shadeId }: { shadeId?: string }) {
  const sets = usePreferences((preferences) => preferences.sets);
  const known = usePageCounts(shadeId);
  const lacking = useLettersLacking();
  const counts = known === "never" ? undefined : known;
  const sum =
    counts === undefined
      ? WAITING[known === "never" ? "never" : "counting"]
      : counted(pagesOf(counts, sets), "page");
  return (
    <fieldset className="print-panel">
      <legend className="hidden-words">What to print</legend>
      <ul className="print-sets">
        {PRINT_SETS.map((set) => (
          <li key={set}>
            <label className="print-set">
              <input
                type="checkbox"
                checked={sets.includes(set)}
                onChange={(event) =>
                  prefer({
                    sets: PRINT_SETS.filter((one) =>
                      one === set ? event.target.checked : sets.includes(one),
                    ),
                  })
                }
              />
              <span>
                <strong>{SET_WORDS[set].name}</strong>{" "}
                <span className="quiet small">{SET_WORDS[set].about}</span>
              </span>
              <span className="print-count">{counts?.[set] ?? ""}</span>
            </label>
          </li>
        ))}
      </ul>
      <p role="status" className="print-sum">
        {sets.length === 0 ? "Nothing is ticked." : `In all: ${sum}`}
      </p>
      {lacking === undefined ? null : <p role="status">{lacking}</p>}
    </fieldset>
  );
}
