import { type ReactNode, useContext, useState } from "react";
import { ShadeToldContext } from "./shade-context.tsx";

/** What is folded away stays as it was last seen: no keystroke elsewhere draws it anew. */
export function Still({ still, children }: { still: boolean; children: ReactNode }) {
  const shade = useContext(ShadeToldContext);
  const [kept, keep] = useState({ shade, children });
  // Another window is another shade, seen or not.
  const isKept = still && kept.shade?.window.id === shade?.window.id;
  if (!isKept && (kept.shade !== shade || kept.children !== children)) keep({ shade, children });
  const { shade: shown, children: within } = isKept ? kept : { shade, children };
  return <ShadeToldContext value={shown}>{within}</ShadeToldContext>;
}
