import { expect, test } from "vitest";
import { howMany } from "../../src/quantities/howMany";

test.each([
  [0, "0 rows"],
  [1, "1 row"],
  [2, "2 rows"],
  [1000, "1000 rows"],
])("%i", (count, words) => {
  expect(howMany(count, "row")).toBe(words);
});
