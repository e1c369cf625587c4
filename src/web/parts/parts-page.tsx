import { useEffect, useRef, useState } from "react";
import {
  type JobIssue,
  notYetKnown,
  openPartsText,
  type PartEntry,
  type PartKind,
  partsOf,
  partsText,
} from "../../job/index.ts";
import { ownFit } from "../../lift/index.ts";
import { SYSTEM_DEFAULT_RULER, type UnitChoice } from "../../units/index.ts";
import { counted, listed } from "../../words/index.ts";
import { readCount, reasonOf } from "../ask/asked-number.ts";
import { Colophon } from "../frame/colophon.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import type { FieldSpec } from "../inputs/spec.ts";
import { Typed } from "../inputs/typed.tsx";
import { download } from "../persistence/job-file.ts";
import { newId } from "../persistence/new-id.ts";
import { screenSpelling } from "../spelt/screen-english.ts";
import { usePreferences } from "../state/preferences.ts";
import { BenchField } from "./bench-field.tsx";
import { followBench, layOut, layOutAll, takeAway, useBench } from "./bench-store.ts";
import { FitTable } from "./fit-table.tsx";
import { BENCH_KINDS, BENCH_ORDER } from "./part-kinds.ts";
import { PartTests } from "./part-tests.tsx";
import "../inputs/field.css";
import "../job/job-page.css";
import "./parts.css";

/** The parts in the maker's hand, for every job on this device. */
export function PartsPage() {
  const isRead = useBench(({ parts }) => parts !== undefined);
  const trouble = useBench((bench) => bench.trouble);
  useEffect(followBench, []);
  return (
    <>
      <TopBar>
        <span aria-current="page">Parts bench</span>
      </TopBar>
      <Page className="page page-narrow parts-page" title="Parts bench" busy={!isRead}>
        <h1>Parts bench</h1>
        <p className="quiet">
          What lies in your hand, for every job on this device. Each field is measured, stated by the seller
          or not known; nothing is ever taken from an example. A new job takes a copy of all that is known
          well enough; an older one takes it under <i>Hardware</i>.
        </p>
        {trouble ? (
          <p role="alert">
            This browser keeps nothing for this page. Save the bench as a file before you leave.
          </p>
        ) : null}
        <BenchFile />
        {!isRead ? null : BENCH_ORDER.map((kind) => <KindOnBench key={kind} kind={kind} />)}
        <BenchFit />
      </Page>
      <Colophon />
    </>
  );
}

function useBenchUnits(): UnitChoice {
  const system = usePreferences((preferences) => preferences.system);
  return { system, ruler: SYSTEM_DEFAULT_RULER[system] };
}

function KindOnBench({ kind }: { kind: PartKind }) {
  const { title, one } = BENCH_KINDS[kind];
  const list = useBench(({ parts }) => parts?.[kind]) ?? [];
  return (
    <details className="more-settings" id={`bench-${kind}`}>
      <summary>
        {title}
        {list.length === 0 ? null : <span className="quiet"> {list.length}</span>}
      </summary>
      {list.map((part) => (
        <PartOnBench key={part.id} kind={kind} part={part} />
      ))}
      <p>
        <button
          type="button"
          className="button button-small"
          onClick={() => layOut(kind, newId(one), freshName(one, list))}
        >
          Lay out a {one}
        </button>
      </p>
    </details>
  );
}

/** A name that no other part of the kind has, so that they are told apart before they are named. */
function freshName(one: string, list: readonly PartEntry[]): string {
  const name = screenSpelling()(`My ${one}`);
  const taken = new Set(list.map((part) => part.name));
  if (!taken.has(name)) return name;
  const number = list.findIndex((_, at) => !taken.has(`${name} ${at + 2}`)) + 2;
  return `${name} ${number}`;
}

function PartOnBench({ kind, part }: { kind: PartKind; part: PartEntry }) {
  const units = useBenchUnits();
  const fields: Readonly<Record<string, FieldSpec>> = BENCH_KINDS[kind].fields;
  const unknown = notYetKnown(kind, part).map((name) => fields[name]?.label.toLowerCase() ?? name);
  return (
    <article className="part-card" aria-label={part.name}>
      <h2>
        {part.name}
        <span className="part-card-tools">
          <button type="button" className="button-plain small" onClick={() => takeAway(kind, part.id)}>
            Delete<span className="hidden-words"> {part.name}</span>
          </button>
        </span>
      </h2>
      {unknown.length === 0 ? null : (
        <p className="small" role="note">
          Not planned with yet. Not known: {listed(unknown)}.
        </p>
      )}
      <div className="fields">
        {Object.entries(fields)
          .filter(([name]) => !isSaidOtherwise(kind, part, name))
          .map(([name, spec]) => (
            <BenchField key={name} kind={kind} part={part} name={name} spec={spec} units={units} />
          ))}
      </div>
      <PartTests kind={kind} part={part} units={units} />
    </article>
  );
}

/** Slots are asked in one way or the other: whichever the maker began with. */
function isSaidOtherwise(kind: PartKind, part: PartEntry, name: string): boolean {
  if (kind !== "locks") return false;
  const { slots, dividerWires } = part as PartEntry<"locks">;
  return (name === "slots" && dividerWires !== undefined) || (name === "dividerWires" && slots !== undefined);
}

/** The bench as a file, for another device and for the command line, and the sheet on which the tests are written down. */
function BenchFile() {
  const parts = useBench((bench) => bench.parts);
  const paper = usePreferences((preferences) => preferences.paper);
  const input = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState<string>();
  const [issues, setIssues] = useState<readonly JobIssue[]>([]);
  const open = async (file: File) => {
    const opened = openPartsText(await file.text());
    setIssues(opened.ok ? [] : opened.issues);
    setSaid(
      opened.ok
        ? laidOutText(layOutAll(opened.parts), file.name.slice(0, 60))
        : `${file.name.slice(0, 60)} cannot be used as it stands:`,
    );
  };
  return (
    <div className="parts-file">
      <button type="button" className="button button-small" onClick={() => input.current?.click()}>
        Open a parts file
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        aria-label="Parts file"
        hidden
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          if (file) void open(file);
          event.target.value = "";
        }}
      />
      <button
        type="button"
        className="button button-small"
        onClick={() =>
          download(new Blob([partsText(parts ?? {})], { type: "application/json" }), "parts.json")
        }
      >
        Save as a parts file
      </button>
      <button
        type="button"
        className="button button-small"
        onClick={() => {
          setSaid("Setting the sheet");
          void import("../workbook/test-sheet.ts").then(({ downloadTestSheet }) =>
            downloadTestSheet(paper).then(
              () => setSaid("The sheet is in your downloads."),
              (error) => setSaid(`The sheet could not be set: ${String(error)}`),
            ),
          );
        }}
      >
        Print the sheet for the tests
      </button>
      <div role="status">
        {said === undefined ? null : <p className="small">{said}</p>}
        <ul className="small">
          {issues.slice(0, 20).map(({ field, given, wanted }) => (
            <li key={`${field} ${wanted}`}>
              {field}: {given}. Wanted: {wanted}.
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}

function laidOutText(count: number, fileName: string): string {
  return `${counted(count, "part")} of ${fileName} ${count === 1 ? "lies" : "lie"} on the bench.`;
}

/** Locks by cords of the bench, with no job at all. */
function BenchFit() {
  const parts = useBench((bench) => bench.parts);
  const [cords, setCords] = useState("5");
  const count = readCount(cords, 1, 60);
  const { locks = [], cords: own = [] } = parts ?? {};
  if (locks.length === 0) return null;
  return (
    <section className="chapter ask-part" aria-labelledby="bench-fit">
      <h2 id="bench-fit">Which lock goes with which cord?</h2>
      <div className="fields">
        <Typed label="Cords" value={cords} onChange={setCords} error={reasonOf(count)} />
      </div>
      {count.ok ? (
        <FitTable fit={ownFit(partsOf({ cloths: [], hardware: { locks, cords: own } }), count.value)} />
      ) : null}
    </section>
  );
}
