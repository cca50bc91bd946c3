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
  sale_tax: string;
  sale_tax_percent: string;
  target_percent: string;
  price_points: string;
  drinks_of: string;
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
  strength: string;
  keeps_days: string;
  allergens: (string)[];
  warns: (string)[];
  have: Written;
  spirit: string;
}

export interface Line {
  bottle: string;
  own: Bottle | null;
  measure: Written;
  charge: "poured" | "whole";
  note: string;
}

export interface Spec {
  id: string;
  name: string;
  lines: (Line)[];
  price: string;
  target_percent: string;
  method: string;
  water: Written;
  without_alcohol: boolean;
  a_week: string;
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

export interface FactsAsk {
  house: House;
  bottles: (Bottle)[];
  specs: (Spec)[];
  in_full: boolean;
}

export interface FactsReply {
  specs: (Facts)[];
  problems: (Problem)[];
}

export interface Facts {
  id: string;
  cost: Figure | null;
  missing: number;
  change: Figure | null;
  target_percent: string;
  priced: Priced | null;
  asked: Priced | null;
  ladder: (Priced)[];
  under_target: boolean;
  may_cost: Figure | null;
  strength: Strength | null;
  strengths_missing: number;
  cost_kept: Figure | null;
  lines: (LineFacts)[];
  allergens: (string)[];
  cautions: (Caution)[];
}

export interface Priced {
  price: Figure | null;
  pays: Figure | null;
  net: Figure | null;
  tax: Figure | null;
  keeps: Figure | null;
  margin: Figure | null;
  pour_cost: Figure | null;
  markup: Figure | null;
  trap: Figure | null;
  reaches: boolean;
}

export interface Strength {
  percent: Figure | null;
  naive_percent: Figure | null;
  low: string;
  high: string;
  ml: Figure | null;
  water_ml: Figure | null;
  alcohol_g: Figure | null;
  drinks: (Drinks)[];
}

export interface Drinks {
  code: string;
  count: string;
}

export interface LineFacts {
  saves: Figure | null;
  without: Figure | null;
  strength_without: string;
  outlay: Figure | null;
  bottle_at_most: Figure | null;
  measure_at_most: Figure | null;
  cost_kept: Figure | null;
  same_money: (SameMoney)[];
}

export interface SameMoney {
  bottle: string;
  line: number;
  amount: Figure | null;
}

export interface Caution {
  code: string;
  values: { [key: string]: string };
}

export interface ShopAsk {
  house: House;
  bottles: (Bottle)[];
  specs: (Spec)[];
  counts: (string)[];
}

export interface ShopReply {
  rows: (ShopRow)[];
  outlay: Figure | null;
  each: Figure | null;
  missing: number;
  problems: (Problem)[];
}

export interface ShopRow {
  bottle: string;
  name: string;
  needs: Figure | null;
  has: Figure | null;
  buys: number;
  cost: Figure | null;
  left: Figure | null;
}

export interface KeepingAsk {
  house: House;
  bottles: (Bottle)[];
  measures: (Written)[];
  most_a_week: string;
}

export interface KeepingReply {
  points: (KeepingPoint)[];
  crossing: string;
  cheaper_below: number;
  highest: Figure | null;
  problems: (Problem)[];
}

export interface KeepingPoint {
  a_week: number;
  costs: (Shown)[];
  heights: (number)[];
}

export interface Offer {
  id: string;
  name: string;
  price: string;
  case: string;
  tax: string;
  holds: Written;
  deal: string;
  strength: string;
  note: string;
  keep: string;
}

export interface OffersAsk {
  house: House;
  offers: (Offer)[];
  measure: Written;
  rest: string;
  price: string;
  target_percent: string;
}

export interface OffersReply {
  offers: (OfferReply)[];
  problems: (Problem)[];
}

export interface OfferReply {
  bottle: Figure | null;
  measure: Figure | null;
  glass: Figure | null;
  margin: Figure | null;
  at_most: Figure | null;
  fits: boolean;
  rank: number | null;
  paid: Paid | null;
  buys: number;
}

export interface NamedBottle {
  id: string;
  name: string;
}

export interface RecipeAsk {
  house: House;
  text: string;
  part: Written;
  bottles: (NamedBottle)[];
}

export interface RecipeLine {
  text: string;
  measure: Written;
  name: string;
  note: string;
  optional: boolean;
  garnish: boolean;
  aside: string;
  candidates: (string)[];
  is_meant: boolean;
  problems: (Problem)[];
}

export interface RecipeReply {
  name: string;
  makes: string;
  lines: (RecipeLine)[];
  problems: (Problem)[];
}

export interface RecipeOutAsk {
  house: House;
  bottles: (Bottle)[];
  spec: Spec;
  without_prices: boolean;
}

export interface RecipeOutReply {
  text: string;
  lines: (string)[];
  page_lines: (string)[];
  page_prices: string;
  missing: number;
  problems: (Problem)[];
}

export interface OwnPrice {
  name: string;
  price: string;
  holds: string;
}

export interface EmbedAsk {
  currency: string;
  decimal_mark: string;
  own_decimal_mark: string;
  kitchen: string;
  lines: (string)[];
  part: string;
  method: string;
  prices: string;
  own: (OwnPrice)[];
}

export interface EmbedLine {
  text: string;
  line: number | null;
  bottle: number | null;
}

export interface EmbedBottle {
  name: string;
  price: string;
  holds: string;
  whose: string;
}

export interface EmbedStrength {
  percent: string;
  low: string;
  high: string;
  alcohol_g: string;
  missing: number;
}

export interface EmbedReply {
  lines: (EmbedLine)[];
  bottles: (EmbedBottle)[];
  glass: SpecReply;
  strength: EmbedStrength | null;
  problems: (Problem)[];
}

export interface LinkAsk {
  address: string;
  house: House;
  bottles: (Bottle)[];
  spec: Spec;
  without_prices: boolean;
}

export interface LinkReply {
  link: string;
  problems: (Problem)[];
}

export interface LinkedAsk {
  fragment: string;
}

export interface LinkedReply {
  sent: SentGlass | null;
  problems: (Problem)[];
}

export interface SentHouse {
  currency: string;
  decimal_mark: string;
  kitchen: string;
  tax_percent: string;
  reclaims_tax: boolean;
  counts_fill: boolean;
  rough: { [key: string]: Written };
}

export interface SentGlass {
  format: number;
  has_prices: boolean;
  house: SentHouse;
  bottles: (Bottle)[];
  spec: Spec;
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
