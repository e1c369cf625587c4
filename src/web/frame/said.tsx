import { usePlanner } from "../state/store.ts";

/** Says to screen readers what undo and do-again did. */
export function Said() {
  const said = usePlanner((planner) => planner.said);
  return (
    <p className="hidden-words" role="status">
      {said}
    </p>
  );
}
