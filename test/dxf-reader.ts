import * as reader from "dxf-parser";

interface Entity {
  type: string;
  layer: string;
  vertices?: { x: number; y: number }[];
  center?: { x: number; y: number };
  radius?: number;
  text?: string;
  shape?: boolean;
}

interface Read {
  header: Record<string, unknown>;
  entities: Entity[];
  tables: { layer: { layers: Record<string, unknown> } };
}

/** The package is a bundle of the older kind, whose class comes as its default. */
const Reader = (reader as unknown as { default: new () => { parseSync(text: string): Read | null } }).default;

/** dxf-parser knows nothing of the library that writes our files: it reads them back. */
export function readDxf(text: string): Read {
  const read = new Reader().parseSync(text);
  if (read === null) throw new Error("unreadable DXF");
  return read;
}
