import type { EventMessage, StandInHost } from "../host";
import type { Request } from "../run";

/**
 * The few globals of Office that the add-in's page finds in Excel. `Excel` itself is the genuine client;
 * it is only given the stand-in's session.
 */
export function installOffice(
  host: StandInHost,
  ready: Promise<void>,
  settled: () => Promise<void>,
  after: () => void,
  file: () => Uint8Array,
): void {
  const page = window as unknown as Record<string, unknown>;
  const { Excel, OfficeExtension } = window as unknown as {
    Excel: { run: (...args: unknown[]) => Promise<unknown> };
    OfficeExtension: {
      _testSetRichApiMessageReadyImpl(ready: () => Promise<void>): void;
      _testTriggerRichApiMessageEvent(message: EventMessage): void;
    };
  };
  OfficeExtension._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  host.hear = OfficeExtension._testTriggerRichApiMessageEvent;
  const genuine = Excel.run.bind(Excel);
  const session = {
    ...host.session,
    _createRequestExecutorOrNull: () => {
      const inner = (
        host.session as {
          _createRequestExecutorOrNull(): { executeAsync(...args: unknown[]): Promise<unknown> };
        }
      )._createRequestExecutorOrNull();
      return {
        executeAsync: async (...args: unknown[]) => {
          if (asksForValues(args)) await settled();
          const answer = await inner.executeAsync(...args);
          after();
          return answer;
        },
      };
    },
  };
  Excel.run = (work) => genuine(session, work);
  const asked = new URLSearchParams(location.search);
  page.Office = {
    context: {
      displayLanguage: asked.get("language") ?? navigator.language,
      requirements: { isSetSupported: () => true },
      document: documentOf(file),
    },
    HostType: { Excel: "Excel" },
    VisibilityMode: { taskpane: "Taskpane" },
    addin: { onVisibilityModeChanged: async () => {} },
    onReady: async (call: (info: { host: string }) => unknown) => {
      await ready;
      return call({ host: "Excel" });
    },
  };
}

/** The open workbook, which Excel hands out as a file; here in a single slice. */
export const documentOf = (file: () => Uint8Array) => ({
  url: "bench.xlsx",
  getFileAsync: (_type: string, _options: object, done: (result: object) => void) => {
    const data = file();
    const slice = { index: 0, size: data.length, data };
    const succeeded = (value: unknown) => ({ status: "succeeded", value });
    done(
      succeeded({
        size: data.length,
        sliceCount: 1,
        getSliceAsync: (_index: number, told: (result: object) => void) => told(succeeded(slice)),
        closeAsync: () => {},
      }),
    );
  },
});

/** Whether a batch asks for what cells hold, so that formulas must have been computed before it. */
const asksForValues = ([, , sent]: unknown[]) =>
  (sent as { Body: Request }).Body.Actions.some(({ QueryInfo }) =>
    QueryInfo?.Select?.some((path) => /(^|\/)(values|text)$/i.test(path)),
  );

class FunctionError extends Error {
  constructor(
    readonly code: string,
    override readonly message: string,
  ) {
    super(message);
  }
}

/** `CustomFunctions`, to which the functions bundle binds its functions, passed on to the grid. */
export function installCustomFunctions(
  register: (name: string, implementation: (...args: unknown[]) => unknown) => void,
): void {
  const errorCodes = {
    invalidValue: "#VALUE!",
    notAvailable: "#N/A",
    invalidNumber: "#NUM!",
    divisionByZero: "#DIV/0!",
    invalidName: "#NAME?",
    nullReference: "#NULL!",
    invalidReference: "#REF!",
  };
  (window as unknown as Record<string, unknown>).CustomFunctions = {
    ErrorCode: errorCodes,
    Error: FunctionError,
    associate: (id: string, implementation: (...args: unknown[]) => unknown) =>
      register(`GEAR.${id}`, (...args) => asGrid(() => implementation(...args.map(asMatrix)))),
  };
}

/** A range parameter arrives in Excel as rows of cells, a single cell or constant as one row of one. */
const asMatrix = (given: unknown) =>
  Array.isArray(given) || given === undefined ? given : [[given]];

/** What a function gives, as the grid takes it: errors by their sign, a single cell as such. */
function asGrid(run: () => unknown): unknown {
  const cell = (value: unknown) => (value instanceof FunctionError ? value.code : (value ?? ""));
  try {
    const given = run();
    if (!Array.isArray(given)) return cell(given);
    const rows = given.map((row: unknown[]) => row.map(cell));
    return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : rows;
  } catch (error) {
    if (error instanceof FunctionError) return error.code;
    throw error;
  }
}
