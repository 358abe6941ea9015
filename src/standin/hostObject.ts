/** What the host answers when it cannot do what was asked. */
export class HostError extends Error {
  override name = "HostError";
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

export const notFound = (): HostError =>
  new HostError("ItemNotFound", "The requested resource doesn't exist.");
export const badArgument = (why: string): HostError =>
  new HostError(
    "InvalidArgument",
    `The argument is invalid or missing or has an incorrect format: ${why}`,
  );
export const denied = (what: string): HostError =>
  new HostError(
    "AccessDenied",
    `You cannot perform the requested operation: ${what} is protected.`,
  );

type Members<F> = Readonly<Record<string, F>>;

/**
 * One object of the host's object model, its members by the names of the published interface. What is
 * not listed does not exist, and is refused by name.
 */
export interface HostObject {
  readonly type: string;
  /** By which later batches address it. */
  readonly id?: string;
  /** What is done when the client begins to keep it beyond a batch: a range then moves with its cells. */
  readonly keep?: () => void;
  /** Whether what it stands for was taken out while the client kept it. */
  readonly isGone?: () => boolean;
  readonly get?: Members<() => unknown>;
  readonly set?: Members<(value: unknown) => void>;
  /** Properties that are objects themselves; null where there is none. */
  readonly go?: Members<() => HostObject | null>;
  /** Methods: they give a value, an object, null for no object, or nothing. */
  readonly call?: Members<(...args: never[]) => unknown>;
  /** Members of a collection. */
  readonly items?: () => HostObject[];
  readonly item?: (id: string | number) => HostObject | null;
}

const IS_HOST_OBJECT = Symbol("host object");

/** Marks an object as one of the host's, so that a method's answer is known for one. */
export const hostObject = (object: HostObject): HostObject =>
  Object.assign(object, { [IS_HOST_OBJECT]: true });

export const isHostObject = (value: unknown): value is HostObject =>
  typeof value === "object" && value !== null && IS_HOST_OBJECT in value;

/** A bag of scalar properties, named by their path, that may be read and written and mean nothing more here. */
export function properties(
  names: readonly string[],
  read: (name: string) => unknown,
  write: (name: string, value: unknown) => void,
): Pick<HostObject, "get" | "set"> {
  return {
    get: Object.fromEntries(names.map((name) => [name, () => read(name)])),
    set: Object.fromEntries(names.map((name) => [name, (value: unknown) => write(name, value)])),
  };
}

/** The member of an object by the client's name, which begins with a capital; or a refusal that names it. */
export function member<F>(object: HostObject, members: Members<F> | undefined, sent: string): F {
  const name = sent.charAt(0).toLowerCase() + sent.slice(1);
  const found = members && Object.hasOwn(members, name) ? members[name] : undefined;
  if (found === undefined)
    throw new HostError("ApiNotFound", `the stand-in has no ${object.type}.${name}`);
  return found;
}
