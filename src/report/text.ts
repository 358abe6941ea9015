import { createContext, useContext } from "react";
import { type Messages, messagesFor } from "../messages/messages";

/** The texts of the user's language, handed down to every part of the pane. */
export const TextContext = createContext<Messages>(messagesFor("en"));
export const useText = (): Messages => useContext(TextContext);
