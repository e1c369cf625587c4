import type { ReactNode } from "react";
import type { FieldSpec } from "./spec.ts";
import "./field.css";

interface FieldFrameProps {
  id: string;
  spec: FieldSpec;
  /** JSON pointer of a field of the job. */
  pointer?: string | undefined;
  error?: string | undefined;
  /** Who decided the value, under the field. */
  origin?: ReactNode;
  /** A choice that belongs to the field, under it. */
  below?: ReactNode;
  wide?: boolean;
  children: ReactNode;
}

/** Label, input, origin and error of one field. */
export function FieldFrame({ id, pointer, spec, error, origin, below, wide, children }: FieldFrameProps) {
  return (
    <div
      className={wide ? "field field-wide" : "field"}
      data-pointer={pointer}
      data-invalid={error === undefined ? undefined : true}
    >
      <label htmlFor={id} className={spec.quiet ? "hidden-words" : "field-label"}>
        {spec.label}
        {spec.hint === undefined ? null : <span className="field-hint">{spec.hint}</span>}
      </label>
      {children}
      {origin === undefined ? null : (
        <p className="field-origin" id={`${id}-origin`}>
          {origin}
        </p>
      )}
      {below}
      {error === undefined ? null : (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

/** Ids of what stands under a field and belongs to it. */
export function describedBy(id: string, origin: ReactNode, error: string | undefined): string | undefined {
  const ids = [origin === undefined ? "" : `${id}-origin`, error === undefined ? "" : `${id}-error`];
  return ids.join(" ").trim() || undefined;
}
