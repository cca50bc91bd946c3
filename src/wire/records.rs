//! The records that cross the boundary, as JSON text.
//!
//! What a person typed crosses as text and is read here in Rust, never in JavaScript.
//! An unknown key is refused: a misspelt one would otherwise give a confident wrong answer.
//! Decimals leave as text, so that no float ever touches money.

use super::json::Json;
use super::record::{Named, Read, Typed, Write, records, unreadable};
use crate::problem::Fault;
use alloc::string::String;
use alloc::vec::Vec;

records! {
    both
    /// A blank that holds an amount: the text as typed, and the unit chosen beside it.
    ///
    /// A unit written in the text wins over `unit`: `{"text":"2 dashes","unit":"ml"}` is two dashes.
    #[derive(Default)]
    Written {
        /// What was typed: `"2"`, `"1 1/2"`, `"half"`, `"60 ml"`.
        text: String,
        /// The code of the unit chosen beside it, such as `"ml"` or `"dash"`; empty if none is.
        unit: String,
    }

    both
    /// What holds for everything on the page: chosen once, kept on the device.
    House {
        /// An ISO 4217 code, such as `"GBP"`.
        currency: String,
        /// The mark that this person's locale writes before decimals: `"."` or `","`.
        decimal_mark: String,
        /// Whose spoons, cups and ounces a bare "tsp", "cup" or "fl oz" means:
        /// `"us"`, `"uk"`, `"au"` or `"metric"`.
        kitchen: String,
        /// The tax rate that a bottle takes if it names none, in percent as typed: `"20"`.
        tax_percent: String,
        /// Whether this person gets the tax on what they buy back.
        reclaims_tax: bool,
        /// Whether the doubt counts what the law lets one bottle be short of its label.
        counts_fill: bool,
        /// How tax stands in what is charged: `"in"` the price, `"added"` at the till, or `"none"`.
        sale_tax: String,
        /// The tax rate on what is charged, in percent; empty means `tax_percent`.
        sale_tax_percent: String,
        /// The margin that is wanted of a glass, in percent of the price without tax.
        target_percent: String,
        /// Which prices are asked: `"any"`, `"whole"`, `"half"` (.00 and .50), `"ninety_five"`, `"fives"`.
        price_points: String,
        /// Whose standard drinks are told: a code of `standard_drinks`, such as `"uk"`.
        drinks_of: String,
        /// The size of a rough measure for all bottles, by its code: `{"dash": {"text":"0.8","unit":"ml"}}`.
        rough: Named<Written>,
    }

    both
    /// What was paid, as typed.
    Paid {
        /// The price of one bottle, or of the case if `bottles` says more than one.
        price: String,
        /// How many bottles that price buys; empty means 1.
        bottles: String,
        /// What came off the price: `"10 %"` or a sum such as `"2.00"`; empty means nothing.
        discount: String,
        /// What delivery added, for all the bottles together; empty means nothing.
        delivery: String,
        /// `"in"`: the price includes tax. `"out"`: tax is added to it. `"none"`: there is no tax on it.
        tax: String,
        /// The tax rate on this bottle in percent; empty means the house's.
        tax_percent: String,
    }

    both
    /// A bottle, bag or box as typed: what was paid for how much of what.
    #[derive(Default)]
    Bottle {
        /// Names this bottle within one request and on the shelf.
        id: String,
        /// What is in it.
        name: String,
        /// What was paid.
        paid: Paid,
        /// What one bottle holds: a volume, a mass or a count.
        holds: Written,
        /// What never leaves the bottle, in percent; empty means nothing.
        wastage_percent: String,
        /// The size of a rough measure for this bottle alone, by its code.
        rough: Named<Written>,
        /// A rough measure measured with this bottle, by its code. It wins over `rough`.
        measured: Named<Measuring>,
        /// Its strength in percent by volume; empty if it is not known.
        strength: String,
        /// How many days it keeps once open; empty means for ever.
        keeps_days: String,
        /// What it carries of the allergens of EU and UK law, by their codes.
        allergens: Vec<String>,
        /// What else must be said: `"raw_egg"`, `"quinine"`.
        warns: Vec<String>,
        /// What is there of it already: `"400 ml"`, `"2 bottles"`; empty means nothing.
        have: Written,
        /// Which of the spirits it is that British law measures: `"gin"`, `"rum"`, `"vodka"`, `"whisky"`; else empty.
        spirit: String,
    }

    both
    /// How a dash, a drop or a squeeze of one bottle was measured, as typed.
    Measuring {
        /// `"count"`: how many fill a vessel. `"weigh"`: what some of them weigh.
        /// `"read"`: what some of them fill on a marked dropper.
        way: String,
        /// The readings, one for each time it was done. Counts, grams, or ml. Empty ones are passed over.
        readings: Vec<String>,
        /// How many are weighed or read together; empty means 1.
        number: String,
        /// `"count"`: what the vessel holds.
        vessel: Written,
        /// `"weigh"`: the step of the scale in grams; `"read"`: the distance of the marks in ml.
        step: String,
        /// `"weigh"`: the strength of the liquid in percent by volume, `"0"` for water.
        strength: String,
        /// `"weigh"`: how warm it is, in degrees Celsius; empty means 20.
        celsius: String,
        /// `"weigh"`: a known volume of the liquid, weighed in place of the strength.
        known_volume: Written,
        /// `"weigh"`: what that volume weighs, in grams.
        known_weight: String,
        /// What came of it: as `measure` replied. Nothing while a blank is missing or unreadable.
        found: Option<Found>,
    }

    both
    /// The size that was found by measuring.
    #[derive(Default)]
    Found {
        /// How large one is, in ml.
        size: String,
        /// The standard uncertainty of that, in ml.
        standard: String,
        /// Effective degrees of freedom; empty where they do not limit what is known.
        freedom: String,
        /// Whether a few more readings would halve the doubt.
        more_helps: bool,
    }

    asked
    /// A request of `measure`: a rough measure of one bottle, measured.
    #[derive(Default)]
    MeasureAsk {
        /// How this person writes.
        house: House,
        /// The readings and the tools.
        measuring: Measuring,
        /// What was found of the same rough measure with other bottles.
        others: Vec<Found>,
    }

    asked
    /// A request of `facts`: what follows from the cost of each spec.
    #[derive(Default)]
    FactsAsk {
        /// What holds for all of it.
        house: House,
        /// The bottles that the specs name.
        bottles: Vec<Bottle>,
        /// The specs.
        specs: Vec<Spec>,
        /// Whether each spec is looked at in full: the ladder of its prices, and each line by itself.
        /// If not, no figure has a working or a range.
        in_full: bool,
    }

    replied
    /// What `facts` replies.
    #[derive(Default)]
    FactsReply {
        /// One for each spec, in order.
        specs: Vec<Facts>,
        /// What could not be read or reckoned, and where.
        problems: Vec<Problem>,
    }

    replied
    /// What follows from the cost of a glass.
    #[derive(Default)]
    Facts {
        /// Which spec.
        id: String,
        /// What the glass costs.
        cost: Option<Figure>,
        /// How many lines have no cost.
        missing: u64,
        /// What it costs more than the first spec of the request: a swap. Nothing for the first itself.
        change: Option<Figure>,
        /// The margin that is wanted, in percent.
        target_percent: String,
        /// What follows from the price that was typed.
        priced: Option<Priced>,
        /// What follows from the price that the wanted margin asks, exactly.
        asked: Option<Priced>,
        /// Prices a person asks, around that one, the lowest first, if it is looked at in full.
        ladder: Vec<Priced>,
        /// Whether the price that was typed leaves less than the wanted margin.
        under_target: bool,
        /// What the glass may cost at most, at the price and the wanted margin.
        may_cost: Option<Figure>,
        /// How strong it is; nothing while no strength is known.
        strength: Option<Strength>,
        /// How many of its liquids have no strength told: they are taken to be without alcohol.
        strengths_missing: u64,
        /// The cost of a glass at its pace, what spoils included; nothing if nothing spoils or no pace is given.
        cost_kept: Option<Figure>,
        /// Its lines, if it is looked at in full.
        lines: Vec<LineFacts>,
        /// The allergens that its bottles carry.
        allergens: Vec<String>,
        /// What else should be said.
        cautions: Vec<Caution>,
    }

    replied
    /// A price, and what follows from it.
    #[derive(Default)]
    Priced {
        /// The price as it stands on the menu.
        price: Option<Figure>,
        /// What the guest pays.
        pays: Option<Figure>,
        /// The price without tax.
        net: Option<Figure>,
        /// The tax in it or on top.
        tax: Option<Figure>,
        /// What is kept: net less cost.
        keeps: Option<Figure>,
        /// What is kept in percent of net (GP).
        margin: Option<Figure>,
        /// The cost in percent of net.
        pour_cost: Option<Figure>,
        /// What is kept in percent of the cost.
        markup: Option<Figure>,
        /// What the margin wrongly looks like on the price with tax.
        trap: Option<Figure>,
        /// Whether the margin is at least the wanted one.
        reaches: bool,
    }

    replied
    /// How strong a glass is.
    #[derive(Default)]
    Strength {
        /// Percent by volume.
        percent: Option<Figure>,
        /// The strength if volumes added.
        naive_percent: Option<Figure>,
        /// Between what it lies, its labels being within their tolerance (0.3 % vol each).
        low: String,
        /// The upper end.
        high: String,
        /// The volume, water included.
        ml: Option<Figure>,
        /// The water that ice adds.
        water_ml: Option<Figure>,
        /// Alcohol in grams.
        alcohol_g: Option<Figure>,
        /// How many standard drinks, by country; the house's first.
        drinks: Vec<Drinks>,
    }

    replied
    /// How many of a country's standard drinks.
    #[derive(Default)]
    Drinks {
        /// The country.
        code: String,
        /// How many.
        count: String,
    }

    replied
    /// What follows from one line of a glass.
    #[derive(Default)]
    LineFacts {
        /// What leaving it out saves.
        saves: Option<Figure>,
        /// What the glass costs without it.
        without: Option<Figure>,
        /// How strong the glass is without it, in percent.
        strength_without: String,
        /// What need not be bought for a first glass without it: nothing if another line needs the bottle too.
        outlay: Option<Figure>,
        /// What its bottle may cost at most, all else as it is, at the price and the wanted margin.
        bottle_at_most: Option<Figure>,
        /// How much of it the glass can take, all else as it is.
        measure_at_most: Option<Figure>,
        /// What one pour costs at the pace of the spec, what spoils included.
        cost_kept: Option<Figure>,
        /// What the same money buys of the other bottles of the glass.
        same_money: Vec<SameMoney>,
    }

    replied
    /// What the cost of a line buys of another bottle.
    #[derive(Default)]
    SameMoney {
        /// The bottle; empty for something priced on the spot.
        bottle: String,
        /// Which line it stands in.
        line: u64,
        /// How much of it.
        amount: Option<Figure>,
    }

    replied
    /// Something that should be said. It stops nothing.
    #[derive(Default)]
    Caution {
        /// A code, such as `"gb_measure"`.
        code: String,
        /// What its sentence needs.
        values: Named<String>,
    }

    asked
    /// A request of `shop`: what must be bought.
    #[derive(Default)]
    ShopAsk {
        /// What holds for all of it.
        house: House,
        /// The bottles that the specs name.
        bottles: Vec<Bottle>,
        /// The specs.
        specs: Vec<Spec>,
        /// How many of each, as typed; empty means none.
        counts: Vec<String>,
    }

    replied
    /// What `shop` replies.
    #[derive(Default)]
    ShopReply {
        /// What is needed of each bottle, in the order of the request; those that no line needs are left out.
        rows: Vec<ShopRow>,
        /// What buying all of it costs.
        outlay: Option<Figure>,
        /// The same for one glass.
        each: Option<Figure>,
        /// How many lines could not be reckoned.
        missing: u64,
        /// What could not be read or reckoned, and where.
        problems: Vec<Problem>,
    }

    replied
    /// What is needed of one bottle.
    #[derive(Default)]
    ShopRow {
        /// Which bottle; empty for something priced on the spot.
        bottle: String,
        /// Its name.
        name: String,
        /// How much is needed.
        needs: Option<Figure>,
        /// How much is there.
        has: Option<Figure>,
        /// How many bottles must be bought.
        buys: u64,
        /// What they cost.
        cost: Option<Figure>,
        /// What is left afterwards.
        left: Option<Figure>,
    }

    asked
    /// A request of `keeping`: what a pour of one or two bottles costs at every pace.
    #[derive(Default)]
    KeepingAsk {
        /// What holds for both.
        house: House,
        /// One bottle or two.
        bottles: Vec<Bottle>,
        /// What is poured of each.
        measures: Vec<Written>,
        /// The most glasses a week that are looked at; empty means 60.
        most_a_week: String,
    }

    replied
    /// What `keeping` replies.
    #[derive(Default)]
    KeepingReply {
        /// The cost of a pour at one, two, three and so on glasses a week.
        points: Vec<KeepingPoint>,
        /// The pace at which both cost the same, to a tenth of a glass a week; empty if there is none.
        crossing: String,
        /// Which of the two is cheaper below it: 0 or 1.
        cheaper_below: u64,
        /// The cost of the highest point, to draw against.
        highest: Option<Figure>,
        /// What could not be read or reckoned, and where.
        problems: Vec<Problem>,
    }

    replied
    /// The costs at one pace.
    #[derive(Default)]
    KeepingPoint {
        /// Glasses a week.
        a_week: u64,
        /// One for each bottle.
        costs: Vec<Shown>,
        /// The same in thousandths of the highest, to draw.
        heights: Vec<u64>,
    }

    both
    /// An offer at a tasting table, as typed.
    Offer {
        /// Names it.
        id: String,
        /// What it is.
        name: String,
        /// The price of one bottle, or of the case.
        price: String,
        /// How many bottles that price buys; empty means 1.
        case: String,
        /// `"in"`, `"out"` or `"none"`: how tax stands in it.
        tax: String,
        /// What one bottle holds.
        holds: Written,
        /// A deal: `"3 for 2"`, `"10 % off"`, `"10 % off six"`.
        deal: String,
        /// Its strength in percent by volume.
        strength: String,
        /// What was thought of it.
        note: String,
        /// Whether it is to be kept: `"yes"`, `"no"` or empty.
        keep: String,
    }

    asked
    /// A request of `offers`.
    #[derive(Default)]
    OffersAsk {
        /// What holds for all of it.
        house: House,
        /// The offers.
        offers: Vec<Offer>,
        /// What goes into a glass.
        measure: Written,
        /// What the rest of the glass costs; empty means nothing.
        rest: String,
        /// What the glass sells at; empty if that is open.
        price: String,
        /// The wanted margin; empty means the house's.
        target_percent: String,
    }

    replied
    /// What `offers` replies.
    #[derive(Default)]
    OffersReply {
        /// One for each offer, in order.
        offers: Vec<OfferReply>,
        /// What could not be read or reckoned, and where.
        problems: Vec<Problem>,
    }

    replied
    /// What is known of an offer.
    #[derive(Default)]
    OfferReply {
        /// What one bottle costs, as this person bears it.
        bottle: Option<Figure>,
        /// What the measure costs.
        measure: Option<Figure>,
        /// What a glass with it costs.
        glass: Option<Figure>,
        /// What a glass with it keeps of its price, in percent.
        margin: Option<Figure>,
        /// The most that may be paid for what the price buys, for the wanted margin.
        at_most: Option<Figure>,
        /// Whether the price is at or below that.
        fits: bool,
        /// Its rank by the cost of the measure: 1 is the cheapest; nothing if that is not known.
        rank: Option<u64>,
        /// How it is put on the shelf.
        paid: Option<Paid>,
        /// How many bottles must be bought for the deal.
        buys: u64,
    }

    replied
    /// What `measure` replies.
    #[derive(Default)]
    MeasureReply {
        /// What is to be kept with the bottle, as [`Measuring::found`].
        found: Option<Found>,
        /// How large one is, in ml, with its range.
        size: Option<Figure>,
        /// How much one reading differs from the next, in ml of one; nothing for a single reading.
        scatter: Option<Figure>,
        /// How many more readings would halve the doubt; nought if no number of them would.
        more: u64,
        /// Which of the readings stands out from the others.
        outlier: Option<u64>,
        /// The density that was reckoned with, in g per ml; nothing if none is known.
        density: Option<Figure>,
        /// The mean of this bottle and the others, in ml; nothing if there are no others.
        between_mean: Option<Figure>,
        /// How they differ: their standard deviation, in ml.
        between_deviation: Option<Figure>,
        /// What could not be read or reckoned; and what should be said of the readings, although the
        /// size holds: `"one_reading"`, `"readings_equal"`, `"below_step"`.
        problems: Vec<Problem>,
    }

    asked
    /// A bottle of the shelf, as a recipe's lines are held against it.
    #[derive(Default)]
    NamedBottle {
        /// Which one.
        id: String,
        /// What is in it.
        name: String,
    }

    asked
    /// A request of `recipe`: a pasted recipe, read.
    #[derive(Default)]
    RecipeAsk {
        /// How this person writes.
        house: House,
        /// The lines as pasted, or a schema.org/Recipe as JSON-LD, also in the source of its page.
        text: String,
        /// How large one part is; empty if that is not known.
        part: Written,
        /// The bottles of the shelf.
        bottles: Vec<NamedBottle>,
    }

    replied
    /// What `recipe` replies.
    #[derive(Default)]
    RecipeReply {
        /// What the drink is called, where that is told.
        name: String,
        /// How many the lines are for, such as `"2"`, where that is told.
        makes: String,
        /// One for each line that is not empty, in order.
        lines: Vec<RecipeLine>,
        /// What could not be read of the whole.
        problems: Vec<Problem>,
    }

    replied
    /// What was read of a line. What was not read stands in `text` all the same.
    #[derive(Default)]
    RecipeLine {
        /// The line as pasted.
        text: String,
        /// How much, as the blank of a measure takes it; of a ratio, parts: the unit is then `"part"`.
        measure: Written,
        /// Of what.
        name: String,
        /// What else the line says: what is done to it, the other of two measures.
        note: String,
        /// Whether it may be left out.
        optional: bool,
        /// Whether it only decorates.
        garnish: bool,
        /// What it is if nothing is poured by it: `"title"`, `"heading"`, `"method"` or `"makes"`; else empty.
        aside: String,
        /// The bottles it may be, by id, the likeliest first: a person picks one.
        candidates: Vec<String>,
        /// Whether the first of them is what the line says, and not only like it.
        is_meant: bool,
        /// What could not be read. A place is a field of this line.
        problems: Vec<Problem>,
    }

    asked
    /// A request of `recipe_out`: a spec as schema.org/Recipe.
    #[derive(Default)]
    RecipeOutAsk {
        /// What holds for all of it.
        house: House,
        /// The bottles that the spec names.
        bottles: Vec<Bottle>,
        /// The spec.
        spec: Spec,
        /// Whether what it costs stays here.
        without_prices: bool,
    }

    replied
    /// What `recipe_out` replies.
    #[derive(Default)]
    RecipeOutReply {
        /// The recipe as JSON-LD. Its cost is in it if every line has one.
        text: String,
        /// Its lines, as the recipe has them.
        lines: Vec<String>,
        /// The same for a page that knows no bottles: a rough measure whose size is the person's own has
        /// that size beside it.
        page_lines: Vec<String>,
        /// What such a page is told of prices, as `embed` reads it; empty if they stay here.
        page_prices: String,
        /// How many lines have no cost.
        missing: u64,
        /// What could not be read or reckoned, and where.
        problems: Vec<Problem>,
    }

    both
    /// One line of a spec: a measure of a bottle.
    #[derive(Default)]
    Line {
        /// The `id` of a bottle in the same request; empty if the line prices its own.
        bottle: String,
        /// Something priced on the spot: a straw, a wedge of lime. Used when `bottle` is empty.
        own: Option<Bottle>,
        /// How much of it goes in.
        measure: Written,
        /// Whether what is poured is charged, or the whole bottle.
        charge: Charge,
        /// What else is said of it: `"chilled"`, `"optional"`.
        note: String,
    }

    both
    /// A spec: the recipe of a glass.
    #[derive(Default)]
    Spec {
        /// Names this spec within one request and on the shelf.
        id: String,
        /// What the drink is called.
        name: String,
        /// What goes in, in order.
        lines: Vec<Line>,
        /// What is charged for it, as it stands on the menu; empty if that is still open.
        price: String,
        /// The margin that is wanted of it, in percent; empty means the house's.
        target_percent: String,
        /// What ice does to it: `"none"`, `"built"`, `"stirred"` or `"shaken"`.
        method: String,
        /// The water that it takes up, where that is known; empty means as `method` says.
        water: Written,
        /// Whether it is sold as a drink without alcohol.
        without_alcohol: bool,
        /// How many are sold in a week.
        a_week: String,
    }

    asked
    /// A quick sum: one measure of one bottle.
    #[derive(Default)]
    Pour {
        /// The `id` of a bottle in the same request.
        bottle: String,
        /// How much of it.
        measure: Written,
    }

    asked
    /// A request of `moves`: what a new price of one bottle does to the glasses.
    #[derive(Default)]
    MovesAsk {
        /// What holds for all of it.
        house: House,
        /// The bottle as it was.
        before: Bottle,
        /// The bottle as it will be, under the same `id`.
        after: Bottle,
        /// The other bottles that the specs name.
        bottles: Vec<Bottle>,
        /// The glasses.
        specs: Vec<Spec>,
    }

    replied
    /// What `moves` replies: the glasses whose cost changes, in the order asked.
    #[derive(Default)]
    MovesReply {
        /// The glasses that move.
        specs: Vec<Moved>,
        /// What could not be read or reckoned.
        problems: Vec<Problem>,
    }

    replied
    /// How a glass moves.
    #[derive(Default)]
    Moved {
        /// Which spec.
        id: String,
        /// Its cost before.
        before: Option<Figure>,
        /// Its cost after.
        after: Option<Figure>,
        /// What was added; less than nought where the glass is cheaper.
        change: Option<Figure>,
    }

    replied
    /// What `tables` replies: what the page offers to choose from.
    #[derive(Default)]
    Tables {
        /// The units, in the order in which they are offered.
        units: Vec<UnitRow>,
        /// The currencies of ISO 4217.
        currencies: Vec<CurrencyRow>,
        /// The limits, by name.
        limits: Named<u64>,
    }

    replied
    /// A unit.
    #[derive(Default)]
    UnitRow {
        /// Its code.
        code: String,
        /// `"volume"`, `"mass"`, `"count"`, or `"bottle"` for a part of the bottle itself.
        kind: String,
        /// Whether its size is an assumption.
        rough: bool,
        /// Its size in `base`, or the size it is assumed to have; empty for a part of a bottle.
        amount: String,
        /// The least that an assumed size may be; empty for one that is exact.
        least: String,
        /// The most that an assumed size may be.
        most: String,
        /// `"ml"`, `"g"`, `"piece"` or `"bottle"`.
        base: String,
    }

    replied
    /// A currency.
    #[derive(Default)]
    CurrencyRow {
        /// The ISO 4217 code.
        code: String,
        /// Decimals of its minor unit.
        digits: u64,
    }

    asked
    /// A request of `answer`.
    #[derive(Default)]
    Ask {
        /// What holds for all of it.
        house: House,
        /// The bottles that the pours and specs name.
        bottles: Vec<Bottle>,
        /// Quick sums.
        pours: Vec<Pour>,
        /// Glasses.
        specs: Vec<Spec>,
    }

    replied
    /// What `answer` replies: one entry for each that was asked, in the same order.
    #[derive(Default)]
    Reply {
        /// The bottles.
        bottles: Vec<BottleReply>,
        /// The quick sums.
        pours: Vec<PourReply>,
        /// The glasses.
        specs: Vec<SpecReply>,
        /// What could not be read or reckoned, and where. Every other figure stands.
        problems: Vec<Problem>,
    }

    replied
    /// What is known of a bottle.
    #[derive(Default)]
    BottleReply {
        /// Cost of one ml, g or piece.
        cost_each: Option<Figure>,
        /// Cost of one whole bottle, as this person bears it.
        cost: Option<Figure>,
        /// What one bottle gives, after wastage.
        usable: Option<Figure>,
        /// The unit that was read of what it holds, which may differ from the one chosen.
        unit: String,
    }

    replied
    /// The answer to a quick sum.
    #[derive(Default)]
    PourReply {
        /// Cost of the measure.
        cost: Option<Figure>,
        /// The measure in ml, g or pieces.
        amount: Option<Figure>,
        /// How many whole such measures one bottle gives.
        count: Option<Figure>,
        /// What is left in the bottle after those.
        left_over: Option<Figure>,
        /// The unit that was read, which may differ from the one chosen.
        unit: String,
    }

    replied
    /// The answer to a spec.
    #[derive(Default)]
    SpecReply {
        /// Cost of the glass: the sum of the lines that have a cost; nothing if none has.
        cost: Option<Figure>,
        /// How many lines have no cost. More than nought: `cost` is not the whole cost.
        missing: u64,
        /// The lines, in order.
        lines: Vec<LineReply>,
    }

    replied
    /// The answer to a line of a spec.
    #[derive(Default)]
    LineReply {
        /// What the line costs, charged as the line says.
        cost: Option<Figure>,
        /// What it would cost charged the other way.
        other_cost: Option<Figure>,
        /// What the bottle charged whole adds over what is poured.
        difference: Option<Figure>,
        /// The measure in ml, g or pieces.
        amount: Option<Figure>,
        /// Whole percent of the glass; the shares of the priced lines add up to exactly 100.
        share_percent: Option<u64>,
        /// The unit that was read.
        unit: String,
    }

    replied
    /// One figure, with what is needed to show and to check it.
    #[derive(Default)]
    Figure {
        /// The exact decimal, kept to 12 decimals.
        value: String,
        /// `"money"`, or the code of the unit: `"ml"`, `"g"`, `"piece"`, `"measure"`.
        unit: String,
        /// `value` rounded for display, half away from nought.
        shown: String,
        /// Money under one whole unit: the same in the minor unit, such as `"34"` pence.
        shown_minor: Option<String>,
        /// How it was reckoned, step by step.
        working: Vec<Step>,
        /// How sure it is; nothing if nothing in it is in doubt.
        range: Option<Range>,
    }

    replied
    /// Between what a figure lies, with at least 95 %.
    #[derive(Default)]
    Range {
        /// The figure itself, rounded as `low` and `high` are shown.
        about: Shown,
        /// The lower end.
        low: Shown,
        /// The upper end.
        high: Shown,
        /// The lower end, kept to 12 decimals.
        low_value: String,
        /// The upper end, kept to 12 decimals.
        high_value: String,
        /// Where the middle of the range stands: the figure at the middle of every input.
        middle: Shown,
        /// The standard uncertainty of the figure.
        standard: Shown,
        /// What the standard uncertainty is multiplied with: `"2"`, or Student's factor such as `"2.87"`.
        factor: String,
        /// Effective degrees of freedom, where they make the factor; nothing otherwise.
        freedom: Option<u64>,
        /// Whether an end was cut to what the inputs can be.
        cut: bool,
        /// What the doubt is made of, the largest part first.
        parts: Vec<Part>,
        /// What would help most; nothing if nothing would.
        helps: Option<Helps>,
    }

    replied
    /// A number rounded for display.
    #[derive(Default)]
    Shown {
        /// In the figure's own unit.
        text: String,
        /// Money under one whole unit: the same in the minor unit.
        minor: Option<String>,
    }

    replied
    /// One input's part in a doubt.
    #[derive(Default)]
    Part {
        /// What the input is. Of a cost: `"range"`, `"about"`, `"rough_assumed"`, `"rough_house"`,
        /// `"rough_bottle"`, `"rough_measured"`, `"fill"`. Of a measured size: `"scatter"`, `"scatter_assumed"`,
        /// `"vessel"`, `"last_one"`, `"scale"`, `"marks"`, `"density"`, `"density_assumed"`, `"density_weighed"`.
        is: String,
        /// Which line of the glass it stands in; nothing for a quick sum and for what several lines share.
        line: Option<u64>,
        /// The `id` of the bottle it belongs to; empty if it belongs to none of the request's.
        bottle: String,
        /// The code of the rough measure whose size it is; empty for anything else.
        of: String,
        /// The unit of `best`, `least` and `most`.
        unit: String,
        /// What was reckoned with; empty within a measured size.
        best: String,
        /// The least it may be; of a measured size, its own range's.
        least: String,
        /// The most it may be.
        most: String,
        /// How that is spread: `"even"`, `"middling"` (likeliest in the middle) or `"measured"`.
        spread: String,
        /// How far its standard uncertainty moves the figure.
        moves: Shown,
        /// Its share of the doubt (of the squares) in whole percent; they add up to exactly 100.
        share_percent: u64,
    }

    replied
    /// What would help most.
    #[derive(Default)]
    Helps {
        /// Which of the parts.
        part: u64,
        /// `"measure"`: measure this bottle's dash. `"pour"`: pour it with a marked measure.
        /// `"repeat"`: measure a few times more.
        how: String,
        /// What would then be left of the doubt, in percent.
        left_percent: u64,
    }

    replied
    /// One line of a working: the terms taken from left to right make the result.
    #[derive(Default)]
    Step {
        /// What this step finds: a code such as `"measure_amount"`.
        finds: String,
        /// The terms.
        terms: Vec<Term>,
        /// What they come to, kept to 12 decimals.
        result: String,
        /// `result` at six figures, to be read.
        shown: String,
        /// The unit of the result.
        unit: String,
        /// How `result` was rounded: `"no"` (it is exact), `"kept"` (at 12 decimals, half away from
        /// nought), `"down"` or `"up"` (to a whole number).
        rounded: String,
    }

    replied
    /// One term of a step.
    #[derive(Default)]
    Term {
        /// `"start"`, `"times"`, `"over"`, `"plus"` or `"less"`.
        does: String,
        /// The operand: a decimal, or a fraction such as `"1/3"` as it was typed.
        value: String,
        /// `value` at six figures, to be read.
        shown: String,
        /// The step of this working whose exact result the operand is, counted from nought.
        step: Option<u64>,
        /// Its unit, or `"money"`, `"percent"` or empty for a bare number.
        unit: String,
        /// What the operand is: a code such as `"price"`, `"bottles"`, `"rough_house"`.
        is: String,
    }

    replied
    /// What could not be read or reckoned, and where.
    #[derive(Default)]
    Problem {
        /// A stable code, such as `"number_ambiguous"`.
        code: String,
        /// The blank it concerns: `"bottles[0].paid.price"`.
        place: String,
        /// What the sentence needs: `{"typed": "1,250", "either": "1.25", "or": "1250"}`.
        values: Named<String>,
    }
}

/// How a line is charged.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Charge {
    /// By what is poured: `"poured"`.
    #[default]
    Poured,
    /// By the whole bottle opened for this glass, what is left being poured away: `"whole"`.
    Whole,
}

impl Read for Charge {
    fn read(&mut self, json: Json) -> Result<(), Fault> {
        *self = match &json {
            Json::Text(text) if text == "poured" => Charge::Poured,
            Json::Text(text) if text == "whole" => Charge::Whole,
            _ => return Err(unreadable("neither \"poured\" nor \"whole\"")),
        };
        Ok(())
    }
}

impl Write for Charge {
    fn write(&self, out: &mut String) {
        out.push_str(match self {
            Charge::Poured => r#""poured""#,
            Charge::Whole => r#""whole""#,
        });
    }
}

impl Typed for Charge {
    fn typescript() -> String {
        r#""poured" | "whole""#.into()
    }
}

impl Default for House {
    fn default() -> Self {
        House {
            currency: "GBP".into(),
            decimal_mark: ".".into(),
            kitchen: "uk".into(),
            tax_percent: "20".into(),
            reclaims_tax: false,
            counts_fill: false,
            sale_tax: "in".into(),
            sale_tax_percent: String::new(),
            target_percent: "75".into(),
            price_points: "half".into(),
            drinks_of: "uk".into(),
            rough: Named::default(),
        }
    }
}

impl Default for Measuring {
    fn default() -> Self {
        Measuring {
            way: "count".into(),
            readings: Vec::new(),
            number: String::new(),
            vessel: Written::default(),
            step: String::new(),
            strength: String::new(),
            celsius: String::new(),
            known_volume: Written::default(),
            known_weight: String::new(),
            found: None,
        }
    }
}

impl Default for Offer {
    fn default() -> Self {
        Offer {
            id: String::new(),
            name: String::new(),
            price: String::new(),
            case: String::new(),
            tax: "in".into(),
            holds: Written::default(),
            deal: String::new(),
            strength: String::new(),
            note: String::new(),
            keep: String::new(),
        }
    }
}

impl Default for Paid {
    fn default() -> Self {
        Paid {
            price: String::new(),
            bottles: String::new(),
            discount: String::new(),
            delivery: String::new(),
            tax: "in".into(),
            tax_percent: String::new(),
        }
    }
}
