import type { Severity } from "../../figures/index.ts";

interface IconProps {
  paths: string;
  fill?: string;
}

function Icon({ paths, fill = "none" }: IconProps) {
  return (
    <svg
      viewBox="0 0 20 20"
      width="1.15em"
      height="1.15em"
      fill={fill}
      stroke="currentColor"
      strokeWidth="1.7"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
      focusable="false"
    >
      <path d={paths} />
    </svg>
  );
}

export const UndoIcon = () => <Icon paths="M7.5 4.5 3.5 8.5l4 4M4 8.5h7.5a4.5 4.5 0 0 1 0 9H8" />;
export const RedoIcon = () => <Icon paths="m12.5 4.5 4 4-4 4M16 8.5H8.500a4.500 4.500 0 0 0 0 9H12" />;
export const CloseIcon = () => <Icon paths="m5 5 10 10M15 5 5 15" />;
export const TickIcon = () => <Icon paths="m4 10.500 4 4 8-9" />;

/** The mark of the program: a board, three folds, a cord. */
export function Mark() {
  return (
    <svg viewBox="0 0 26 24" width="1.7em" height="1.57em" aria-hidden="true" focusable="false" fill="none">
      <path d="M2 3.500h22" stroke="var(--sw-ink)" strokeWidth="3" strokeLinecap="round" />
      <path
        d="M4 6.500v3.500q9 4.500 18 0V6.500M4 10.500v4q9 4.500 18 0v-4M4 15v4q9 4.500 18 0v-4"
        stroke="var(--sw-ink)"
        strokeWidth="1.5"
        strokeLinejoin="round"
      />
      <path d="M22 6v14" stroke="var(--sw-stop)" strokeWidth="1.500" strokeDasharray="2 1.500" />
    </svg>
  );
}

const SEVERITY_PATHS: Record<Severity, string> = {
  stop: "M7 2.500h6L17.500 7v6L13 17.500H7L2.500 13V7zM7 7l6 6M13 7l-6 6",
  fix: "M10 2.500 18 16.500H2zM10 7.500v4.500M10 14.200v.1",
  note: "M10 2.500a7.500 7.500 0 1 0 .01 0zM10 9v5M10 6v.1",
  unproven:
    "M10 2.500a7.500 7.500 0 1 0 .01 0zM7.800 7.800a2.200 2.200 0 1 1 3.200 2q-1 .5-1 1.700M10 14.200v.1",
};

/** A mark for each severity of finding; the word stands beside it. */
export function SeverityIcon({ severity }: { severity: Severity }) {
  return <Icon paths={SEVERITY_PATHS[severity]} />;
}
