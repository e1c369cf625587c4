import { describe, expect, test } from "vitest";
import { Refused } from "../refused.ts";
import { refuseGuessable } from "./guessable.ts";

const OWN = ["Ferry House", "Ada Quill", "ada"];

describe("a new password", () => {
  // Each of these, or what it repeats, is in published lists of the most used ones.
  test.each([
    "passwordpassword",
    "password1234567",
    "123456789012345",
    "qwertyuiopasdfgh",
    "iloveyouiloveyou",
    "aaaaaaaaaaaaaaaa",
    "Ferry House 2026",
    "adaquilladaquill",
  ])("%s is refused, with what would do", async (password) => {
    const refused = await refuseGuessable(password, OWN).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Refused);
    expect((refused as Refused).issues[0]).toMatchObject({ field: "password" });
    expect(JSON.stringify(refused)).not.toContain(password);
  });

  test.each(["four lanterns over the quay", "tread-walnut-ninety-crow", "x9#Lq2!vB7_mZ4pT"])(
    "%s is taken",
    async (password) => {
      await expect(refuseGuessable(password, OWN)).resolves.toBeUndefined();
    },
  );
});
