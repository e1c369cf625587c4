import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from "react";
import type { Finding } from "../../figures/index.ts";

export interface Claims {
  findings: readonly Finding[];
  /** A field on the page takes the findings that it causes; the returned function gives them back. */
  claim(pointer: string): () => void;
}

export const ClaimsContext = createContext<Claims | undefined>(undefined);

/** Claims of the fields below here, each passed on to those above. */
export function useClaims(
  findings: readonly Finding[],
  passOn?: Claims["claim"],
): { claims: Claims; pointers: ReadonlySet<string> } {
  const [pointers, setPointers] = useState<ReadonlySet<string>>(() => new Set());
  const claim = useCallback(
    (pointer: string) => {
      setPointers((before) => new Set([...before, pointer]));
      const release = passOn?.(pointer);
      return () => {
        setPointers((before) => new Set([...before].filter((one) => one !== pointer)));
        release?.();
      };
    },
    [passOn],
  );
  const claims = useMemo(() => ({ findings, claim }), [findings, claim]);
  return { claims, pointers };
}

/** A field says that it stands on the page, so that what it causes is told below it. */
export function useFieldClaim(pointer: string): void {
  const claim = useContext(ClaimsContext)?.claim;
  useEffect(() => claim?.(pointer), [claim, pointer]);
}

/** Fields that are folded away tell nothing: what they cause stands at the end of the section meanwhile. */
export function FieldsOutOfSight({ hidden, children }: { hidden: boolean; children: ReactNode }) {
  const claims = useContext(ClaimsContext);
  return <ClaimsContext value={hidden ? undefined : claims}>{children}</ClaimsContext>;
}
