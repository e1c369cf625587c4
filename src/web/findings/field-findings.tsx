import { type ReactNode, useContext } from "react";
import type { Finding } from "../../figures/index.ts";
import { ClaimsContext, useClaims } from "./claims.tsx";
import { FindingList } from "./finding-list.tsx";

/** Whether a field causes what a finding's pointer names: itself, or the list that it is one of. */
function isBehind(pointer: string, path: string | undefined): boolean {
  if (path === undefined || !pointer.startsWith(path)) return false;
  return pointer === path || /^\/\d+$/.test(pointer.slice(path.length));
}

/** Fields side by side, and below them, where they push none of them, the findings that they cause. */
export function FieldGroup({ children, three }: { children: ReactNode; three?: boolean }) {
  const section = useContext(ClaimsContext);
  const all = section?.findings ?? [];
  const { claims, pointers } = useClaims(all, section?.claim);
  const own = all.filter(({ path }) => [...pointers].some((pointer) => isBehind(pointer, path)));
  return (
    <ClaimsContext value={claims}>
      <div className={three ? "fields fields-three" : "fields"}>{children}</div>
      <FindingList findings={own} />
    </ClaimsContext>
  );
}

/** The body of a section; findings that no field in it causes stand at its end. */
export function WithFindings({ findings, children }: { findings: readonly Finding[]; children: ReactNode }) {
  const { claims, pointers } = useClaims(findings);
  const rest = findings.filter(({ path }) => ![...pointers].some((pointer) => isBehind(pointer, path)));
  return (
    <ClaimsContext value={claims}>
      {children}
      <FindingList findings={rest} />
    </ClaimsContext>
  );
}
