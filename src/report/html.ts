import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import type { Report } from "../check/check";
import { type Earlier, Page } from "./Page";

/** One self-contained page for the check of one workbook. */
export const reportHtml = (file: string, made: string, report: Report, earlier?: Earlier): string =>
  `<!doctype html>\n${renderToStaticMarkup(createElement(Page, { file, made, report, earlier }))}\n`;
