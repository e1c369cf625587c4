import { type DragEvent, type ReactNode, useState } from "react";
import { importFile } from "./importing.ts";

/** Opens a job file that is dropped anywhere on the page. */
export function DropFile({ children }: { children: ReactNode }) {
  const [over, setOver] = useState(false);
  const carriesFile = (event: DragEvent) => event.dataTransfer.types.includes("Files");
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: “Open a file” on the shelf does the same from the keyboard
    <div
      className="drop-file"
      onDragOver={(event) => {
        if (!carriesFile(event)) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (event.relatedTarget === null) setOver(false);
      }}
      onDrop={(event) => {
        if (!carriesFile(event)) return;
        event.preventDefault();
        setOver(false);
        const [file] = event.dataTransfer.files;
        if (file) void importFile(file);
      }}
    >
      {children}
      {over ? <p className="drop-file-hint">Drop the job file to open it</p> : null}
    </div>
  );
}
