import { writeFileSync } from "node:fs";
import { jobSchemaText, planSchemaText } from "./schemas.ts";

writeFileSync("schema/shadewright-job-1.schema.json", jobSchemaText());
writeFileSync("schema/shadewright-plan-2.schema.json", planSchemaText());
