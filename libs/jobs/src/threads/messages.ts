/** What goes to a thread. Input and answers are plain values: they are copied. */
export interface TaskMessage {
  readonly task: string;
  readonly input: unknown;
}

/** Said by a task while it is under way. */
export interface ProgressMessage {
  readonly progress: unknown;
}

/** What comes back: an answer, an expected refusal in its parts, or the words of an unexpected error. */
export type AnswerMessage =
  | { readonly answer: unknown }
  | {
      readonly refused: {
        readonly code: string;
        readonly message: string;
        readonly details: Readonly<Record<string, unknown>>;
      };
    }
  | { readonly failed: string };
