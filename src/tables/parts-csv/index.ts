export { type PartsRead, partColumns, readPartsCsv } from "./read-parts-csv.ts";
