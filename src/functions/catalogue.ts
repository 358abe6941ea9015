import { absorption } from "./absorption";
import { airfactor } from "./airfactor";
import { altitudefactor } from "./altitudefactor";
import { bolttorque } from "./bolttorque";
import { burden } from "./burden";
import { cabletest } from "./cabletest";
import { coillimit } from "./coillimit";
import { contactcorrect } from "./contactcorrect";
import { ctlimit } from "./ctlimit";
import { curvetime } from "./curvetime";
import { dewmargin } from "./dewmargin";
import { dewpoint } from "./dewpoint";
import { doubtful } from "./doubtful";
import { earthresistance } from "./earthresistance";
import { exciting } from "./exciting";
import { gaspressure } from "./gaspressure";
import { inrange } from "./inrange";
import { ircorrect } from "./ircorrect";
import { irfactor } from "./irfactor";
import { irminimum } from "./irminimum";
import { irtestvoltage } from "./irtestvoltage";
import { judge } from "./judge";
import { kneepoint } from "./kneepoint";
import { limitfactor } from "./limitfactor";
import { megohms } from "./megohms";
import { polarization } from "./polarization";
import { quantity } from "./quantity";
import { ratioerror } from "./ratioerror";
import { source } from "./source";
import { spread } from "./spread";
import { timespread } from "./timespread";
import { vtlimit } from "./vtlimit";
import { withstand } from "./withstand";

/** Every worksheet function by its name: for the bench, the CLI and the tests. */
export const functions: Readonly<Record<string, (...args: never[]) => unknown>> = {
  ABSORPTION: absorption,
  AIRFACTOR: airfactor,
  ALTITUDEFACTOR: altitudefactor,
  BOLTTORQUE: bolttorque,
  BURDEN: burden,
  CABLETEST: cabletest,
  COILLIMIT: coillimit,
  CONTACTCORRECT: contactcorrect,
  CTLIMIT: ctlimit,
  CURVETIME: curvetime,
  DEWMARGIN: dewmargin,
  DEWPOINT: dewpoint,
  DOUBTFUL: doubtful,
  EARTHRESISTANCE: earthresistance,
  EXCITING: exciting,
  GASPRESSURE: gaspressure,
  INRANGE: inrange,
  IRCORRECT: ircorrect,
  IRFACTOR: irfactor,
  IRMINIMUM: irminimum,
  IRTESTVOLTAGE: irtestvoltage,
  JUDGE: judge,
  KNEEPOINT: kneepoint,
  LIMITFACTOR: limitfactor,
  MEGOHMS: megohms,
  POLARIZATION: polarization,
  QUANTITY: quantity,
  RATIOERROR: ratioerror,
  SOURCE: source,
  SPREAD: spread,
  TIMESPREAD: timespread,
  VTLIMIT: vtlimit,
  WITHSTAND: withstand,
};
