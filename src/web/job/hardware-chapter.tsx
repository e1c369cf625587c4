import { Chapter } from "../frame/chapter.tsx";
import { More } from "../frame/more.tsx";
import { FromBench } from "../parts/from-bench.tsx";
import {
  BAR_FIELDS,
  BOARD_FIELDS,
  CORD_FIELDS,
  DRIVE_FIELDS,
  EYE_FIELDS,
  LOCK_FIELDS,
  RING_FIELDS,
  TUBE_FIELDS,
} from "../settings/part-fields.ts";
import { useJob } from "../state/fields.ts";
import { AlsoSold } from "./also-sold.tsx";
import { PartList } from "./part-list.tsx";
import { PartsFromFile } from "./parts-from-file.tsx";

/** Which fields make a part of each kind. */
const KINDS = [
  {
    key: "locks",
    title: "Cord locks",
    kind: "lock",
    fields: LOCK_FIELDS,
  },
  { key: "cords", title: "Cords", kind: "cord", fields: CORD_FIELDS },
  {
    key: "bars",
    title: "Weight bars",
    kind: "bar",
    fields: BAR_FIELDS,
  },
  {
    key: "ribs",
    title: "Ribs",
    kind: "rib",
    fields: BAR_FIELDS,
  },
  {
    key: "boards",
    title: "Boards",
    kind: "board",
    fields: BOARD_FIELDS,
  },
  { key: "rings", title: "Rings", kind: "ring", fields: RING_FIELDS },
  {
    key: "eyes",
    title: "Screw eyes",
    kind: "eye",
    fields: EYE_FIELDS,
  },
  {
    key: "tubes",
    title: "Lift tubes",
    kind: "tube",
    fields: TUBE_FIELDS,
  },
  {
    key: "drives",
    title: "Drives of lift tubes",
    kind: "drive",
    fields: DRIVE_FIELDS,
  },
] as const;

/** Kinds that are sawn from lengths as they are sold. */
const SAWN: ReadonlySet<string> = new Set(["bars", "ribs", "boards"]);

export function HardwareChapter() {
  const { hardware } = useJob();
  const own = Object.values(hardware).reduce((sum, parts) => sum + (parts?.length ?? 0), 0);
  return (
    <Chapter
      id="hardware"
      sentence={own === 0 ? "None of your own yet; example parts are used." : `${own} of your own.`}
    >
      <FromBench />
      <p className="quiet small">
        How high a cleat sits is set under Child safety of its window, the connector of a loop under Lift.
      </p>
      {KINDS.map(({ key, title, kind, fields }) => (
        <More key={key} id={`parts-${key}`} title={title}>
          <PartList
            of={key}
            kind={kind}
            pointer={`/hardware/${key}`}
            fields={fields}
            {...(SAWN.has(key) ? { more: (part: string) => <AlsoSold pointer={`${part}/alsoSold`} /> } : {})}
          />
          <PartsFromFile kind={key} pointer={`/hardware/${key}`} />
        </More>
      ))}
    </Chapter>
  );
}
