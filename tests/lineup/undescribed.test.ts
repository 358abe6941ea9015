import { expect, test } from "vitest";
import { undescribed } from "../../src/lineup/undescribed";

// What a panel of a type has is common practice, no source.
test("a feeder without its transformers, relay and cable lacks them; a riser lacks nothing", () => {
  const breaker = { designation: "Q0", medium: "vacuum", ratedA: 630 };
  expect(undescribed({ type: "feeder", breaker, currentTransformers: [] })).toEqual([
    "currentTransformers",
    "protection",
    "cables",
  ]);
  const core = [{ name: "TA1" }];
  const whole = { breaker, currentTransformers: core, protection: [{}], cables: [{}] };
  expect(undescribed({ type: "main", ...whole })).toEqual([]);
  expect(undescribed({ type: "tie", currentTransformers: core })).toEqual(["breaker"]);
  expect(undescribed({ type: "riser" })).toEqual([]);
  expect(undescribed({ type: "metering", breaker })).toEqual(["voltageTransformers"]);
  expect(undescribed({ type: "" })).toEqual([]);
});
