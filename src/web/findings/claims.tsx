import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from "react";
import type { Finding } from "../../figures/index.ts";

/** A field on the page takes the findings that it causes; the returned function gives them back. */
type Claim = (pointer: string) => () => void;

/** Findings that fields on the page may take. It changes with every edit: fields themselves listen to `ClaimContext`. */
export const ClaimableContext = createContext<readonly Finding[]>([]);

/** Stays the same while a page stands, so that a field is not drawn anew for a finding of another. */
const ClaimContext = createContext<Claim | undefined>(undefined);

interface ClaimsProps {
  findings: readonly Finding[];
  claim: Claim;
  children: ReactNode;
}

/** Where fields claim what they cause. */
export function Claims({ findings, claim, children }: ClaimsProps) {
  return (
    <ClaimableContext value={findings}>
      <ClaimContext value={claim}>{children}</ClaimContext>
    </ClaimableContext>
  );
}

/** Pointers claimed by the fields below here; each claim is passed on to those above. */
export function useClaims(): { claim: Claim; pointers: ReadonlySet<string> } {
  const passOn = useContext(ClaimContext);
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
  return { claim, pointers };
}

/** A field says that it stands on the page, so that what it causes is told below it. */
export function useFieldClaim(pointer: string): void {
  const claim = useContext(ClaimContext);
  useEffect(() => claim?.(pointer), [claim, pointer]);
}

const NONE: readonly Finding[] = [];

/** Fields that are folded away tell nothing: what they cause stands at the end of the section meanwhile. */
export function FieldsOutOfSight({ hidden, children }: { hidden: boolean; children: ReactNode }) {
  const claim = useContext(ClaimContext);
  const findings = useContext(ClaimableContext);
  return (
    <ClaimableContext value={hidden ? NONE : findings}>
      <ClaimContext value={hidden ? undefined : claim}>{children}</ClaimContext>
    </ClaimableContext>
  );
}
