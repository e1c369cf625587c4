import * as z from "zod";
import { instant, shownName, token, uniqueId } from "./fields.ts";

/** What someone may do, the most first; `class` reads what the others made, and changes copies of its own. */
export const PERSON_ROLES = ["owner", "maker", "fitter", "viewer", "class"] as const;
export type PersonRole = (typeof PERSON_ROLES)[number];

export const personRoleSchema = z.enum(PERSON_ROLES);

/** As it is typed to sign in; upper and lower case are alike. */
export const signInName = z
  .string()
  .trim()
  .toLowerCase()
  .regex(/^[\p{L}\p{N}][\p{L}\p{N}._@+-]{0,63}$/u, "letters, digits and . _ @ + -, up to 64 of them");

/** Long rather than strange: NIST SP 800-63B-4, 3.1.1.2, asks for 15 characters where nothing else proves who it is. */
export const newPassword = z.string().min(15).max(256);
const typedPassword = z.string().min(1).max(256);

export const personSchema = z.strictObject({
  id: uniqueId,
  name: shownName,
  signInName: z.string(),
  role: personRoleSchema,
  isHere: z.boolean().meta({ description: "False once they have left the workroom" }),
});

/** What a browser asks first. */
export const meSchema = z.discriminatedUnion("state", [
  z.strictObject({
    state: z.literal("new"),
    needsCode: z
      .boolean()
      .meta({ description: "Whether the first owner has to type the code that the server printed" }),
  }),
  z.strictObject({ state: z.literal("signed-out") }),
  z.strictObject({
    state: z.literal("signed-in"),
    workroom: z.strictObject({ id: uniqueId, name: shownName, shortName: z.string() }),
    person: personSchema,
    session: uniqueId,
  }),
]);

/** The first owner, and with them the workroom. */
export const signUpSchema = z.strictObject({
  workroom: shownName,
  name: shownName,
  signInName,
  password: newPassword,
  code: z.string().max(100).optional(),
  system: z.enum(["metric", "imperial"]).default("metric").meta({ description: "How its shop measures" }),
});

/** `workroom` is the short name, wanted where the server has more than one. */
export const signInSchema = z.strictObject({
  workroom: z.string().max(64).optional(),
  signInName,
  password: typedPassword,
});

/** One of the codes kept for the day that the password is lost: it sets a new one, and is used up. */
export const recoverSchema = z.strictObject({
  workroom: z.string().max(64).optional(),
  signInName,
  code: z.string().max(40),
  password: newPassword,
});

export const recoveryCodesSchema = z.strictObject({ codes: z.array(z.string()) });
export const newPasswordSchema = z.strictObject({ current: typedPassword, password: newPassword });

export const sessionSchema = z.strictObject({
  id: uniqueId,
  person: uniqueId,
  device: z.string(),
  madeAt: instant,
  seenAt: instant,
  isThis: z.boolean(),
});

export const personChangeSchema = z.strictObject({
  name: shownName.optional(),
  role: personRoleSchema.optional(),
  isHere: z.boolean().optional(),
});

export const newInvitationSchema = z.strictObject({
  role: personRoleSchema,
  name: shownName.optional(),
  days: z.int().min(1).max(30).default(7),
});

/** A link handed over by the owner: to join, or to set a new password. */
export const invitationSchema = z.strictObject({
  id: uniqueId,
  kind: z.enum(["join", "recovery"]),
  role: personRoleSchema,
  name: z.string().optional(),
  madeAt: instant,
  until: instant,
});
/** The token is told once, when it is made. */
export const madeInvitationSchema = z.strictObject({ invitation: invitationSchema, token });

export const joinLookSchema = z.strictObject({ token });
export const joinLookAnswerSchema = z.strictObject({
  workroom: shownName,
  kind: z.enum(["join", "recovery"]),
  role: personRoleSchema,
  name: z.string().optional(),
  signInName: z.string().optional().meta({ description: "Of who gets a new password" }),
});
/** Name and sign-in name where someone joins; a recovery has them already. */
export const joinSchema = z.strictObject({
  token,
  name: shownName.optional(),
  signInName: signInName.optional(),
  password: newPassword,
});

export const passkeySchema = z.strictObject({ id: z.string(), name: shownName, madeAt: instant });
/** What the browser's WebAuthn gave back, to be checked by the server. */
const authenticatorResponse = z.looseObject({ id: z.string().max(1400) });
export const passkeyAddSchema = z.strictObject({
  challenge: uniqueId,
  name: shownName,
  response: authenticatorResponse,
});
export const passkeyOptionsSchema = z.strictObject({ workroom: z.string().max(64).optional() });
export const passkeySignInSchema = z.strictObject({
  challenge: z
    .string()
    .regex(/^(?:[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\.?){2}$/, "as it came with the options"),
  response: authenticatorResponse,
});

export const auditEntrySchema = z.strictObject({
  number: z.int(),
  at: instant,
  person: uniqueId.optional(),
  action: z.string(),
  subject: z.string().optional(),
});

export type Person = z.output<typeof personSchema>;
export type Me = z.output<typeof meSchema>;
export type SignUp = z.input<typeof signUpSchema>;
export type SignIn = z.input<typeof signInSchema>;
export type Session = z.output<typeof sessionSchema>;
export type Invitation = z.output<typeof invitationSchema>;
export type MadeInvitation = z.output<typeof madeInvitationSchema>;
export type JoinLook = z.output<typeof joinLookAnswerSchema>;
export type Passkey = z.output<typeof passkeySchema>;
export type AuditEntry = z.output<typeof auditEntrySchema>;
