import "./no-code-from-text.ts";
import { createRoot } from "react-dom/client";
import "./style/fonts.css";
import "./style/tokens.css";
import "./style/base.css";
import "./style/table.css";
import "./style/forced.css";
import "./style/print.css";
import { App } from "./app.tsx";
import { whenIdle } from "./frame/when-idle.ts";
import { openLaunchedFiles, openSharedFile } from "./offline/launched-files.ts";
import { registerServiceWorker } from "./offline/register.ts";
import { applyTheme, usePreferences } from "./state/preferences.ts";
import { foundRoom } from "./workroom/look-for-room.ts";

applyTheme(usePreferences.getState().theme);
usePreferences.subscribe(({ theme }) => applyTheme(theme));

const root = document.getElementById("planner");
if (!root) throw new Error("invalid page: no #planner");
createRoot(root).render(<App />);

registerServiceWorker();
openLaunchedFiles();
void openSharedFile();
whenIdle(() => void foundRoom());
