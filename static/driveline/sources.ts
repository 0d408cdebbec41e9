// The documents the constants and formulas of the calculations are printed in. A source
// that is also in tables/sources.yaml has the same key and title here; a test holds the two together.

/** A document. `trust` says what it may be wrong about; empty where nothing is known. */
export interface Source {
  title: string;
  publisher: string;
  where: string; // edition, page or address
  trust: string;
}

const make = (publisher: string, title: string, where = "", trust = ""): Source => ({ title, publisher, where, trust });

const trade = "a trade page, not a maker's drawing or a standard";
const copy = "read in a copy of one page or table, not in the whole document";

export const sources = {
  aisco: make("AISCO", "Universal joint sizing, engineering data", "", trade),
  "army-tm": make("US Army", "TM 5-3820-256-24-4 and TM 5-4210-230-14&P-1, drive shaft angles", "pp. 20-23", copy),
  befco: make("Befco", "Operator's manual, drive shaft", "", "one machine's manual; holds for that machine"),
  "cat-rehs2891": make("Caterpillar", "Transmission Application and Installation Guide", "REHS2891"),
  chrysler: make(
    "Chrysler",
    "Workshop manuals, propeller shafts (JK 2007, Sprinter 2006, Dakota 2002, Ram 1998, Aspen 2007)",
  ),
  "dana-cv": make("Dana", "Commercial drive shafts: companion flanges; flange boltings", "pages 005 and 009"),
  "dana-dssm": make("Dana", "Driveshaft service manual", "DSSM-0100, printed p. 4"),
  "dana-gwb": make("Dana", "Cardan Shafts for Industrial Applications", "technical section, pp. 38-46", copy),
  "dana-j3311": make("Dana", "Driveline installation", "J3311-1-DSSP Aug 2008, printed pp. 2, 5, 8, 10, 17"),
  "dana-lube": make("Dana", "Lubrication specifications, universal joints", "J3299-2-DSSP June 2008, charts 1-3"),
  "datsun-521": make("Nissan", "service manual section PD", "p. PD-4"),
  drivetrain: make("drivetrain.com", "Maximum angle against length", "", trade),
  elbe: make("Elbe", "Cardan shafts, technical annex", "pp. 166-167", copy),
  engedge: make(
    "Engineers Edge",
    "Design Guidelines for Drive Shaft Installation Angle",
    "",
    "a page that cites a guide of SAE it does not reprint",
  ),
  "foton-bj1051": make("Foton", "Aumark BJ1051/1061 workshop manual", "p. 124"),
  "freightliner-122sd": make("Freightliner", "122SD maintenance manual group 41 table 1", "p. 89"),
  fuso: make("Fuso", "eCanter body-builder guide", "p. 100"),
  gaspardo: make("Gaspardo", "Operator's manual, drive shaft", "", "one machine's manual; holds for that machine"),
  gere: make("Gere and Goodno", "Mechanics of Materials", "problem 3.3-8", "from a copy of the solutions"),
  "gm-camaro99": make("General Motors", "1999 Camaro service manual", "p. 69 of the copy"),
  "hummer-h3-06": make("General Motors", "2006 H3 service manual"),
  "hyundai-bb": make("Hyundai", "Body-builder guide 2015", "p. 95"),
  ims: make(
    "IMS",
    "Drive-shaft selection",
    "section of a printed trade catalogue",
    "its power constants are rounded low",
  ),
  iso286: make(
    "ISO",
    "ISO 286-2 limits (as printed in a tolerance table)",
    "",
    "limits as printed in a tolerance table, not the standard itself",
  ),
  "isuzu-hombre99": make("Isuzu", "1999 Hombre service manual, two-piece shaft"),
  klein: make("Eugen Klein", "Gelenkwellen, technical instructions", "section 7"),
  "kline-ag": make(
    "(a maker of farm machines)",
    "Bolt torques by SAE J429 grade, 75 % of proof",
    "",
    "one line of it, 1/4-28 dry, is a misprint",
  ),
  "lr-1996": make("Land Rover", "Workshop manual 1996 section 47", "1996"),
  "man-calc": make("MAN", "Calculations, body-builder guide", "2000"),
  "mazda-81": make("Mazda", "workshop manual 1981", "1981, p. 8:4"),
  "mb-actros": make("Mercedes-Benz", "Actros body-builder guide 2016", "p. 120"),
  medh: make("Butterworth-Heinemann", "Mechanical Engineer's Data Handbook", "2.4.3, p. 72"),
  "meritor-96147": make("Meritor", "MM-96147 Drivelines", "rev. 03-21, pp. 79-87"),
  mtz: make("MTZ", "Operator's manual, drive shaft", "", "one machine's manual; holds for that machine"),
  navedtra: make(
    "US Navy",
    "Construction Mechanic NAVEDTRA 14050A",
    "fig. 8-40, p. 8-48",
    "rounded down to whole degrees",
  ),
  ntnu: make("NTNU", "TMM4175 lecture notes, Lightweight drive shaft"),
  parker: make(
    "Parker Chelsea",
    "PTO installation, Bulletin HY25-1890-M1/US",
    "p. 5",
    "prints its basis as 100 rad/s²; all its points fit 1000",
  ),
  redexim: make("Redexim", "Operator's manual, drive shaft", "", "one machine's manual; holds for that machine"),
  "renault-bb": make("Renault Trucks", "Body-builder guide, PTO"),
  schmelz: make("Springer", "Universal Joints and Driveshafts, 2nd ed.", "2006, section 4.7"),
  toyota: make("Toyota", "propeller-shaft inspection and assembly, several models"),
  "toyota-sequoia": make("Toyota", "propeller shaft 2008", "2008, RM000002HBM003X"),
  "toyota-tacoma": make("Toyota", "propeller shaft reassembly", "RM0000016SS006X"),
  widia: make("Widia", "Balance quality, worked example", "catalogue p. K53"),
  "winco-808": make(
    "J.W. Winco",
    "DIN 808 selection notes",
    "",
    "its power column is read from a chart and does not fit its torques",
  ),
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof sources;
