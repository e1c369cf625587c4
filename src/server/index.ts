export { roomApp } from "./http/room-app.ts";
export { makeRoom, type Workroom } from "./room.ts";
export { type ServeOptions, type Serving, serve } from "./serve.ts";
export { type OwnedDoor, roomDoor, roomFolder } from "./store/doors.ts";
export { openEmbedded } from "./store/open-embedded.ts";
export { openPostgres } from "./store/open-postgres.ts";
export type { Store } from "./store/store.ts";
export { BackupUnfit, backupLines, restoreLines } from "./upkeep/backup.ts";
export { type Checked, examine } from "./upkeep/doctor.ts";
