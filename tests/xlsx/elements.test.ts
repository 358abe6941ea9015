import { expect, test } from "vitest";
import { elementsOf } from "../../src/xlsx/elements";

const names = (xml: string): unknown =>
  elementsOf(xml).map(function told({ name, children }): unknown {
    return children.length === 0 ? name : [name, ...children.map(told)];
  });

test("elements in elements, by their names without prefix", () => {
  expect(elementsOf('<a x="1"><b/></a>')[0]?.children[0]?.name).toBe("b");
  expect(names('<?xml version="1.0"?><x:a><!-- <no/> --><b t="1 > 0">text</b><c/></x:a>')).toEqual([
    ["a", "b", "c"],
  ]);
});

test("attributes as they are meant; an element that says nothing is empty", () => {
  const [a] = elementsOf("<a n='R &amp; D' r:id=\"rId1\"><b/><c></c><d> x </d></a>");
  expect(a?.attributes.get("n")).toBe("R & D");
  expect(a?.attributes.get("r:id")).toBe("rId1");
  expect(a?.children.map(({ empty }) => empty)).toEqual([true, true, false]);
});

test("a name with a character reference is the name that is meant", () => {
  expect(elementsOf('<sheet name="Pr&#252;fung &#x26; Co"/>')[0]?.attributes.get("name")).toBe(
    "Prüfung & Co",
  );
});

test("of damaged XML the elements before the damage", () => {
  expect(names("<a><b><c></a><d/>")).toEqual([["a", ["b", "c"]]]);
});
