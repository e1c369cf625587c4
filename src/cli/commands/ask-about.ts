import { type Command, Option } from "commander";
import {
  type AskedShade,
  type CardAnswer,
  findQuestions,
  QUESTIONS,
  type QuestionCard,
  shadeFacts,
} from "../../answers/index.ts";
import { englishOf } from "../../job/index.ts";
import { citeText } from "../../sources/index.ts";
import { answerText } from "../asking.ts";
import { badInput } from "../bad-input.ts";
import type { Io } from "../io.ts";
import { plainLine, wrapped } from "../plain-text.ts";
import { speltIo } from "../spelt.ts";
import { type NumbersOptions, numbersOptions, shadeOf } from "../typed-numbers.ts";

/** How many answers are read before one asks again. */
const MOST = 3;

interface AboutOptions extends NumbersOptions {
  all?: boolean;
  json?: boolean;
}

/** `ask about`: a question in one’s own words, answered for typed numbers or for a shade of a job. */
export function addAskAbout(ask: Command, io: Io): void {
  const about = ask
    .command("about")
    .description("Ask in your own words: can the lock serve as an eye? why does it slip? how much cloth?")
    .argument("[words...]", "the question; without any, all that can be asked");
  for (const option of numbersOptions()) about.addOption(option);
  about
    .addOption(new Option("--all", `every answer that comes near, instead of the first ${MOST}`))
    .option("--json", "print the answers as JSON")
    .action((words: string[], options: AboutOptions) => answerWords(words.join(" "), options, io));
}

async function answerWords(words: string, options: AboutOptions, io: Io): Promise<void> {
  if (words.trim() === "") {
    if (options.json) {
      io.out(
        answerText("shadewright-questions", {
          questions: QUESTIONS.map(({ id, question }) => ({ id, question })),
        }),
      );
    } else io.out(`${QUESTIONS.map(({ question }) => question).join("\n")}\n`);
    return;
  }
  const found = findQuestions(words);
  if (found.length === 0) {
    throw badInput(
      "words",
      JSON.stringify(plainLine(words)),
      "other words; `shadewright ask about` alone lists all questions",
    );
  }
  const { job, room, window } = await shadeOf(options, io);
  const facts = shadeFacts(job, room, window);
  if (facts === undefined) return;
  const cards = options.all ? found : found.slice(0, MOST);
  const answers = cards.map((card) => ({ card, answer: card.answer(facts) }));
  if (options.json) {
    io.out(
      answerText(
        "shadewright-answers",
        {
          answers: answers.map(({ card, answer }) => ({ id: card.id, question: card.question, ...answer })),
        },
        englishOf(job),
      ),
    );
    return;
  }
  const said = speltIo(io, englishOf(job));
  said.out(
    `${basisText(options, facts)}\n\n${answers.map(({ card, answer }) => cardText(card, answer, said.columns)).join("\n\n")}\n`,
  );
  const left = found.length - cards.length;
  if (left > 0) {
    said.out(
      `\nAlso: ${found
        .slice(MOST, MOST + 4)
        .map(({ question }) => question)
        .join(" ")}${left > 4 ? " --all has the rest." : ""}\n`,
    );
  }
}

function basisText({ job }: AboutOptions, { shade, len }: AskedShade): string {
  const size = `${len(shade.size.finishedWidthMm)} × ${len(shade.size.finishedLengthMm)}`;
  return job === undefined
    ? `For a shade of ${size} over a cord lock; type your own numbers, as --width and --length, or --job FILE.`
    : `For ${plainLine(shade.windowName)}, ${size}.`;
}

function cardText(
  { question }: QuestionCard,
  { text, figures, reason, cite }: CardAnswer,
  columns: number,
): string {
  const wrap = (line: string, hang = "  ") => wrapped(line, columns - 4, hang);
  return [
    question,
    wrap(`  ${text}`),
    ...figures.map((figure) => wrap(`    ${figure.label}: ${figure.text}`, "      ")),
    wrap(`  Why: ${reason}`),
    wrap(`  Source: ${citeText(cite)}`),
  ].join("\n");
}
