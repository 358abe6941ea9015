import { type Area, areaAddress } from "../sheets/cells/area";
import { EXCEL_LIMITS } from "../sheets/plan/excelLimits";
import { type EventName, type StandInBook, sheetNamed } from "./book";
import { HostError } from "./hostObject";
import { workbookObject } from "./objects/workbook";
import { type Answer, type References, type Request, run } from "./run";

/** What one batch came to. */
export interface Batch {
  /** UTF-8 bytes of the request and of the answer. */
  readonly up: number;
  readonly down: number;
  readonly actions: number;
  /** Code of the error that it ended with. */
  readonly error?: string;
}

/** A failure to be put into a batch. */
export interface Fault {
  /** Which one, counted from 1. */
  readonly batch: number;
  /**
   * `before`: nothing of the batch is done; `midway`: half of its actions are, or another share of
   * them; `after`: all are, and the answer is lost.
   */
  readonly when: "before" | "midway" | "after";
  readonly share?: number;
  readonly code?: string;
}

/** Excel on the web refuses requests and answers above this many bytes. */
const MAX_BYTES = EXCEL_LIMITS.payloadBytes.most;

/** A running stand-in for Excel: a workbook, and the session that a request context is made over. */
export interface StandInHost {
  readonly book: StandInBook;
  readonly batches: readonly Batch[];
  /** To be given to `Excel.RequestContext` or, as first argument, to `Excel.run`. */
  readonly session: object;
  fault?: Fault;
  /** While true, every batch is refused, as while somebody types in a cell. */
  editing: boolean;
  /** Milliseconds that each batch takes besides. */
  delay: number;
  /** Called before each batch with its number from 1: the place where the user changes something. */
  between?: (batch: number) => void | Promise<void>;
  /** Where the client takes events; it is set by whoever loads the client. */
  hear?: (message: EventMessage) => void;
  /** Tells the client, if it asked for that, that a person changed or selected cells. */
  tell(event: EventName, sheet: string, area: Area): void;
  /** Forgets the batches so far. */
  reset(): void;
}

/** A message of the host, in the client's form. */
export interface EventMessage {
  readonly entries: readonly {
    readonly messageCategory: number;
    readonly messageType: number;
    readonly targetId: string;
    readonly message: string;
  }[];
}

/** The client's number for messages that are events, and for each event. */
const EVENTS = 65536;
const EVENT: Readonly<Record<EventName, number>> = { changed: 10, selectionChanged: 14 };

const bytes = (text: string): number => new TextEncoder().encode(text).length;

const refused = (ErrorCode: string, ErrorMessage: string) => ({
  down: 0,
  told: { ErrorCode, ErrorMessage, Headers: {}, Body: null },
});

/** An answer as it reaches the client, or refused where it is too large. */
const sent = (answer: Answer) => {
  const text = JSON.stringify(answer);
  const down = bytes(text);
  if (down > MAX_BYTES)
    return refused("ResponsePayloadSizeLimitExceeded", `the answer has ${down} bytes`);
  const Body = JSON.parse(text) as Answer;
  return { down, told: { ErrorCode: "", ErrorMessage: "", Headers: {}, Body } };
};

/**
 * @param calculate works out the formulas after a batch that changed cells
 */
export function standIn(
  book: StandInBook,
  calculate: (book: StandInBook) => void = () => {},
): StandInHost {
  const batches: Batch[] = [];
  const references: References = new Map();

  const host: StandInHost = {
    book,
    batches,
    editing: false,
    delay: 0,
    reset: () => {
      batches.length = 0;
    },
    tell: (event, sheet, area) => {
      if (!book.listening.has(event)) return;
      const message = JSON.stringify({
        worksheetId: sheetNamed(book, sheet).id,
        address: areaAddress(area),
        ...(event === "changed" ? { changeType: "RangeEdited", source: "Local" } : {}),
      });
      host.hear?.({
        entries: [
          { messageCategory: EVENTS, messageType: EVENT[event], targetId: "Workbook", message },
        ],
      });
    },
    session: {
      _resolveRequestUrlAndHeaderInfo: () =>
        Promise.resolve({ url: "https://stand-in.invalid/", headers: {} }),
      _createRequestExecutorOrNull: () => ({
        executeAsync: async (_data: unknown, _flags: number, { Body }: { Body: Request }) => {
          if (host.delay > 0) await new Promise((resolve) => setTimeout(resolve, host.delay));
          return execute(Body);
        },
      }),
    },
  };

  const execute = async (body: Request) => {
    const request = JSON.stringify(body);
    const up = bytes(request);
    const begun = batches.length + 1;
    await host.between?.(begun);
    // Another pane may have been at work meanwhile.
    const number = batches.length + 1;
    const fault = host.fault?.batch === number ? host.fault : undefined;
    const answer = answered(body, request, up, fault);
    const { ErrorCode, Body } = answer.told;
    const error = ErrorCode || Body?.Error?.Code;
    batches.push({
      up,
      down: answer.down,
      actions: body.Actions.length,
      ...(error ? { error } : {}),
    });
    return answer.told;
  };

  /** What the host answers to a batch, and how many bytes the answer has. */
  const answered = (body: Request, request: string, up: number, fault: Fault | undefined) => {
    if (up > MAX_BYTES)
      return refused("RequestPayloadSizeLimitExceeded", `the request has ${up} bytes`);
    if (host.editing)
      return refused("InvalidOperationInCellEditMode", "Excel is in cell-editing mode.");
    const error = new HostError(fault?.code ?? "GeneralException", "a failure put in by the test");
    if (fault?.when === "before") return refused(error.code, error.message);
    const index = Math.floor(body.Actions.length * (fault?.share ?? 0.5));
    const stopAt = fault?.when === "midway" ? { index, error } : undefined;
    const work = () => {
      calculate(book);
      book.dirty = false;
    };
    const root = workbookObject(book, work);
    const answer = run(root, JSON.parse(request) as Request, references, stopAt);
    if (book.dirty && !book.isManual) work();
    if (fault?.when === "after") return refused(error.code, error.message);
    return sent(answer);
  };

  return host;
}
