import { useState } from "react";
import { whyNot } from "./ask-server.ts";

/** Does something that the server may turn down, once at a time, and keeps why it did. */
export function useDeed(): {
  isBusy: boolean;
  trouble: string | undefined;
  run(deed: () => Promise<unknown>): Promise<boolean>;
} {
  const [isBusy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const run = async (deed: () => Promise<unknown>) => {
    setBusy(true);
    setTrouble(undefined);
    try {
      await deed();
      return true;
    } catch (error) {
      setTrouble(whyNot(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { isBusy, trouble, run };
}
