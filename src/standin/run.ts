import { HostError, type HostObject, isHostObject, member, notFound } from "./hostObject";

interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly unknown[];
}

interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[]; readonly Top?: number };
}

/** What the client sends in one batch. */
export interface Request {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

/** What the host answers to it. */
export interface Answer {
  Results: { ActionId: number; Value: unknown }[];
  Error?: {
    Code: string;
    Message: string;
    ActionIndex: number;
    HttpStatusCode: number;
    Location: string;
  };
}

/** Objects that the client asked to keep across batches, by reference id. */
export type References = Map<string, HostObject>;

const PATH = { root: 1, method: 3, property: 4, item: 5, reference: 6, nothing: 7 } as const;
const ACTION = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 } as const;

/** A batch while it runs: what its paths were found to be, and which objects are kept beyond it. */
interface Running {
  readonly root: HostObject;
  readonly paths: Request["ObjectPaths"];
  readonly references: References;
  readonly resolved: Map<number, HostObject | null>;
  /** Reference ids given in this batch, by path. */
  readonly kept: Map<number, string>;
}

/**
 * Runs the actions of a batch in order, as the host does: what came before a failing action stays done.
 *
 * @param stopAt index of the action that is not run any more, with the error in its place
 */
export function run(
  root: HostObject,
  { Actions, ObjectPaths }: Request,
  references: References,
  stopAt?: { readonly index: number; readonly error: HostError },
): Answer {
  const running: Running = {
    root,
    paths: ObjectPaths,
    references,
    resolved: new Map(),
    kept: new Map(),
  };
  const Results: Answer["Results"] = [];
  for (const [index, action] of Actions.entries()) {
    try {
      if (stopAt?.index === index) throw stopAt.error;
      Results.push({ ActionId: action.Id, Value: act(running, action) });
    } catch (error) {
      if (!(error instanceof HostError)) throw error;
      return {
        Results,
        Error: {
          Code: error.code,
          Message: error.message,
          ActionIndex: index,
          HttpStatusCode: 400,
          Location: `${running.resolved.get(action.ObjectPathId)?.type ?? ""}.${action.Name}`,
        },
      };
    }
  }
  return { Results };
}

/** The object that a path of the batch leads to, walked once. */
function resolve(running: Running, id: number): HostObject | null {
  const known = running.resolved.get(id);
  if (known !== undefined) return known;
  const path = running.paths[id];
  if (!path) throw new HostError("InvalidObjectPath", `there is no object path ${id}`);
  const object = walk(running, path);
  running.resolved.set(id, object);
  return object;
}

/** The arguments of a call, objects in the place of the paths that name them. */
const argumentsOf = (running: Running, info: ArgumentInfo | undefined): unknown[] =>
  withObjects(running, info?.Arguments ?? [], info?.ReferencedObjectPathIds);

const withObjects = (
  running: Running,
  given: readonly unknown[],
  paths: readonly unknown[] | undefined,
): unknown[] =>
  given.map((argument, index) => {
    const path = paths?.[index];
    if (Array.isArray(path)) return withObjects(running, argument as unknown[], path);
    return typeof path === "number" && path > 0 ? resolve(running, path) : argument;
  });

function walk(running: Running, path: ObjectPath): HostObject | null {
  if (path.ObjectPathType === PATH.root) return running.root;
  if (path.ObjectPathType === PATH.nothing) return null;
  if (path.ObjectPathType === PATH.reference) return referenced(running, path);
  const parent = resolve(running, path.ParentObjectPathId ?? 0);
  return parent && step(running, parent, path);
}

function referenced({ references }: Running, { Name, ArgumentInfo }: ObjectPath): HostObject {
  const object = references.get(Name) ?? references.get(String(ArgumentInfo?.Arguments?.[0]));
  if (!object || object.isGone?.())
    throw new HostError("InvalidReference", "the reference is not valid any more");
  return object;
}

/** One step from an object along its path: to a property, by a method, or to an item. */
function step(running: Running, parent: HostObject, path: ObjectPath): HostObject | null {
  switch (path.ObjectPathType) {
    case PATH.property:
      return member(parent, parent.go, path.Name)();
    case PATH.method:
      return asObject(
        parent,
        path.Name,
        invoke(parent, path.Name, argumentsOf(running, path.ArgumentInfo)),
      );
    case PATH.item: {
      if (!parent.item)
        throw new HostError("ApiNotFound", `the stand-in has no items of ${parent.type}`);
      const object = parent.item(argumentsOf(running, path.ArgumentInfo)[0] as string);
      if (!object) throw notFound();
      return object;
    }
    default:
      throw new HostError(
        "ApiNotFound",
        `the stand-in has no object path of type ${path.ObjectPathType}`,
      );
  }
}

/** Does what an action asks for and gives the value that answers it. */
function act(running: Running, action: Action): unknown {
  if (action.Name === "_RemoveReference") {
    running.references.delete(String(action.ArgumentInfo?.Arguments?.[0]));
    return null;
  }
  const does = ACTS[action.ActionType];
  if (!does)
    throw new HostError("ApiNotFound", `the stand-in has no action of type ${action.ActionType}`);
  return does(running, action);
}

const ACTS: Readonly<Record<number, (running: Running, action: Action) => unknown>> = {
  // A mark of the client's own, by which it knows how far a batch has come.
  [ACTION.trace]: () => null,
  [ACTION.instantiate]: (running, { ObjectPathId }) => {
    const object = resolve(running, ObjectPathId);
    const reference = running.kept.get(ObjectPathId);
    if (!object) return null;
    if (reference) return { _ReferenceId: reference };
    return object.id === undefined ? {} : { _Id: object.id };
  },
  [ACTION.query]: (running, { ObjectPathId, QueryInfo }) => {
    const object = resolve(running, ObjectPathId);
    return object && query(object, QueryInfo);
  },
  [ACTION.method]: (running, { Name, ObjectPathId, ArgumentInfo }) => {
    const object = resolve(running, ObjectPathId);
    if (!object) return null;
    return Name === "_KeepReference"
      ? keep(running, ObjectPathId, object)
      : asValue(invoke(object, Name, argumentsOf(running, ArgumentInfo)));
  },
  [ACTION.set]: (running, { Name, ObjectPathId, ArgumentInfo }) => {
    const object = resolve(running, ObjectPathId);
    if (!object) throw new HostError("InvalidObjectPath", `${Name} is set on no object`);
    member(object, object.set, Name)(argumentsOf(running, ArgumentInfo)[0]);
    return null;
  },
};

let lastReference = 0;

function keep({ references, kept }: Running, path: number, object: HostObject): null {
  lastReference += 1;
  const reference = `r${lastReference}`;
  references.set(reference, object);
  object.keep?.();
  kept.set(path, reference);
  return null;
}

const invoke = (object: HostObject, name: string, args: unknown[]): unknown =>
  (member(object, object.call, name) as (...args: unknown[]) => unknown)(...args);

function asObject(parent: HostObject, name: string, value: unknown): HostObject | null {
  if (value === null || isHostObject(value)) return value;
  throw new HostError("ApiNotFound", `the stand-in's ${parent.type}.${name} gives no object`);
}

const asValue = (value: unknown): unknown => (isHostObject(value) ? null : (value ?? null));

const pascal = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

/** The properties of an object that a load names, in the client's form. */
function query(object: HostObject, info: Action["QueryInfo"]): Record<string, unknown> {
  const wanted = new Map<string, string[]>();
  for (const path of info?.Select ?? []) {
    const [head = "", ...rest] = path.split("/");
    wanted.set(head, [...(wanted.get(head) ?? []), ...(rest.length > 0 ? [rest.join("/")] : [])]);
  }
  if (wanted.size === 0)
    throw new HostError(
      "ApiNotFound",
      `the stand-in loads named properties only, of ${object.type}`,
    );
  if (
    object.items &&
    !(object.get && [...wanted.keys()].every((name) => name in (object.get ?? {})))
  )
    return {
      _Items: object.items().map((item) => ({
        ...(item.id === undefined ? {} : { _Id: item.id }),
        ...query(item, info),
      })),
    };
  return Object.fromEntries(
    [...wanted].map(([name, rest]) => {
      if (rest.length === 0) return [pascal(name), member(object, object.get, name)()];
      const next = member(object, object.go, name)();
      return [pascal(name), next && query(next, { Select: rest })];
    }),
  );
}
