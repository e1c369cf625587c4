export { type SurfaceFindingsInput, surfaceFindings } from "./surface-findings.ts";
