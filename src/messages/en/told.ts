import { reasons } from "./reasons";
import { book } from "./told/book";
import { excel } from "./told/excel";
import { files } from "./told/files";
import { intake } from "./told/intake";
import { lineup } from "./told/lineup";
import { records } from "./told/records";

/** What the rooms below the hosts tell people: why something is refused, and how a thing is known. */
export const told = { ...reasons, book, excel, files, intake, lineup, records };
