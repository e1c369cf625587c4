import { writeFileSync } from "node:fs";
import { cuttingSchemaText, jobSchemaText, partsSchemaText, planSchemaText } from "./schemas.ts";

writeFileSync("schema/shadewright-job-1.schema.json", jobSchemaText());
writeFileSync("schema/shadewright-parts-1.schema.json", partsSchemaText());
writeFileSync("schema/shadewright-plan-2.schema.json", planSchemaText());
writeFileSync("schema/shadewright-cutting-1.schema.json", cuttingSchemaText());
