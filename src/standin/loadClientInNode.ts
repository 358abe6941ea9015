import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { createContext, runInContext } from "node:vm";
import type { EventMessage, StandInHost } from "./host";

/** What the genuine client offers, as far as it is used here. */
export interface Client {
  /** Runs a piece of work in a request context over the stand-in. */
  run<T>(host: StandInHost, work: (context: Excel.RequestContext) => Promise<T>): Promise<T>;
  /** A context whose objects do not outlive a batch. */
  context(host: StandInHost): Excel.RequestContext;
}

interface Globals {
  OfficeExtension: {
    BatchApiHelper: {
      createPropertyObject(
        type: unknown,
        parent: object,
        name: string,
        isCollection: boolean,
        flags: number,
      ): object;
    };
    _testSetRichApiMessageReadyImpl(ready: () => Promise<void>): void;
    _testTriggerRichApiMessageEvent(message: EventMessage): void;
  };
  Excel: {
    run<T>(session: object, work: (context: Excel.RequestContext) => Promise<T>): Promise<T>;
    RequestContext: new (session: object) => Excel.RequestContext;
    CommentCollection: unknown;
    Worksheet: { prototype: object };
  };
}

let loaded: Client | undefined;

/** Loads the client that Excel itself uses, in a context of its own with the usual browser globals. */
export function loadClient(): Client {
  loaded ??= load();
  return loaded;
}

function load(): Client {
  const file = createRequire(import.meta.url).resolve(
    "@microsoft/office-js/dist/excel-web-16.00.debug.js",
  );
  const storage = { getItem: () => null, setItem: () => {}, removeItem: () => {} };
  const location = {
    href: "https://localhost/",
    protocol: "https:",
    host: "localhost",
    search: "",
    hash: "",
  };
  const globals: Record<string, unknown> = {
    location,
    document: {
      URL: location.href,
      location,
      getElementsByTagName: () => [],
      createElement: () => ({}),
      addEventListener: () => {},
    },
    navigator: { userAgent: "node" },
    sessionStorage: storage,
    localStorage: storage,
    addEventListener: () => {},
    console,
    performance,
    setTimeout,
    clearTimeout,
    Promise,
  };
  globals.window = globals;
  globals.self = globals;
  const context = createContext(globals);
  runInContext(readFileSync(file, "utf8"), context, { filename: "excel-web-16.00.debug.js" });
  const { Excel, OfficeExtension } = context as unknown as Globals;
  // The published client of this version has no notes yet (ExcelApi 1.18): they are asked for as its comments are.
  Object.defineProperty(Excel.Worksheet.prototype, "notes", {
    get(this: object) {
      const { createPropertyObject } = OfficeExtension.BatchApiHelper;
      return createPropertyObject(Excel.CommentCollection, this, "Notes", true, 4);
    },
  });
  OfficeExtension._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  return {
    run: (host, work) => {
      host.hear = OfficeExtension._testTriggerRichApiMessageEvent;
      return Excel.run(host.session, work);
    },
    context: ({ session }) => new Excel.RequestContext(session),
  };
}
