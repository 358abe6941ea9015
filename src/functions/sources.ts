import type { Basis, Source } from "../standards/criterion";
import { airFormulas } from "../standards/iec60060-1.2010";
import { curves as iecCurves } from "../standards/iec60255-151.2009";
import { afterLaying, cables } from "../standards/iec60502-2.2014";
import { ctErrors, ctProtective } from "../standards/iec61869-2.2012";
import { vtMeasuring, vtProtective } from "../standards/iec61869-3.2011";
import { airRule, auxiliary, coils, seriesI, seriesII } from "../standards/iec62271-1.2017";
import { poleSpreadCycles } from "../standards/iec62271-100.2021";
import { siteShare } from "../standards/iec62271-200.2021";
import { vlf } from "../standards/ieee400.2.2013";
import { coils as ansiCoils } from "../standards/ieeeC37.06.2000";
import { controlFactory, controlSite, factory } from "../standards/ieeeC37.20.2.2015";
import { curves as ieeeCurves } from "../standards/ieeeC37.112.1996";
import { ctMetering as ctHighAccuracy } from "../standards/ieeeC57.13.6.2005";
import { ctMetering, ctRelaying, vtErrors } from "../standards/ieeeC57.13.2016";
import { insulation, site } from "../standards/neta-ats.2025";
import { contactSpread, dewLimit, grossRatio, testVoltagesByHabit } from "../standards/practice";

const from = (
  document: string,
  edition: string,
  place: string,
  certainty: Source["certainty"],
  note?: string,
): Source => ({ document, edition, place, certainty, note });

const FACTORS = from("ANSI/NETA ATS", "2025", "table 100.14", "read", "in a printed copy");
const HALVING = from("IEEE 43", "2013", "halving per 10 K", "read");
const RATIOS = from(
  "IEEE 43",
  "2013",
  "absorption ratio, polarization index",
  "read",
  "in quotation",
);
const MAGNUS = from(
  "Magnus formula over water",
  "",
  "17.62, 243.12 °C",
  "read",
  "in a sensor maker's note",
);
const OHM = from("Ohm's law", "", "four-wire measurement", "practice");
const OWN = from("Gearproof", "", "its own rule, described in the function reference", "practice");
const LIMIT_FACTOR = from(
  "Relay maker's manual",
  "",
  "accuracy limit factor at actual burden",
  "read",
);

/** Where the numbers of each worksheet function come from, by basis or for any basis. */
export const sources: Readonly<
  Record<string, readonly Source[] | Record<Basis, readonly Source[]>>
> = {
  ABSORPTION: [RATIOS],
  AIRFACTOR: [airFormulas, airRule.source],
  ALTITUDEFACTOR: [from("IEC 62271-1", "2011", "altitude correction", "read")],
  BOLTTORQUE: [
    from("ISO 898-1", "2013", "stress areas and proof stresses", "read", "edition from memory"),
    from("Common practice", "", "nut factor and share of the proof load", "practice"),
  ],
  BURDEN: [OHM],
  CABLETEST: {
    IEC: [cables.source, ...Object.values(afterLaying).map(({ source }) => source)],
    NETA: [vlf.source],
  },
  COILLIMIT: { IEC: [coils.source], NETA: [ansiCoils.source] },
  CONTACTCORRECT: [
    from("Temperature line of metals", "", "234.5 °C copper, 228 °C aluminium", "read"),
  ],
  CTLIMIT: [
    ctErrors.source,
    ctProtective.source,
    ctMetering.source,
    ctHighAccuracy.source,
    ctRelaying.source,
    grossRatio.source,
  ],
  CURVETIME: [
    { ...iecCurves, place: "curves" },
    { ...ieeeCurves, place: "curves" },
  ],
  DEWMARGIN: [MAGNUS, dewLimit.source],
  DEWPOINT: [MAGNUS],
  DOUBTFUL: [OWN],
  EARTHRESISTANCE: [OHM],
  EXCITING: [OWN],
  GASPRESSURE: [
    from(
      "Beattie–Bridgeman equation of SF6",
      "",
      "constant density",
      "memory",
      "checked against a maker's filling data",
    ),
  ],
  INRANGE: [OWN],
  IRCORRECT: [FACTORS, HALVING],
  IRFACTOR: [FACTORS, HALVING],
  IRMINIMUM: {
    IEC: [from("IEC 62271", "", "gives no minimum insulation resistance", "memory")],
    NETA: [insulation.source],
  },
  IRTESTVOLTAGE: { IEC: [testVoltagesByHabit.source], NETA: [insulation.source] },
  JUDGE: [OWN],
  KNEEPOINT: [
    from("IEC 61869-2", "2012", "knee point, 10 % and 50 %", "read", "in quotation"),
    from(
      "IEEE C57.13.1",
      "2017",
      "tangents at 45° and 30°",
      "read",
      "in quotation, edition from memory",
    ),
  ],
  LIMITFACTOR: [LIMIT_FACTOR],
  MEGOHMS: [OWN],
  POLARIZATION: [RATIOS],
  QUANTITY: [OWN],
  RATIOERROR: [from("IEC 61869-1", "2007", "ratio error", "memory")],
  SOURCE: [OWN],
  SPREAD: [contactSpread.source],
  TIMESPREAD: [poleSpreadCycles.closing.source],
  VTLIMIT: [vtMeasuring.source, vtProtective.source, vtErrors.source, grossRatio.source],
  WITHSTAND: {
    IEC: [
      seriesI.source,
      seriesII.source,
      siteShare.source,
      auxiliary.type.source,
      auxiliary.routine.source,
    ],
    NETA: [factory.source, site.source, controlFactory.source, controlSite.source],
  },
};
