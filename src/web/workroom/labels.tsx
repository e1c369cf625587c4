import { useEffect, useMemo, useState } from "react";
import { encode } from "uqr";
import type { Label } from "../../workroom/protocol/index.ts";
import { useJob } from "../state/fields.ts";
import { labelsOf } from "./label-codes.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

/** Labels for the pieces: a code that opens the shade's page at the bench on any device of the workroom. */
export function Labels() {
  const job = useJob();
  const base = `${location.origin}${location.pathname}`;
  const [labels, setLabels] = useState<readonly Label[]>([]);
  const { trouble, run } = useDeed();
  const windows = job.rooms.flatMap((room) => room.windows.map(({ id }) => id)).join(" ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: made when there are other windows
  useEffect(() => {
    void run(async () => setLabels(await labelsOf(job.id, windows.split(" ").filter(Boolean))));
  }, [job.id, windows]);
  const codes = new Map(labels.map(({ windowId, code }) => [windowId, code]));
  return (
    <section aria-labelledby="labels-title" className="room-section room-labels">
      <h2 id="labels-title">Labels</h2>
      <p className="quiet screen-only">
        Pinned to the cloth of a shade, each opens its page at the bench: by its picture, or typed under
        Workroom.{" "}
        <button
          type="button"
          className="button button-small"
          disabled={codes.size === 0}
          onClick={() => print()}
        >
          Print the labels
        </button>
      </p>
      <Trouble words={trouble} />
      <ul className="label-sheet">
        {job.rooms.flatMap((room) =>
          room.windows.flatMap((window) => {
            const code = codes.get(window.id);
            if (code === undefined) return [];
            return (
              <li key={window.id} className="label">
                <Code text={`${base}#/l/${code}`} />
                <p>
                  <b>{window.name}</b>
                  <br />
                  {room.name}
                  <br />
                  {job.client ?? job.name}
                  <br />
                  <code>{code}</code>
                </p>
              </li>
            );
          }),
        )}
      </ul>
    </section>
  );
}

/** A QR code, with the quiet zone of four modules that ISO/IEC 18004 asks for. */
function Code({ text }: { text: string }) {
  const { size, path } = useMemo(() => {
    const { data, size: modules } = encode(text, { ecc: "M", border: 4 });
    const dark = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])));
    return { size: modules, path: dark.join("") };
  }, [text]);
  return (
    <svg
      className="label-code"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label="Code that opens its page"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" shapeRendering="crispEdges" />
    </svg>
  );
}
