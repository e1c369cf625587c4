import { useEffect, useRef, useState } from "react";
import { figureText, type Working } from "../../figures/index.ts";
import { citeText, sourceOf } from "../../sources/index.ts";
import { CloseIcon } from "../frame/icons.tsx";
import { Field } from "../inputs/field.tsx";
import { fieldAt } from "../settings/field-at.ts";
import { SettingField } from "../settings/setting-field.tsx";
import { useShade } from "../shade/shade-context.tsx";
import { workedOut } from "../shade/worked-out.ts";
import { useUnits } from "../state/fields.ts";
import { useCurrency } from "../state/parts.ts";
import { pick, usePlanner } from "../state/store.ts";
import { pointersBehind } from "./fields-behind.ts";
import "./working-slip.css";

/** What stands behind a pressed figure: formula, values, source, and the fields that change it. */
export function WorkingSlip() {
  const picked = usePlanner((planner) => planner.view.picked);
  const { plan, workings, pointer, window } = useShade();
  const slip = useRef<HTMLElement>(null);
  const working = picked?.figure === undefined ? undefined : workings.get(picked.figure);
  const fields = [
    ...new Set([
      ...(picked?.field === undefined ? [] : [picked.field]),
      ...(picked?.figure === undefined ? [] : pointersBehind(plan, picked.figure, pointer, window)),
    ]),
  ].filter((field) => fieldAt(field) !== undefined);
  const key = `${picked?.figure} ${picked?.field}`;
  useReturningFocus(slip, picked ? key : undefined);
  if (!picked || (!working && fields.length === 0)) return null;
  return (
    <aside
      ref={slip}
      className="slip"
      tabIndex={-1}
      aria-label={working ? `Working: ${working.label}` : "Change a figure"}
    >
      <button
        type="button"
        className="tool slip-close"
        onClick={() => pick(undefined)}
        aria-label="Close the slip"
      >
        <CloseIcon />
      </button>
      {working ? <WorkingText working={working} /> : null}
      {fields.length > 0 ? (
        <div className="slip-change">
          <h3>{working ? "Change what it rests on" : "Change it"}</h3>
          <Fields pointers={fields.slice(0, NEAREST)} />
          {fields.length > NEAREST ? (
            <details>
              <summary>{fields.length - NEAREST} more behind those</summary>
              <Fields pointers={fields.slice(NEAREST)} />
            </details>
          ) : null}
        </div>
      ) : null}
    </aside>
  );
}

/** Fields shown at once; a figure far down the work rests on dozens. */
const NEAREST = 6;

function Fields({ pointers }: { pointers: readonly string[] }) {
  return (
    <div className="fields">
      {pointers.map((pointer) => (
        <FieldAt key={pointer} pointer={pointer} />
      ))}
    </div>
  );
}

function FieldAt({ pointer }: { pointer: string }) {
  const { plan } = useShade();
  const found = fieldAt(pointer);
  if (!found) return null;
  if ("setting" in found) {
    const { group, name } = found.setting;
    return (
      <SettingField scope={found.scope} group={group} name={name} worked={workedOut(plan, group, name)} />
    );
  }
  return <Field pointer={pointer} spec={found.spec} {...(found.needed ? { needed: found.needed } : {})} />;
}

function WorkingText({ working }: { working: Working }) {
  const units = useUnits();
  const currency = useCurrency();
  const write = (value: number, unit: Working["unit"]) => figureText(value, unit, units, currency);
  const source = sourceOf(working.cite);
  return (
    <div>
      <h3 className="slip-title">{working.label}</h3>
      <p className="slip-formula">
        <var>{working.symbol}</var> = <FormulaText formula={working.formula} /> ={" "}
        <strong>{write(working.value, working.unit)}</strong>
      </p>
      <table className="slip-values">
        <caption className="hidden-words">Values in the formula</caption>
        <tbody>
          {working.inputs.map((input) => (
            <tr key={input.symbol}>
              <th scope="row">
                <var>{input.symbol}</var>
              </th>
              <td className="slip-value">{write(input.value, input.unit)}</td>
              <td>{input.label}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {working.note === undefined ? null : <p className="small">{working.note}</p>}
      <p className="slip-source" data-kind={source.kind}>
        Source: {citeText(working.cite)}
      </p>
      <CopyWorking text={workingText(working, write)} />
    </div>
  );
}

/** The same as plain text, to hand on. */
function workingText(
  { label, symbol, formula, value, unit, inputs, note, cite }: Working,
  write: (value: number, unit: Working["unit"]) => string,
): string {
  return [
    label,
    `${symbol} = ${formula} = ${write(value, unit)}`,
    ...inputs.map((input) => `${input.symbol} = ${write(input.value, input.unit)}: ${input.label}`),
    ...(note === undefined ? [] : [note]),
    `Source: ${citeText(cite)}`,
  ].join("\n");
}

function CopyWorking({ text }: { text: string }) {
  const [copied, setCopied] = useState<string>();
  return (
    <p>
      <button
        type="button"
        className="button-plain small screen-only"
        onClick={() =>
          void navigator.clipboard?.writeText(text).then(
            () => setCopied(text),
            () => {},
          )
        }
      >
        Copy the working
      </button>{" "}
      <span role="status" className="small">
        {copied === text ? "Copied." : ""}
      </span>
    </p>
  );
}

/** Letters stand for quantities and slope; numbers and names of functions stand upright. */
function FormulaText({ formula }: { formula: string }) {
  const parts = formula.split(/([\p{L}][\p{L}\p{N}_₀-₉]*)/u);
  return (
    <span className="formula">
      {parts.map((part, at) => {
        const key = `${at} ${part}`;
        const isName = at % 2 === 1;
        const isFunction = isName && parts[at + 1]?.startsWith("(") === true && part.length > 1;
        return isName && !isFunction ? <var key={key}>{part}</var> : <span key={key}>{part}</span>;
      })}
    </span>
  );
}

/** Takes the focus when the slip opens, and gives it back to what was pressed where it closes with it. */
function useReturningFocus(slip: React.RefObject<HTMLElement | null>, key: string | undefined) {
  const from = useRef<Element | null>(null);
  useEffect(() => {
    if (key === undefined) {
      const before = from.current;
      from.current = null;
      const isLost = document.activeElement === null || document.activeElement === document.body;
      if (isLost && before?.isConnected && (before instanceof HTMLElement || before instanceof SVGElement))
        before.focus();
      return;
    }
    if (!slip.current?.contains(document.activeElement)) from.current = document.activeElement;
    slip.current?.focus({ preventScroll: true });
  }, [key, slip]);
}
