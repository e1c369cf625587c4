import { CATALOGUE } from "../../job/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { More } from "../frame/more.tsx";
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

/** Which fields make a part of each kind, and which it cannot be without. */
const KINDS = [
  {
    key: "locks",
    title: "Cord locks",
    kind: "lock",
    fields: LOCK_FIELDS,
    needed: [
      "name",
      "housingLengthMm",
      "housingWidthMm",
      "housingHeightMm",
      "dividerWires",
      "cordsMax",
      "screws",
    ],
  },
  { key: "cords", title: "Cords", kind: "cord", fields: CORD_FIELDS, needed: ["name", "diameterMm"] },
  {
    key: "bars",
    title: "Weight bars",
    kind: "bar",
    fields: BAR_FIELDS,
    needed: ["name", "material", "widthMm", "thicknessMm"],
  },
  {
    key: "ribs",
    title: "Ribs",
    kind: "rib",
    fields: BAR_FIELDS,
    needed: ["name", "material", "widthMm", "thicknessMm"],
  },
  {
    key: "boards",
    title: "Boards",
    kind: "board",
    fields: BOARD_FIELDS,
    needed: ["name", "depthMm", "thicknessMm"],
  },
  { key: "rings", title: "Rings", kind: "ring", fields: RING_FIELDS, needed: ["name", "diameterMm"] },
  {
    key: "eyes",
    title: "Screw eyes",
    kind: "eye",
    fields: EYE_FIELDS,
    needed: ["name", "outsideDiameterMm"],
  },
  {
    key: "tubes",
    title: "Lift tubes",
    kind: "tube",
    fields: TUBE_FIELDS,
    needed: ["name", "diameterMm", "spoolLengthMm"],
  },
  {
    key: "drives",
    title: "Drives of lift tubes",
    kind: "drive",
    fields: DRIVE_FIELDS,
    needed: ["name", "kind", "lengthMm", "heightMm", "depthMm", "ratio", "screws"],
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
      sentence={own === 0 ? "None of your own yet; stand-ins are used." : `${own} of your own.`}
    >
      {KINDS.map(({ key, title, kind, fields, needed }) => (
        <More key={key} id={`parts-${key}`} title={title}>
          <PartList
            kind={kind}
            pointer={`/hardware/${key}`}
            catalogue={CATALOGUE[key]}
            fields={fields}
            needed={needed}
            {...(SAWN.has(key) ? { more: (part: string) => <AlsoSold pointer={`${part}/alsoSold`} /> } : {})}
          />
          <PartsFromFile kind={key} pointer={`/hardware/${key}`} />
        </More>
      ))}
    </Chapter>
  );
}
