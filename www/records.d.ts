// The records that cross the boundary between the page and the core.
// Written from src/wire by `FARTHING_WRITE=1 cargo test --test types`: change them there.

export interface Written {
  text: string;
  unit: string;
}

export interface House {
  currency: string;
  decimal_mark: string;
  kitchen: string;
  tax_percent: string;
  reclaims_tax: boolean;
  counts_fill: boolean;
  rough: { [key: string]: Written };
}

export interface Paid {
  price: string;
  bottles: string;
  discount: string;
  delivery: string;
  tax: string;
  tax_percent: string;
}

export interface Found {
  size: string;
  standard: string;
  freedom: string;
  more_helps: boolean;
}

export interface Measuring {
  way: string;
  readings: (string)[];
  number: string;
  vessel: Written;
  step: string;
  strength: string;
  celsius: string;
  known_volume: Written;
  known_weight: string;
  found: Found | null;
}

export interface Bottle {
  id: string;
  name: string;
  paid: Paid;
  holds: Written;
  wastage_percent: string;
  rough: { [key: string]: Written };
  measured: { [key: string]: Measuring };
}

export interface Line {
  bottle: string;
  own: Bottle | null;
  measure: Written;
  charge: "poured" | "whole";
}

export interface Spec {
  id: string;
  name: string;
  lines: (Line)[];
}

export interface Pour {
  bottle: string;
  measure: Written;
}

export interface Ask {
  house: House;
  bottles: (Bottle)[];
  pours: (Pour)[];
  specs: (Spec)[];
}

export interface Term {
  does: string;
  value: string;
  shown: string;
  step: number | null;
  unit: string;
  is: string;
}

export interface Step {
  finds: string;
  terms: (Term)[];
  result: string;
  shown: string;
  unit: string;
  rounded: string;
}

export interface Shown {
  text: string;
  minor: string | null;
}

export interface Part {
  is: string;
  line: number | null;
  bottle: string;
  of: string;
  unit: string;
  best: string;
  least: string;
  most: string;
  spread: string;
  moves: Shown;
  share_percent: number;
}

export interface Helps {
  part: number;
  how: string;
  left_percent: number;
}

export interface Range {
  about: Shown;
  low: Shown;
  high: Shown;
  low_value: string;
  high_value: string;
  middle: Shown;
  standard: Shown;
  factor: string;
  freedom: number | null;
  cut: boolean;
  parts: (Part)[];
  helps: Helps | null;
}

export interface Figure {
  value: string;
  unit: string;
  shown: string;
  shown_minor: string | null;
  working: (Step)[];
  range: Range | null;
}

export interface Problem {
  code: string;
  place: string;
  values: { [key: string]: string };
}

export interface MeasureAsk {
  house: House;
  measuring: Measuring;
  others: (Found)[];
}

export interface MeasureReply {
  found: Found | null;
  size: Figure | null;
  scatter: Figure | null;
  more: number;
  outlier: number | null;
  density: Figure | null;
  between_mean: Figure | null;
  between_deviation: Figure | null;
  problems: (Problem)[];
}

export interface BottleReply {
  cost_each: Figure | null;
  cost: Figure | null;
  usable: Figure | null;
  unit: string;
}

export interface PourReply {
  cost: Figure | null;
  amount: Figure | null;
  count: Figure | null;
  left_over: Figure | null;
  unit: string;
}

export interface LineReply {
  cost: Figure | null;
  other_cost: Figure | null;
  difference: Figure | null;
  amount: Figure | null;
  share_percent: number | null;
  unit: string;
}

export interface SpecReply {
  cost: Figure | null;
  missing: number;
  lines: (LineReply)[];
}

export interface Reply {
  bottles: (BottleReply)[];
  pours: (PourReply)[];
  specs: (SpecReply)[];
  problems: (Problem)[];
}

export interface MovesAsk {
  house: House;
  before: Bottle;
  after: Bottle;
  bottles: (Bottle)[];
  specs: (Spec)[];
}

export interface Moved {
  id: string;
  before: Figure | null;
  after: Figure | null;
  change: Figure | null;
}

export interface MovesReply {
  specs: (Moved)[];
  problems: (Problem)[];
}

export interface UnitRow {
  code: string;
  kind: string;
  rough: boolean;
  amount: string;
  least: string;
  most: string;
  base: string;
}

export interface CurrencyRow {
  code: string;
  digits: number;
}

export interface Tables {
  units: (UnitRow)[];
  currencies: (CurrencyRow)[];
  limits: { [key: string]: number };
}

export interface Earlier {
  paid: Paid;
  holds: Written;
  until: string;
}

export interface Kept<T> {
  format: number;
  revision: number;
  kept_on: string;
  record: T;
  earlier: (Earlier)[];
}

export interface ShelfAsk {
  wish: string;
  kind: string;
  id: string;
  before: any;
  after: any;
  on: string;
  text: string;
}

export interface Aside {
  key: string;
  text: string;
}

export interface Change {
  kind: string;
  id: string;
  name: string;
  change: string;
  fields: (string)[];
}

export interface ShelfReply {
  bottles: (Kept)[];
  specs: (Kept)[];
  house: Kept | null;
  draft: string | null;
  aside: (Aside)[];
  kept: any;
  clashes: (string)[];
  changes: (Change)[];
  file: string | null;
  problems: (Problem)[];
}

export interface ShelfFile {
  format: number;
  holds: string;
  saved_on: string;
  house: Kept | null;
  bottles: (Kept)[];
  specs: (Kept)[];
}
