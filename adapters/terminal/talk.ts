/** One talk over a terminal: lines in, in order, answers out; what can be chosen, and the form being filled in. */
import type { Message } from "../../src/message.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import type { Core, Reply } from "../adapter.ts";
import { type Drawn, withFiles } from "../drawn.ts";
import { beginForm, fillIn, type FormTalk, formQuestion } from "../forms.ts";
import { type FormPiece, labels, type Options } from "../outline.ts";
import { plain } from "../plain.ts";
import { firstNumber, type Open, parse } from "./parse.ts";
import { pictureNamed, readPicture } from "./picture.ts";
import { renderFormQuestion, renderNote, renderTerminal } from "./render.ts";
import type { Writer } from "./send.ts";

interface Line {
  readonly number: number;
  readonly words: string;
  readonly event: Omit<Message, "text">;
  /** undefined until looked for danger */
  urgent?: Reply | null;
}

export interface Talk {
  take(words: string): void;
  /** an answer that nothing typed asked for */
  show(reply: Pick<Reply, "answer" | "reader">, maybe_repeat: boolean): Promise<void>;
  say(id: string): void;
  readonly label: ReturnType<typeof labels>;
  readonly filling: () => boolean;
  /** resolves when every line taken so far is answered */
  readonly idle: () => Promise<void>;
}

export interface TalkOptions {
  readonly core: Core;
  readonly out: Writer;
  readonly render: Renderer;
  readonly reader: Reader;
  readonly event: (number: number) => Omit<Message, "text">;
  readonly keepFile?: Options["keepFile"];
  readonly draw?: Drawn;
  /** how long a line may keep later ones from being looked at for danger; 0 looks as soon as a line comes */
  readonly patience_ms: number;
  readonly onError: (error: unknown) => void;
}

export function talk({ core, out, render, event, patience_ms, onError, ...options }: TalkOptions): Talk {
  let reader = options.reader;
  let open: readonly Open[] = [];
  let form: FormTalk | null = null;
  /** a form that danger broke off: goes on where it was when it is chosen again */
  let paused: FormTalk | null = null;
  let count = 0;
  let stalled = patience_ms === 0;
  let running: Promise<void> | null = null;
  const waiting: Line[] = [];

  const label: Talk["label"] = (id, args) => labels({ render, reader })(id, args);
  const note = (words: string): void => out.write(renderNote(words, out.screen()));

  /** An answer to line `asked` closes the questions before that line: all of them in an emergency, else those of live answers stay. */
  function show(reply: Pick<Reply, "answer" | "reader">, asked: number | null, maybe_repeat = false): void {
    const { answer } = reply;
    reader = reply.reader;
    const kept = open.filter((one) => asked === null || one.after >= asked || (one.live !== undefined && !answer.emergency));
    const shown = renderTerminal(answer, { render, reader, maybe_repeat, first_number: firstNumber(kept, answer), ...(options.keepFile ? { keepFile: options.keepFile } : {}) }, out.screen());
    out.write(shown.lines, answer.live);
    open = kept.filter((one) => one.live === undefined || one.live !== answer.live);
    if (shown.outline.numbered.length > 0)
      open = [...open, { after: asked ?? count, outline: shown.outline, ...(answer.live ? { live: answer.live } : {}) }];
  }

  const drawn = async ({ answer, reader: to }: Pick<Reply, "answer" | "reader">): Promise<Pick<Reply, "answer" | "reader">> =>
    ({ answer: await withFiles(answer, to, options.draw, onError), reader: to });

  function look(line: Line): Reply | null {
    if (line.urgent === undefined) {
      line.urgent = line.words === "" ? null : core.emergency({ ...line.event, text: line.words });
      if (line.urgent) show(line.urgent, line.number);
    }
    return line.urgent;
  }

  async function receive(message: Message, line: Line): Promise<void> {
    const { urgent } = line;
    try {
      const reply = await core.receive(urgent ? { ...message, emergency_answered: urgent.answer.topic } : message);
      if (!(urgent && reply.answer.emergency && reply.answer.topic === urgent.answer.topic)) show(await drawn(reply), line.number);
    } catch (error) {
      onError(error);
      if (!urgent) note(label("failed"));
    }
  }

  function askForm(next: FormTalk): void {
    form = next;
    const question = formQuestion(next, label);
    if (question) out.write(renderFormQuestion(question, label, out.screen()));
  }

  async function answerForm(current: FormTalk, line: Line): Promise<void> {
    const step = fillIn(current, line.words, label);
    if (step.step === "wrong") note(step.sentence);
    if (step.step !== "done") return askForm(step.talk);
    form = null;
    paused = null;
    if (Object.keys(step.values).length === 0) return note(label("form-empty"));
    await receive({ ...line.event, form: { id: step.id, values: step.values } }, line);
  }

  const formOf = (id: string): FormPiece | undefined => open.flatMap((one) => one.outline.forms).find((one) => one.id === id);

  async function work(line: Line): Promise<void> {
    const message: Message = { ...line.event, text: line.words };
    if (look(line)) {
      paused = form ?? paused;
      form = null;
      return receive(message, line);
    }
    if (form) return answerForm(form, line);
    if (line.words === "") return;
    const named = pictureNamed(line.words);
    if (named) return receive({ ...message, text: named.words, ...(await readPicture(named)) }, line);
    const typed = parse(
      line.words,
      open.filter((one) => one.after < line.number).flatMap((one) => one.outline.numbered),
    );
    const wanted = typed.means === "form" ? formOf(typed.id) : undefined;
    if (wanted) return askForm(paused?.form.id === wanted.id ? { ...paused, form: wanted } : beginForm(wanted));
    await receive(typed.means === "choice" ? { ...line.event, choice: typed.choice } : message, line);
  }

  async function run(): Promise<void> {
    for (let line = waiting.shift(); line; line = waiting.shift()) {
      const patience = setTimeout(() => {
        stalled = true;
        waiting.forEach(look);
      }, patience_ms);
      await work(line).catch(onError);
      clearTimeout(patience);
      stalled = patience_ms === 0;
      if (waiting.length === 0) out.prompt();
    }
    running = null;
  }

  return {
    take(words) {
      count += 1;
      const line: Line = { number: count, words: plain(words), event: event(count) };
      waiting.push(line);
      if (stalled) look(line);
      running ??= run();
    },
    show: async (reply, maybe_repeat) => show(await drawn(reply), null, maybe_repeat),
    say: (id) => note(label(id)),
    label,
    filling: () => form !== null,
    idle: async () => {
      await running;
    },
  };
}
