import {
  type Dialect,
  type Driver,
  PostgresAdapter,
  PostgresIntrospector,
  PostgresQueryCompiler,
} from "kysely";

/** Kysely's PostgreSQL, over a driver of our own. */
export function dialectWith(createDriver: () => Driver): Dialect {
  return {
    createAdapter: () => new PostgresAdapter(),
    createDriver,
    createIntrospector: (db) => new PostgresIntrospector(db),
    createQueryCompiler: () => new PostgresQueryCompiler(),
  };
}
