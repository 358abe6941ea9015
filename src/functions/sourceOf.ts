import type { Basis } from "../standards/criterion";
import { type SourceBasis, source } from "./source";

/** What `GEAR.SOURCE` says of a function; without a basis, of both. */
export const sourceOf = (name: string, basis?: Basis): string =>
  String(source([[name]], basis as SourceBasis | undefined).flat()[0] ?? "");
