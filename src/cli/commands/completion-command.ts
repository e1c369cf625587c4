import { Argument, type Command } from "commander";
import type { Io } from "../io.ts";

const SHELLS = ["bash", "zsh", "fish"] as const;
type Shell = (typeof SHELLS)[number];

/** `shadewright completion`: words for a shell to finish what is typed, from the commands and options as they are. */
export function addCompletion(program: Command, io: Io): void {
  program
    .command("completion")
    .description(
      "Print a script that lets a shell finish commands and options: source <(shadewright completion bash)",
    )
    .addArgument(new Argument("[shell]", "which one").choices(SHELLS).default("bash"))
    .action((shell: Shell) => io.out(shell === "fish" ? fishScript(program) : bashScript(program, shell)));
}

interface Typable {
  /** Commands typed so far, with a space between. */
  path: string;
  words: string[];
  /** What may follow an option. */
  values: [option: string, choices: readonly string[]][];
}

/** Every command with what can be typed after it. */
function typables(command: Command, path = ""): Typable[] {
  const long = command.options.filter(({ hidden }) => !hidden).flatMap(({ long: word }) => word ?? []);
  const choices = command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []);
  const values = command.options.flatMap(({ long: word, argChoices }): Typable["values"] =>
    word && argChoices ? [[word, argChoices]] : [],
  );
  const own = {
    path,
    words: [...command.commands.map((one) => one.name()), ...choices, ...long, "--help"],
    values,
  };
  return [
    own,
    ...command.commands.flatMap((one) => typables(one, path === "" ? one.name() : `${path} ${one.name()}`)),
  ];
}

/** The names are ours and plain: letters, digits and hyphens. */
function bashScript(program: Command, shell: Shell): string {
  const all = typables(program);
  const values = all.flatMap(({ path, values: own }) =>
    own.map(([option, choices]) => `    "${path}|${option}") words="${choices.join(" ")}" ;;`),
  );
  const words = all.map((one) => `    "${one.path}") words="${[...new Set(one.words)].join(" ")}" ;;`);
  const paths = all.map(({ path }) => `"${path}"`).join(" | ");
  return [
    ...(shell === "zsh" ? ["autoload -U +X bashcompinit && bashcompinit"] : []),
    "_shadewright() {",
    '  local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" path="" words="" i next',
    "  for ((i = 1; i < COMP_CWORD; i++)); do",
    '    next="${path:+$path }${COMP_WORDS[i]}"',
    `    case "$next" in ${paths}) path="$next" ;; *) break ;; esac`,
    "  done",
    '  case "$path|$before" in',
    ...values,
    "  esac",
    '  [ -z "$words" ] && case "$path" in',
    ...words,
    "  esac",
    '  COMPREPLY=($(compgen -W "$words" -- "$word"))',
    '  [ "${#COMPREPLY[@]}" -gt 0 ] || COMPREPLY=($(compgen -f -- "$word"))',
    "}",
    "complete -F _shadewright shadewright",
    "",
  ].join("\n");
}

function fishScript(program: Command): string {
  const lines = typables(program).flatMap(({ path, words, values }) => {
    const at =
      path === "" ? "__fish_use_subcommand" : `__fish_seen_subcommand_from ${path.split(" ").at(-1)}`;
    const given = new Map(values);
    return [...new Set(words)].map((word) => {
      const what = word.startsWith("--") ? `-l ${word.slice(2)}` : `-a ${word}`;
      const choices = given.get(word);
      return `complete -c shadewright -n '${at}' ${what}${choices === undefined ? "" : ` -xa '${choices.join(" ")}'`}`;
    });
  });
  return `${lines.join("\n")}\n`;
}
