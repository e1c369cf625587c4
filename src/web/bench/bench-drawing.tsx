import { useRef } from "react";
import type { SheetKind } from "../../shade-plan/index.ts";
import { Sheet } from "../sheets/sheet.tsx";
import { useBox } from "../sheets/use-box.ts";

export function BenchDrawing({ kind }: { kind: SheetKind }) {
  const room = useRef<HTMLDivElement>(null);
  const box = useBox(room);
  return (
    <div className="plate">
      <div className="plate-room" ref={room}>
        {box && box.widthPx > 0 && box.heightPx > 0 ? <Sheet kind={kind} box={box} letters={1.4} /> : null}
      </div>
    </div>
  );
}
