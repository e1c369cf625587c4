import { useEffect, useMemo } from "react";
import { Link } from "wouter";
import { type PatchOperation, setPatch } from "../../figures/index.ts";
import {
  changedSince,
  type Job,
  type OwnParts,
  ownPartsOf,
  type PartEntry,
  type PartKind,
  withPartsFrom,
} from "../../job/index.ts";
import { counted, listed } from "../../words/index.ts";
import { SHOP_ID } from "../../workroom/protocol/index.ts";
import type { FieldSpec } from "../inputs/spec.ts";
import { useCanEdit, useJob } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { partsOfShop, useRoomShop } from "../workroom/room-shop.ts";
import { benchList, followBench, useBench } from "./bench-store.ts";
import { BENCH_KINDS, BENCH_ORDER } from "./part-kinds.ts";
import "./parts.css";

/** What lies on the bench, or in the shop of the workroom that shares the job, and is not in it; what is another by now. */
export function FromBench() {
  const job = useJob();
  const mine = useCanEdit();
  const bench = useBench((state) => state.parts);
  const room = useRoomShop();
  const parts = useMemo(() => (room === undefined ? bench : partsOfShop(room.shop)), [room, bench]);
  useEffect(followBench, []);
  if (parts === undefined) return null;
  const isShared = room !== undefined;
  const place = isShared ? "shop" : "bench";
  const missing = missingFrom(job, parts);
  const changed = changedSince(job, parts);
  return (
    <div className="from-bench">
      <p className="small">
        {isShared ? (
          <Link href={`/job/${SHOP_ID}`}>The workroom’s shop</Link>
        ) : (
          <Link href="/parts">The parts bench</Link>
        )}{" "}
        holds your parts for every job.{" "}
        {missing.length === 0
          ? null
          : `${counted(missing.length, "part")} of it ${missing.length === 1 ? "is" : "are"} not in this job. `}
        {missing.length === 0 ? null : (
          <button
            type="button"
            className="button button-small"
            disabled={!mine}
            onClick={() => edit({ label: `Take the parts of the ${place}`, patch: takePatch(job, parts) })}
          >
            Take a copy of {missing.length === 1 ? "it" : "all of them"}
          </button>
        )}
      </p>
      {changed.length === 0 ? null : (
        <ul className="small" aria-label={`Changed ${isShared ? "in the shop" : "on the bench"}`}>
          {changed.map(({ kind, id, name, fields }) => (
            <li key={`${kind} ${id}`}>
              “{name}” is another {isShared ? "in the shop" : "on the bench"} than in this job:{" "}
              {listed(fields.map((field) => fieldLabel(kind, field)))}.{" "}
              <button
                type="button"
                className="button-plain small"
                disabled={!mine}
                onClick={() =>
                  edit({ label: `Take ${name} from the ${place}`, patch: renewPatch(job, parts, kind, id) })
                }
              >
                Take that of the {place}
                <span className="hidden-words">: {name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function fieldLabel(kind: PartKind, field: string): string {
  if (field === "known") return "how it is known";
  if (field === "tests") return "its tests";
  const fields: Readonly<Record<string, FieldSpec>> = BENCH_KINDS[kind].fields;
  return fields[field]?.label.toLowerCase() ?? field;
}

function missingFrom(job: Job, parts: OwnParts): PartEntry[] {
  return BENCH_ORDER.flatMap((kind) => {
    const ids = new Set(ownPartsOf(job, kind).map(({ id }) => id));
    return benchList(parts, kind).filter(({ id }) => !ids.has(id));
  });
}

function takePatch(job: Job, parts: OwnParts): PatchOperation[] {
  const { cloths, hardware } = withPartsFrom(job, parts);
  return [...setPatch(job, "/cloths", cloths), ...setPatch(job, "/hardware", hardware)];
}

function renewPatch(job: Job, parts: OwnParts, kind: PartKind, id: string): PatchOperation[] {
  const now = benchList(parts, kind).find((part) => part.id === id);
  const list = ownPartsOf(job, kind).map((part) => (part.id === id && now !== undefined ? now : part));
  return setPatch(job, kind === "cloths" ? "/cloths" : `/hardware/${kind}`, list);
}
