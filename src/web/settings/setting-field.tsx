import { memo, type ReactNode } from "react";
import { DEFAULTS, isWorkedOut, type MakingGroup, type StyleKind, styleDefault } from "../../job/index.ts";
import { citeText, type Sourced } from "../../sources/index.ts";
import { Field } from "../inputs/field.tsx";
import type { FieldSpec } from "../inputs/spec.ts";
import { useEnglish } from "../state/english.ts";
import { editField, useCanEdit, useField } from "../state/fields.ts";
import { MAKING_FIELDS } from "./making-fields.ts";

type Entry = Sourced<unknown> | Extract<Parameters<typeof isWorkedOut>[0], { workedOut: true }>;

export interface SettingFieldProps {
  /** Pointer of the making: of a shade, or `/workshop`. */
  scope: string;
  group: MakingGroup;
  name: string;
  /** What the shade came to, where the setting is worked out. */
  worked?: unknown;
  /** What it would be without the maker's choice, where that is known. */
  unchosen?: unknown;
  /** Style of the shade, which may have a default of its own. */
  style?: StyleKind;
}

/** One making setting: the maker's own value, or what stands in for it and who says so. */
export const SettingField = memo(function SettingField({
  scope,
  group,
  name,
  worked,
  unchosen,
  style,
}: SettingFieldProps) {
  useEnglish();
  const pointer = `${scope}/${group}/${name}`;
  const spec = (MAKING_FIELDS[group] as Record<string, FieldSpec>)[name];
  const entry =
    (style === undefined ? undefined : styleDefault(style, group, name)) ??
    (DEFAULTS[group] as Record<string, Entry>)[name];
  const own = useField(pointer);
  const habit = useField(`/workshop/${group}/${name}`);
  if (!spec || !entry) throw new Error(`invalid setting: ${group}.${name}`);
  const ofShade = scope !== "/workshop";
  // Once the maker chose, what the shade came to is that choice, not what the default would be.
  const isOwnPart = !isWorkedOut(entry) && unchosen !== undefined;
  const standIn = !isWorkedOut(entry) ? (unchosen ?? entry.value) : own === undefined ? worked : unchosen;
  return (
    <Field
      pointer={pointer}
      spec={spec}
      fallback={ofShade ? (habit ?? standIn) : standIn}
      origin={
        own !== undefined ? (
          <Own pointer={pointer} label={spec.label} word={ofShade ? "set by you" : "set for the workshop"} />
        ) : ofShade && habit !== undefined ? (
          <Origin word="workshop" />
        ) : (
          <Origin
            word={isWorkedOut(entry) ? "worked out" : "default"}
            why={isOwnPart ? "the first of your own" : whyText(entry)}
          />
        )
      }
    />
  );
});

function whyText(entry: Entry): string {
  return isWorkedOut(entry) ? entry.why : citeText(entry.cite);
}

function Origin({ word, why }: { word: string; why?: string }): ReactNode {
  return (
    <>
      <b className="origin-word">{word}</b>
      {why === undefined ? null : `: ${why}`}
    </>
  );
}

function Own({ pointer, label, word }: { pointer: string; label: string; word: string }): ReactNode {
  const mine = useCanEdit();
  return (
    <>
      <b className="origin-word origin-own">{word}</b>{" "}
      <button
        type="button"
        className="button-plain small"
        disabled={!mine}
        onClick={() => editField(pointer, undefined, `${label}: back to the default`)}
      >
        reset<span className="hidden-words">: {label}</span>
      </button>
    </>
  );
}
