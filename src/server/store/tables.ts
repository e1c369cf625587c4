import type { ColumnType, Generated, Selectable } from "kysely";
import type {
  Conflict,
  FieldChange,
  PathStep,
  PersonRole,
  WorkChange,
} from "../../workroom/protocol/index.ts";

/** JSON goes in as text and comes out read. */
type JsonColumn<T> = ColumnType<T, string, string>;
type Moment = ColumnType<Date, Date | undefined, Date>;
type GivenMoment = ColumnType<Date, Date, Date>;
type MaybeMoment = ColumnType<Date | null, Date | null | undefined, Date | null>;
type Bytes = ColumnType<Uint8Array, Uint8Array, Uint8Array>;

interface Own {
  workroom_id: string;
}
interface JobTable extends Own {
  id: string;
  request: string;
  name: string;
  client: string | null;
  is_demo: boolean;
  windows: number;
  version: number;
  open_conflicts: Generated<number>;
  made_by: string;
  made_at: Moment;
  changed_by: string;
  changed_at: Moment;
  binned_at: MaybeMoment;
}
interface PersonTable extends Own {
  id: string;
  name: string;
  sign_in_name: string;
  role: PersonRole;
  password: string | null;
  is_here: Generated<boolean>;
  made_at: Moment;
}

interface ReservationTable extends Own {
  stock_id: string;
  job_id: string;
  length_mm: number | null;
  /** Cut off it by the job already, and gone from the shop's length. */
  cut_mm: number;
  person_id: string;
  at: Moment;
}

/** The tables as Kysely types them; `migrations.ts` makes them. */
export interface RoomTables {
  workrooms: { id: string; short_name: string; name: string; made_at: Moment };
  people: PersonTable;
  passkeys: Own & {
    id: string;
    person_id: string;
    public_key: Bytes;
    counter: number;
    transports: JsonColumn<string[]>;
    name: string;
    made_at: Moment;
  };
  challenges: Own & { id: string; person_id: string | null; challenge: string; until: GivenMoment };
  sessions: Own & {
    id: string;
    secret: Bytes;
    person_id: string;
    device: string;
    made_at: Moment;
    seen_at: Moment;
    until: GivenMoment;
  };
  invitations: Own & {
    id: string;
    secret: Bytes;
    kind: "join" | "recovery";
    role: PersonRole;
    name: string | null;
    person_id: string | null;
    made_by: string;
    made_at: Moment;
    until: GivenMoment;
    used_at: MaybeMoment;
    taken_back_at: MaybeMoment;
  };
  recovery_codes: Own & { person_id: string; code: Bytes };
  attempts: Own & { key: string; count: number; until: GivenMoment };
  audit: Own & {
    number: Generated<number>;
    at: Moment;
    person_id: string | null;
    action: string;
    subject: string | null;
  };
  jobs: JobTable;
  snapshots: Own & { job_id: string; version: number; document: JsonColumn<unknown> };
  operations: Own & {
    job_id: string;
    version: number;
    id: string;
    person_id: string;
    at: Moment;
    client_at: string;
    base_version: number;
    changes: JsonColumn<FieldChange[]>;
    conflicts: JsonColumn<Conflict[]>;
    settles: JsonColumn<string[]>;
  };
  conflicts: Own & {
    job_id: string;
    id: string;
    version: number;
    person_id: string;
    path: JsonColumn<PathStep[]>;
    values: JsonColumn<Pick<Conflict, "base" | "mine" | "theirs" | "theirPerson">>;
    settled_in: number | null;
  };
  work: Own & {
    job_id: string;
    window_id: string;
    state: string | null;
    due: string | null;
    holder: string | null;
    changed_by: string;
    changed_at: Moment;
  };
  work_log: Own & {
    id: string;
    job_id: string;
    window_id: string;
    person_id: string;
    at: Moment;
    change: JsonColumn<WorkChange>;
  };
  reservations: ReservationTable;
  labels: Own & { code: string; job_id: string; window_id: string };
  client_links: Own & {
    id: string;
    secret: Bytes;
    job_id: string;
    version: number;
    made_by: string;
    made_at: Moment;
    until: GivenMoment;
    taken_back_at: MaybeMoment;
    accepted_at: MaybeMoment;
    accepted_by: string | null;
  };
  presence: Own & {
    session_id: string;
    person_id: string;
    job_id: string | null;
    window_id: string | null;
    seen_at: GivenMoment;
  };
  papers: Own & {
    id: string;
    job_id: string;
    kind: "workbook" | "pictures" | "cutting";
    version: number;
    state: "waiting" | "in-hand" | "done" | "failed";
    asked_by: string;
    asked_at: Moment;
    done_at: MaybeMoment;
    why: string | null;
    file: Uint8Array | null;
    file_name: string | null;
  };
}

export type JobRow = Selectable<JobTable>;
export type PersonRow = Selectable<PersonTable>;
export type ReservationRow = Selectable<ReservationTable>;
