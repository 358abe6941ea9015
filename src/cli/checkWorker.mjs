// Starts a worker of the check from its TypeScript sources.
import { register } from "tsx/esm/api";

register();
await import("./checkWorker.ts");
