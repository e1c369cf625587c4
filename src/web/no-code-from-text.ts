/**
 * The content policy of the page and its workers forbids code made from text. The validator would try it for the first
 * schema that it builds, and Firefox reports each try: import this file before anything of a schema. It sets what the
 * validator's own `config` sets, but does not bring the validator along: the first screen stands without it.
 */
Object.assign(globalThis, { __zod_globalConfig: { jitless: true } });

export {};
