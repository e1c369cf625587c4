/** One step of the database's shape. Steps only go forward; one that has been released is never changed. */
export interface StoreMigration {
  name: string;
  sql: string;
}

/** Role in which every request works: it is bound by row-level security, and the audit log is read and added to alone. */
export const APP_ROLE = "shadewright_app";

/** Of every table, since all belong to a workroom: the id by which rows are told apart, and shards would be. */
const OWN = "workroom_id uuid not null references workrooms (id)";
const JOB = "foreign key (workroom_id, job_id) references jobs (workroom_id, id) on delete cascade";
const PERSON = "foreign key (workroom_id, person_id) references people (workroom_id, id)";

/** Keeps the rows of one workroom from the requests of another, whatever a query forgets to ask. */
function fenced(table: string, column: string, may: string): string {
  const isOwn = `${column} = nullif(current_setting('shadewright.workroom', true), '')::uuid`;
  return `
    alter table ${table} enable row level security;
    create policy own_workroom on ${table} to ${APP_ROLE} using (${isOwn}) with check (${isOwn});
    grant ${may} on ${table} to ${APP_ROLE};`;
}

const ALL = "select, insert, update, delete";
const TABLES: Record<string, string> = {
  people: `
    ${OWN}, id uuid not null, name text not null, sign_in_name text not null,
    role text not null check (role in ('owner', 'maker', 'fitter', 'viewer', 'class')),
    password text, is_here boolean not null default true, made_at timestamptz not null default now(),
    primary key (workroom_id, id), unique (workroom_id, sign_in_name)`,
  passkeys: `
    ${OWN}, id text not null, person_id uuid not null, public_key bytea not null, counter integer not null,
    transports json not null, name text not null, made_at timestamptz not null default now(),
    primary key (workroom_id, id), ${PERSON}`,
  challenges: `
    ${OWN}, id uuid not null, person_id uuid, challenge text not null, until timestamptz not null,
    primary key (workroom_id, id)`,
  sessions: `
    ${OWN}, id uuid not null, secret bytea not null, person_id uuid not null, device text not null,
    made_at timestamptz not null default now(), seen_at timestamptz not null default now(),
    until timestamptz not null, primary key (workroom_id, id), unique (workroom_id, secret), ${PERSON}`,
  invitations: `
    ${OWN}, id uuid not null, secret bytea not null, kind text not null check (kind in ('join', 'recovery')),
    role text not null, name text, person_id uuid, made_by uuid not null,
    made_at timestamptz not null default now(), until timestamptz not null, used_at timestamptz,
    taken_back_at timestamptz, primary key (workroom_id, id), unique (workroom_id, secret), ${PERSON}`,
  recovery_codes: `
    ${OWN}, person_id uuid not null, code bytea not null, primary key (workroom_id, person_id, code), ${PERSON}`,
  attempts: `
    ${OWN}, key text not null, count integer not null, until timestamptz not null,
    primary key (workroom_id, key)`,
  audit: `
    ${OWN}, number integer generated always as identity, at timestamptz not null default now(),
    person_id uuid, action text not null, subject text, primary key (workroom_id, number)`,
  jobs: `
    ${OWN}, id text not null, request uuid not null, name text not null, client text,
    is_demo boolean not null, windows integer not null, version integer not null,
    open_conflicts integer not null default 0, made_by uuid not null, made_at timestamptz not null default now(),
    changed_by uuid not null, changed_at timestamptz not null default now(), binned_at timestamptz,
    primary key (workroom_id, id), unique (workroom_id, request)`,
  snapshots: `
    ${OWN}, job_id text not null, version integer not null, document json not null,
    primary key (workroom_id, job_id, version), ${JOB}`,
  operations: `
    ${OWN}, job_id text not null, version integer not null, id uuid not null, person_id uuid not null,
    at timestamptz not null default now(), client_at text not null, base_version integer not null,
    changes json not null, conflicts json not null, settles json not null,
    primary key (workroom_id, job_id, version), unique (workroom_id, job_id, id), ${JOB}`,
  conflicts: `
    ${OWN}, job_id text not null, id uuid not null, version integer not null, person_id uuid not null,
    path json not null, "values" json not null, settled_in integer,
    primary key (workroom_id, job_id, id), ${JOB}`,
  work: `
    ${OWN}, job_id text not null, window_id text not null, state text, due text, holder uuid,
    changed_by uuid not null, changed_at timestamptz not null default now(),
    primary key (workroom_id, job_id, window_id), ${JOB}`,
  work_log: `
    ${OWN}, id uuid not null, job_id text not null, window_id text not null, person_id uuid not null,
    at timestamptz not null default now(), change json not null, primary key (workroom_id, id), ${JOB}`,
  reservations: `
    ${OWN}, stock_id text not null, job_id text not null, length_mm double precision, person_id uuid not null,
    at timestamptz not null default now(), primary key (workroom_id, stock_id, job_id), ${JOB}`,
  client_links: `
    ${OWN}, id uuid not null, secret bytea not null, job_id text not null, version integer not null,
    made_by uuid not null, made_at timestamptz not null default now(), until timestamptz not null,
    taken_back_at timestamptz, accepted_at timestamptz, accepted_by text,
    primary key (workroom_id, id), unique (workroom_id, secret), ${JOB}`,
  presence: `
    ${OWN}, session_id uuid not null, person_id uuid not null, job_id text, window_id text,
    seen_at timestamptz not null, primary key (workroom_id, session_id)`,
  papers: `
    ${OWN}, id uuid not null, job_id text not null, kind text not null, version integer not null,
    state text not null, asked_by uuid not null, asked_at timestamptz not null default now(),
    done_at timestamptz, why text, file bytea, file_name text, primary key (workroom_id, id), ${JOB}`,
};

/** Every table that belongs to a workroom, in an order in which rows can be put in again. */
export const ROOM_TABLES: readonly string[] = ["workrooms", ...Object.keys(TABLES), "labels"];

const FIRST = [
  `do $$ begin create role ${APP_ROLE} nologin; exception when duplicate_object or unique_violation then null; end $$;`,
  // Whoever is no superuser has to be a member of the role to work in it.
  `do $$ begin if not pg_has_role(current_user, '${APP_ROLE}', 'member') then
     execute format('grant ${APP_ROLE} to %I', current_user); end if; end $$;`,
  `create table workrooms (
     id uuid primary key, short_name text not null unique, name text not null,
     made_at timestamptz not null default now());`,
  fenced("workrooms", "id", "select"),
  ...Object.entries(TABLES).map(([table, columns]) => {
    const may = table === "audit" || table === "operations" ? "select, insert" : ALL;
    return `create table ${table} (${columns});${fenced(table, "workroom_id", may)}`;
  }),
  "create index jobs_changed on jobs (workroom_id, changed_at);",
  "create index work_changed on work (workroom_id, changed_at);",
  "create index open_conflicts on conflicts (workroom_id, job_id) where settled_in is null;",
  "create index operations_day on operations (workroom_id, job_id, at);",
].join("\n");

const CUTS = "alter table reservations add column cut_mm double precision not null default 0;";

const LABELS = `create table labels (
    ${OWN}, code text not null, job_id text not null, window_id text not null,
    primary key (workroom_id, code), unique (workroom_id, job_id, window_id), ${JOB});
  ${fenced("labels", "workroom_id", ALL)}`;

export const STORE_MIGRATIONS: readonly StoreMigration[] = [
  { name: "the workroom", sql: FIRST },
  { name: "cuts off promised bolts", sql: CUTS },
  { name: "codes on labels", sql: LABELS },
];
