/**
 * Lifts a document from version n to n + 1, keyed by n.
 *
 * A file of version 1 must always open. When the schema changes shape, raise `JOB_VERSION`,
 * add the step here, and keep a real document of the old version in `test/documents/`:
 * the migration test opens each of them.
 */
export const MIGRATIONS: Record<number, (document: unknown) => unknown> = {};
