import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import type { Report } from "../check/check";
import type { Messages } from "../messages/messages";
import { withoutUnseen } from "../quantities/shown";
import type { Earlier } from "./ChangesSince";
import { Page } from "./Page";
import { TextContext } from "./text";

/** One self-contained page for the check of one workbook. */
export const reportHtml = (
  file: string,
  made: string,
  report: Report,
  text: Messages,
  earlier?: Earlier,
): string => {
  const page = createElement(Page, { file, made, report, earlier });
  return `<!doctype html>\n${withoutUnseen(renderToStaticMarkup(createElement(TextContext, { value: text }, page)))}\n`;
};
