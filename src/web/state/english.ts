import { create } from "zustand";
import { type English, englishOf, type Job, spellerOf } from "../../job/index.ts";
import { SYSTEM_DEFAULT_RULER } from "../../units/index.ts";
import { speakOnScreen } from "../spelt/screen-english.ts";
import { usePreferences } from "./preferences.ts";
import { usePlanner } from "./store.ts";

/** Where no place is set, as in the shop, or before it is asked, it is that of the browser’s language. */
function englishFor(job: Job | undefined): English {
  if (job?.place !== undefined) return englishOf(job);
  const { system } = usePreferences.getState();
  const units = job?.units ?? { system, ruler: SYSTEM_DEFAULT_RULER[system] };
  const isAmerican = globalThis.navigator?.language === "en-US";
  return englishOf({ ...job, units, ...(isAmerican ? { place: "us" } : {}) });
}

const useScreen = create<{ english: English }>()(() => ({ english: englishFor(undefined) }));

function follow(): void {
  const english = englishFor(usePlanner.getState().job);
  if (english === useScreen.getState().english) return;
  speakOnScreen(spellerOf(english));
  useScreen.setState({ english });
}

speakOnScreen(spellerOf(useScreen.getState().english));
usePlanner.subscribe(follow);
usePreferences.subscribe(follow);

/** The English of the screen. Who keeps what was shown, though nothing else changed, asks so as to be shown anew. */
export function useEnglish(): English {
  return useScreen(({ english }) => english);
}
