import { useMemo } from "react";
import { encode } from "uqr";
import { useJob } from "../state/fields.ts";

/** Labels for the pieces: a code that opens the shade's page at the bench on any device of the workroom. */
export function Labels() {
  const job = useJob();
  const base = `${location.origin}${location.pathname}`;
  return (
    <section aria-labelledby="labels-title" className="room-section room-labels">
      <h2 id="labels-title">Labels</h2>
      <p className="quiet screen-only">
        Pinned to the cloth of a shade, each opens its page at the bench.{" "}
        <button type="button" className="button button-small" onClick={() => print()}>
          Print the labels
        </button>
      </p>
      <ul className="label-sheet">
        {job.rooms.flatMap((room) =>
          room.windows.map((window) => (
            <li key={window.id} className="label">
              <Code text={`${base}#/job/${job.id}/${window.id}/bench`} />
              <p>
                <b>{window.name}</b>
                <br />
                {room.name}
                <br />
                {job.client ?? job.name}
              </p>
            </li>
          )),
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
