import { messagesFor } from "../messages/messages";

/**
 * Starts with the shared runtime. The worksheet functions are registered by their own script before
 * this one; the pane itself loads only when it is shown.
 */
Office.onReady(async ({ host }) => {
  const element = document.getElementById("pane");
  if (!element) return;
  if (host !== Office.HostType.Excel) {
    element.textContent = messagesFor(Office.context?.displayLanguage ?? "en").noExcel;
    return;
  }
  let shown = false;
  const show = async () => {
    if (shown) return;
    shown = true;
    (await import("./show")).show(element);
  };
  if (document.visibilityState === "visible") await show();
  else
    await Office.addin.onVisibilityModeChanged(({ visibilityMode }) => {
      if (visibilityMode === Office.VisibilityMode.taskpane) void show();
    });
});
