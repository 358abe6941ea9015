import { expect, test } from "vitest";
import { quoted } from "../../src/quantities/quoted";

test("control characters show, long text is cut", () => {
  expect(quoted("a\nb\u0000c d")).toBe('"a·b·c d"');
  expect(quoted("x".repeat(50), 5)).toBe('"xxxxx…"');
});
