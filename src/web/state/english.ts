import { create } from "zustand";
import { type English, type Job, spellerOf } from "../../job/index.ts";
import { SYSTEM_DEFAULT_RULER } from "../../units/index.ts";
import { englishHere } from "../spelt/english-here.ts";
import { speakOnScreen } from "../spelt/screen-english.ts";
import { usePreferences } from "./preferences.ts";
import { usePlanner } from "./store.ts";

/** In the shop, which is no job, lengths are as the maker likes them. */
function englishFor(job: Job | undefined): English {
  const { system } = usePreferences.getState();
  return englishHere(job ?? { units: { system, ruler: SYSTEM_DEFAULT_RULER[system] } });
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
