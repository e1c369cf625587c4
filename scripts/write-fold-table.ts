import { writeFileSync } from "node:fs";
import { foldTableText } from "./fold-table.ts";

writeFileSync("src/mechanics/elastica/fold-table.ts", foldTableText());
