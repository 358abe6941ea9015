import { type CustomXmlPart, newId, type StandInBook } from "../book";
import { badArgument, type HostObject, hostObject } from "../hostObject";

const namespaceOf = (xml: string): string => / xmlns(?::\w+)?="([^"]*)"/.exec(xml)?.[1] ?? "";

/** The custom XML parts of a workbook, all or those of one namespace. */
export function customXmlParts(book: StandInBook, namespace?: string): HostObject {
  const here = () =>
    book.parts.filter(({ xml }) => namespace === undefined || namespaceOf(xml) === namespace);
  return hostObject({
    type: namespace === undefined ? "CustomXmlPartCollection" : "CustomXmlPartScopedCollection",
    items: () => here().map((part) => partObject(book, part)),
    item: (id) => {
      const part = here().find((part) => part.id === id);
      return part ? partObject(book, part) : null;
    },
    call:
      namespace === undefined
        ? {
            getByNamespace: (wanted: string) => customXmlParts(book, wanted),
            add: (xml: string) => {
              const part = { id: newId(book), xml: wellFormed(xml) };
              book.parts.push(part);
              book.dirty = true;
              return partObject(book, part);
            },
          }
        : {},
  });
}

function wellFormed(xml: string): string {
  if (!/^(<\?xml[^>]*\?>\s*)?<([\w:]+)[\s\S]*(<\/\2>|\/>)\s*$/.test(xml))
    throw badArgument("the text is no XML");
  return xml;
}

const partObject = (book: StandInBook, part: CustomXmlPart): HostObject =>
  hostObject({
    type: "CustomXmlPart",
    id: part.id,
    get: { id: () => part.id, namespaceUri: () => namespaceOf(part.xml) },
    call: {
      getXml: () => part.xml,
      setXml: (xml: string) => {
        part.xml = wellFormed(xml);
        book.dirty = true;
      },
      delete: () => {
        book.parts = book.parts.filter((other) => other !== part);
      },
    },
  });
