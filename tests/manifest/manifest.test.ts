import { existsSync, readFileSync } from "node:fs";
import { OfficeAddinManifest } from "office-addin-manifest";
import { expect, test } from "vitest";

/**
 * The manifest, checked without Microsoft's online service: read by the office-addin-manifest package,
 * and held against the published rules of the add-in only XML schema (order of elements, lengths of
 * strings, sizes of icons), set down from its documentation.
 */

const xml = readFileSync("manifest.xml", "utf8");
const all = (pattern: RegExp, text = xml): string[] =>
  [...text.matchAll(pattern)].map(([, found]) => found ?? "");

test("the office-addin-manifest package reads it", async () => {
  const info = await OfficeAddinManifest.readManifestFile("manifest.xml");
  expect(info).toMatchObject({
    displayName: "Gearproof",
    officeAppType: "TaskPaneApp",
    hosts: ["Workbook"],
    permissions: "ReadWriteDocument",
    version: "0.1.0.0",
  });
  expect(info.id).toMatch(/^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/);
});

test("top-level elements stand in the schema's order", () => {
  const order = [
    "Id",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ];
  expect(all(/^ {2}<([A-Za-z]+)/gm)).toEqual(order);
});

test("runtime, functions and ribbon stand in the order of VersionOverrides", () => {
  const places = [
    "<Runtimes>",
    "<AllFormFactors>",
    'xsi:type="CustomFunctions"',
    "<Script>",
    "<Page>",
    "<Metadata>",
    "<Namespace",
    "<DesktopFormFactor>",
    "<GetStarted>",
    "<FunctionFile",
    'xsi:type="PrimaryCommandSurface"',
    "<bt:Images>",
    "<bt:Urls>",
    "<bt:ShortStrings>",
    "<bt:LongStrings>",
  ].map((text) => xml.indexOf(text));
  expect(places.every((at) => at > 0)).toBe(true);
  expect(places).toEqual([...places].sort((one, other) => one - other));
});

test("pane and functions share one long-lived runtime: the runtime's page is the pane's", () => {
  expect(xml).toMatch(/<Runtime resid="Pane\.Url" lifetime="long"\/>/);
  expect(
    all(/<(?:FunctionFile|SourceLocation) resid="([^"]+)"/g).filter((id) => id === "Pane.Url"),
  ).toHaveLength(3);
  expect(xml).toContain('<Set Name="SharedRuntime" MinVersion="1.1"/>');
});

test("every resource that is named is given, and every one given is used", () => {
  const named = new Set(all(/resid="([^"]+)"/g));
  const given = all(/<bt:(?:Image|Url|String) id="([^"]+)"/g);
  expect([...named].sort()).toEqual([...given].sort());
  for (const id of given) expect(id.length).toBeLessThanOrEqual(32);
});

test("strings keep the published lengths", () => {
  for (const [, text = ""] of xml.matchAll(/<bt:ShortStrings>([\s\S]*?)<\/bt:ShortStrings>/g))
    for (const value of all(/DefaultValue="([^"]*)"/g, text))
      expect(value.length).toBeLessThanOrEqual(125);
  for (const [, text = ""] of xml.matchAll(/<bt:LongStrings>([\s\S]*?)<\/bt:LongStrings>/g))
    for (const value of all(/DefaultValue="([^"]*)"/g, text))
      expect(value.length).toBeLessThanOrEqual(250);
  expect(/<Description DefaultValue="([^"]*)"/.exec(xml)?.[1]?.length).toBeLessThanOrEqual(250);
});

test("addresses are https, on one site", () => {
  const sites = new Set(all(/DefaultValue="(\w+:\/\/[^/"]+)/g));
  expect([...sites]).toEqual(["https://localhost:3000"]);
});

test("icons are there in their sizes", () => {
  for (const size of [16, 32, 64, 80, 128]) {
    const file = `src/pane/icons/icon-${size}.png`;
    expect(existsSync(file)).toBe(true);
    const bytes = readFileSync(file);
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([size, size]);
  }
  for (const size of [16, 32, 80])
    expect(all(new RegExp(`<bt:Image size="${size}" resid="(Icon\\.${size})"`, "g"))).toHaveLength(
      2,
    );
});
