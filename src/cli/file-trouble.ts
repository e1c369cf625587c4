import { badInput } from "./bad-input.ts";

const REASONS: Record<string, string> = {
  ENOENT: "a file that exists; there is none of this name",
  EISDIR: "a file; this is a folder",
  ENOTDIR: "a folder; a part of this path is a file",
  EACCES: "one that this account may use; it is closed to it",
  EPERM: "one that this account may use; it is closed to it",
  EROFS: "one on a disk that can be written to; this one is read-only",
  ENOSPC: "one on a disk with room; this one is full",
  EDQUOT: "one on a disk with room; the quota of this account is full",
  ENAMETOOLONG: "a shorter name",
  ELOOP: "a path whose links do not turn in a circle",
  EEXIST: "a folder; a file of this name is there already",
  EINVAL: "a name that this system allows",
};

/** Turns a trouble with a path that the user gave into bad input; any other error is ours and goes on. */
export function aboutPath(error: unknown, field: string, path: string): unknown {
  const code = (error as NodeJS.ErrnoException | undefined)?.code;
  // Node refuses paths with a zero byte before it asks the system.
  const reason = code === "ERR_INVALID_ARG_VALUE" ? REASONS.EINVAL : REASONS[code ?? ""];
  return reason === undefined ? error : badInput(field, JSON.stringify(path), reason);
}
