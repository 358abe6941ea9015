import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { extname, join, normalize } from "node:path";

const TYPES: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/**
 * Serves a folder on this machine alone. Gives the server once it listens.
 *
 * @param port 0 for any that is free
 */
export function serve(folder: string, port: number): Promise<{ server: Server; address: string }> {
  const server = createServer(({ url = "/" }, response) => {
    const path = normalize(decodeURIComponent(new URL(url, "http://localhost").pathname));
    const file = join(folder, path === "/" ? "index.html" : path);
    if (!file.startsWith(normalize(folder)) || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      "content-type": TYPES[extname(file)] ?? "application/octet-stream",
      "cache-control": "no-store",
    });
    createReadStream(file).pipe(response);
  });
  return new Promise((listening, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", () => {
      const at = server.address();
      listening({
        server,
        address: `http://localhost:${typeof at === "object" && at ? at.port : port}/`,
      });
    });
  });
}
