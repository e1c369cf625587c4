import { type ReactNode, useContext } from "react";
import type { Finding } from "../../figures/index.ts";
import { ClaimableContext, Claims, useClaims } from "./claims.tsx";
import { FindingList } from "./finding-list.tsx";

/** Whether a field causes what a finding's pointer names: itself, or the list that it is one of. */
function isBehind(pointer: string, path: string | undefined): boolean {
  if (path === undefined || !pointer.startsWith(path)) return false;
  return pointer === path || /^\/\d+$/.test(pointer.slice(path.length));
}

/** Fields side by side, and below them, where they push none of them, the findings that they cause. */
export function FieldGroup({ children, three }: { children: ReactNode; three?: boolean }) {
  const all = useContext(ClaimableContext);
  const { claim, pointers } = useClaims();
  const own = all.filter(({ path }) => [...pointers].some((pointer) => isBehind(pointer, path)));
  return (
    <>
      <Claims findings={all} claim={claim}>
        <div className={three ? "fields fields-three" : "fields"}>{children}</div>
      </Claims>
      <FindingList findings={own} />
    </>
  );
}

interface WithFindingsProps {
  findings: readonly Finding[];
  children: ReactNode;
  /** Findings that no field causes come before everything else, since they say what to do. */
  first?: boolean;
}

/** The body of a section; findings that no field in it causes stand at its end, or first. */
export function WithFindings({ findings, children, first = false }: WithFindingsProps) {
  const { claim, pointers } = useClaims();
  const rest = findings.filter(({ path }) => ![...pointers].some((pointer) => isBehind(pointer, path)));
  return (
    <>
      {first ? <FindingList findings={rest} /> : null}
      <Claims findings={findings} claim={claim}>
        {children}
      </Claims>
      {first ? null : <FindingList findings={rest} />}
    </>
  );
}
