import { useMemo } from "react";
import { shadeFacts } from "../../answers/index.ts";
import { useShade } from "../shade/shade-context.tsx";
import { ShowToClass } from "./class-view.tsx";

/** This shade as a class is shown it. */
export function Lessons() {
  const { job, plan, place } = useShade();
  const { room, window } = place;
  const facts = useMemo(() => shadeFacts(job, room, window, plan), [job, room, window, plan]);
  return (
    <p>
      <ShowToClass facts={facts} />
    </p>
  );
}
