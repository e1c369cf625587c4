import { type FormEvent, lazy, Suspense, useId, useState } from "react";
import type { Mount } from "../../job/index.ts";
import { SYSTEM_DEFAULT_RULER, type UnitChoice, type UnitSystem } from "../../units/index.ts";
import { goToJob } from "../frame/importing.ts";
import { readLength } from "../inputs/read-write.ts";
import { Segments } from "../inputs/segments.tsx";
import { span } from "../inputs/spec.ts";
import { readBench } from "../persistence/bench-shelf.ts";
import { newId } from "../persistence/new-id.ts";
import { shelveJob } from "../persistence/session.ts";
import { prefer, usePreferences } from "../state/preferences.ts";
import { exampleWords } from "./example-words.ts";

const SYSTEMS: Record<UnitSystem, string> = { imperial: "inches", metric: "millimetres" };
const MOUNT_NAMES: Record<Mount, string> = {
  inside: "inside",
  outside: "outside",
  "to-size": "finished size",
};
/** A window to look at while nothing is typed. */
const EXAMPLE: Record<UnitSystem, { width: string; length: string }> = {
  imperial: { width: "34 1/4", length: "58 3/4" },
  metric: { width: "870", length: "1490" },
};

const LivePlate = lazy(() => import("./live-plate.tsx").then((module) => ({ default: module.LivePlate })));

/** A width, a length: the whole way to a first shade. */
export function FirstShade({ drawn }: { drawn: boolean }) {
  const system = usePreferences((preferences) => preferences.system);
  const units: UnitChoice = { system, ruler: SYSTEM_DEFAULT_RULER[system] };
  const [width, setWidth] = useState("");
  const [length, setLength] = useState("");
  const [mount, setMount] = useState<Mount>("inside");
  const [asked, setAsked] = useState(false);
  const read = (text: string) => readLength(text, span("length"), units);
  const [widthRead, lengthRead] = [read(width), read(length)];
  const shown = (text: string, example: string) => {
    const own = read(text);
    const other = read(example);
    return own.ok ? own.value : other.ok ? other.value : 1000;
  };

  const make = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (!widthRead.ok || !lengthRead.ok) return;
    const { newJob, newWindow, withPartsFrom } = await import("../state/job-door.ts");
    const { withShop } = await import("../state/shop.ts");
    // A browser that keeps nothing has no bench either.
    const bench = await readBench().catch(() => ({}));
    const job = newJob({ id: newId("job"), name: "My windows", system });
    const window = newWindow({
      id: "window-1",
      name: "First window",
      widthMm: widthRead.value,
      heightMm: lengthRead.value,
      mount,
    });
    const [room] = job.rooms;
    const withWindow = { ...job, rooms: room ? [{ ...room, windows: [window] }] : [] };
    await shelveJob(withShop(withPartsFrom(withWindow, bench)));
    goToJob(job.id, window.id);
  };

  return (
    <form className="first-shade" onSubmit={(event) => void make(event)} noValidate>
      <div className="first-shade-words">
        <h1>
          From a width and a length <br />
          to a shade you can make
        </h1>
        <p className="first-shade-lead">
          Measure the window. Shadewright works out folds, rings, cloth, cords and board, shows why, and
          writes the workbook to cut and sew by.
        </p>
        <div className="first-shade-line">
          <Measure
            label="Width"
            unit={system === "imperial" ? "in" : "mm"}
            placeholder={EXAMPLE[system].width}
            value={width}
            onChange={setWidth}
            error={asked ? wrongWith(width, widthRead, "Type a width.") : undefined}
          />
          <span className="first-shade-times" aria-hidden="true">
            ×
          </span>
          <Measure
            label="Length"
            unit={system === "imperial" ? "in" : "mm"}
            placeholder={EXAMPLE[system].length}
            value={length}
            onChange={setLength}
            error={asked ? wrongWith(length, lengthRead, "Type a length.") : undefined}
          />
        </div>
        <div className="first-shade-choices">
          <Segments
            label="Measured in"
            options={SYSTEMS}
            value={system}
            onChange={(to) => prefer({ system: to })}
          />
          <Segments<Mount> label="Hung" options={MOUNT_NAMES} value={mount} onChange={setMount} />
        </div>
        <button type="submit" className="button button-main first-shade-go">
          Draw my shade
        </button>
      </div>
      <div className="first-shade-plate">
        <Suspense fallback={null}>
          {drawn ? (
            <LivePlate
              widthMm={shown(width, EXAMPLE[system].width)}
              heightMm={shown(length, EXAMPLE[system].length)}
              mount={mount}
              system={system}
              example={exampleWords(
                { text: width, read: widthRead.ok },
                { text: length, read: lengthRead.ok },
              )}
            />
          ) : null}
        </Suspense>
      </div>
    </form>
  );
}

/** What is to be said of a size that cannot be drawn: nothing was typed, or it cannot be read. */
function wrongWith(
  typed: string,
  sizeRead: ReturnType<typeof readLength>,
  asked: string,
): string | undefined {
  if (sizeRead.ok) return undefined;
  return typed.trim() === "" ? asked : sizeRead.reason;
}

interface MeasureProps {
  label: string;
  unit: string;
  placeholder: string;
  value: string;
  onChange(value: string): void;
  error: string | undefined;
}

function Measure({ label, unit, placeholder, value, onChange, error }: MeasureProps) {
  const id = useId();
  return (
    <div className="first-shade-measure" data-invalid={error === undefined ? undefined : true}>
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input
          id={id}
          className="field-input"
          autoComplete="off"
          spellCheck={false}
          placeholder={`e.g. ${placeholder}`}
          value={value}
          onChange={(event) => onChange(event.target.value)}
          aria-invalid={error === undefined ? undefined : true}
          aria-describedby={error === undefined ? undefined : `${id}-error`}
        />
        <span className="field-unit">{unit}</span>
      </span>
      {error === undefined ? null : (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}
