import { expect, test } from "vitest";
import { readPanelList } from "../../src/intake/readPanelList";

test("a schedule with titles, in any order", () => {
  const { panels, problems } = readPanelList(
    [
      "Bus\tPanel\tDuty\tDescription\tIn A\tBreaker",
      "Bus A\t=H01\tIncoming\tIncomer 1\t2000\tVacuum",
      "\t=H02\tOutgoing\tPumps\t630\tSF6",
      "\t=H03\tVT\tMeasuring\t\t-",
      "Bus B\t=H04\tBus tie\t\t2000\tvacuum",
    ].join("\n"),
  );
  expect(problems).toEqual([]);
  expect(panels).toEqual([
    {
      designation: "=H01",
      name: "Incomer 1",
      type: "incomer",
      section: "Bus A",
      breaker: { medium: "vacuum", ratedA: 2000 },
    },
    {
      designation: "=H02",
      name: "Pumps",
      type: "feeder",
      section: "Bus A",
      breaker: { medium: "SF6", ratedA: 630 },
    },
    { designation: "=H03", name: "Measuring", type: "metering", section: "Bus A" },
    {
      designation: "=H04",
      type: "bus coupler",
      section: "Bus B",
      breaker: { medium: "vacuum", ratedA: 2000 },
    },
  ]);
});

test("a list without titles stands in the stated order", () => {
  expect(readPanelList("K1;Incomer 1;incomer;A;vacuum;1,6 kA\nK2").panels).toEqual([
    {
      designation: "K1",
      name: "Incomer 1",
      type: "incomer",
      section: "A",
      breaker: { medium: "vacuum", ratedA: 1600 },
    },
    { designation: "K2", type: "feeder", section: "A" },
  ]);
});

test("lines that are no panel are said with their number, and what would be right", () => {
  const { panels, problems } = readPanelList(
    "Panel,Type,Breaker,Rated A\n=H01,windmill,,\n=H02,feeder,oil,630\n=H03,feeder,vacuum,lots\n,feeder,,\n=H05,feeder,,",
  );
  expect(panels.map(({ designation }) => designation)).toEqual(["=H05"]);
  expect(problems.map(({ line, message }) => `${line}: ${message}`)).toEqual([
    expect.stringMatching(/^2: Unknown type of panel "windmill"; use one of incomer, /),
    expect.stringMatching(/^3: Unknown breaker medium "oil"; use vacuum or SF6/),
    expect.stringMatching(/^4: rated current of the breaker: "lots" is not a reading/),
    expect.stringMatching(/^5: no designation/),
  ]);
});

test("a list whose titles name no panel is refused", () => {
  expect(readPanelList("Type\tSection\nfeeder\tBus A").problems).toEqual([
    {
      line: 1,
      message: 'no column is titled "Panel"; give the column of designations that title',
    },
  ]);
});
