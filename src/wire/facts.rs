//! What follows from the cost of a glass, read and written: prices, strength, lines, shopping.

use super::asking::{self, Hand, hand, method};
use super::ranging::Showing;
use super::record::{Named, read_text};
use super::records::{
    self, Ask, Drinks, Facts, FactsAsk, FactsReply, LineFacts, SameMoney, ShopAsk, ShopReply,
    ShopRow,
};
use super::replying::{percent_text, shown};
use super::{counted, told, written};
use crate::caution::{self, ALLERGENS, Caution, Poured, SPIRITS, WARNS};
use crate::menu::{Glass, Ice, Strength, Terms};
use crate::money::{UNKNOWN, currency};
use crate::number::{Fraction, Kept};
use crate::price::{Points, Priced, SaleTax, Selling, sum};
use crate::problem::{Code, Fault, Problems};
use crate::reading;
use crate::sheet::{self, GlassAnswer};
use crate::shopping::shopping;
use crate::strength::{STANDARD_DRINKS, StandardDrink};
use crate::working::{BARE, Figure, Operand, Working};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// What follows from the cost of each spec: a [`FactsAsk`] as JSON to a [`FactsReply`] as JSON.
pub fn facts(ask: &str) -> String {
    written(&match read_text::<FactsAsk>(ask) {
        Ok(ask) => followed(ask),
        Err(fault) => FactsReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn followed(ask: FactsAsk) -> FactsReply {
    let FactsAsk { house, bottles, specs, in_full } = ask;
    let ask = Ask { house, bottles, pours: Vec::new(), specs };
    let mut problems = Problems::default();
    let mut sums = asking::sheet_ask(&ask, &mut problems);
    sums.costs_only = !in_full;
    let answer = sheet::answer(&sums, &mut problems);
    let hand = hand(&ask.house, &mut Problems::default());
    let currency = currency(&ask.house.currency).unwrap_or(UNKNOWN);
    let following = Following {
        ask: &ask,
        hand,
        showing: if in_full { Showing::in_full } else { Showing::in_brief }(currency, &ask.bottles),
        points: problems.keep("house.price_points", points(&ask.house.price_points)),
        selling: selling(&ask.house, hand, &mut problems),
        target: house_target(&ask.house, hand, &mut problems),
        in_full,
    };
    let first = answer.specs.first();
    let mut replies = Vec::new();
    for (index, (record, glass)) in ask.specs.iter().zip(&answer.specs).enumerate() {
        let place = format!("specs[{index}]");
        let terms = following.terms(record, &place, &mut problems);
        let lines = sums.specs.get(index).map(Vec::as_slice).unwrap_or_default();
        let change = first.filter(|_| index > 0).and_then(|first| {
            sheet::change(first.cost.as_ref()?, glass.cost.as_ref()?).ok().flatten()
        });
        let looked = following.facts(record, Glass { ask: &sums, lines, answer: glass, terms });
        let facts = problems.keep(&place, looked);
        let facts = facts.unwrap_or_else(|| following.bare(record, glass));
        replies.push(Facts { change: shown(&change, following.showing), ..facts });
    }
    FactsReply { specs: replies, problems: told(problems.0) }
}

struct Following<'a> {
    ask: &'a Ask,
    hand: Hand,
    showing: Showing<'a>,
    points: Option<Points>,
    selling: Option<Selling>,
    target: Option<Fraction>,
    in_full: bool,
}

/// How the house sells; nothing if a blank of that cannot be read.
pub fn selling(house: &records::House, hand: Hand, problems: &mut Problems) -> Option<Selling> {
    let tax = match house.sale_tax.as_str() {
        "in" => Ok(SaleTax::In),
        "added" => Ok(SaleTax::Added),
        "none" => Ok(SaleTax::Free),
        other => Err(Fault::new(Code::ChoiceUnknown).with("typed", other)),
    };
    let tax = problems.keep("house.sale_tax", tax);
    let own = reading::tax_percent(&house.sale_tax_percent, hand.marks);
    let own = problems.keep("house.sale_tax_percent", own);
    // What is wrong with the rate of what is bought is told where that is read.
    let all = reading::tax_percent(&house.tax_percent, hand.marks);
    let rate = match own? {
        Some(own) => Some(own),
        None => all.ok()?,
    };
    Some(Selling { tax: tax?, rate: rate.unwrap_or(Fraction::NOUGHT) })
}

/// The margin that the house wants; nothing if none is told or it cannot be read.
pub fn house_target(
    house: &records::House,
    hand: Hand,
    problems: &mut Problems,
) -> Option<Fraction> {
    let all = reading::part_percent(&house.target_percent, hand.marks);
    problems.keep("house.target_percent", all).flatten()
}

/// The wanted margin of a blank, or the house's if it is empty; nothing if it cannot be read.
pub fn target(
    own: &str,
    place: &str,
    house: Option<Fraction>,
    hand: Hand,
    problems: &mut Problems,
) -> Option<Fraction> {
    let own = problems.keep(place, reading::part_percent(own, hand.marks))?;
    own.or(house)
}

fn points(code: &str) -> Result<Points, Fault> {
    match code {
        "any" => Ok(Points::Any),
        "whole" => Ok(Points::Whole),
        "half" => Ok(Points::Half),
        "ninety_five" => Ok(Points::NinetyFive),
        "fives" => Ok(Points::Fives),
        other => Err(Fault::new(Code::ChoiceUnknown).with("typed", other)),
    }
}

impl Following<'_> {
    fn terms(&self, spec: &records::Spec, place: &str, problems: &mut Problems) -> Terms {
        let at = |blank: &str| format!("{place}.{blank}");
        let (marks, no_decimals) = (self.hand.marks, self.hand.no_decimals);
        let price = problems.keep(&at("price"), reading::price(&spec.price, marks, no_decimals));
        let method = problems.keep(&at("method"), method(&spec.method));
        let water = problems.keep(&at("water"), asking::measured_ml(&spec.water, self.hand));
        let a_week = problems.keep(&at("a_week"), reading::positive(&spec.a_week, marks));
        let own = at("target_percent");
        let target = target(&spec.target_percent, &own, self.target, self.hand, problems);
        Terms {
            selling: self.selling,
            target,
            price: price.flatten(),
            ice: method.zip(water).map(|(method, water_ml)| Ice { method, water_ml }),
            a_week: a_week.flatten(),
        }
    }

    /// What is known where a figure needs more digits than are kept.
    fn bare(&self, spec: &records::Spec, glass: &GlassAnswer) -> Facts {
        Facts {
            id: spec.id.clone(),
            cost: shown(&glass.cost, self.showing),
            missing: counted(glass.missing),
            ..Facts::default()
        }
    }

    fn facts(&self, spec: &records::Spec, glass: Glass) -> Result<Facts, Fault> {
        let priced = match glass.terms.price {
            Some(price) => glass.priced(price)?,
            None => None,
        };
        let asked = glass.asked()?;
        let strength = glass.strength(None);
        let mut facts = Facts {
            target_percent: percent_of(glass.terms.target)?,
            under_target: priced
                .as_ref()
                .is_some_and(|priced| self.reaches(glass, priced) == Some(false)),
            may_cost: shown(&glass.may_cost()?, self.showing),
            strength: strength.map(|strength| self.strength(&strength)),
            strengths_missing: counted(strength.map_or(0, |strength| strength.missing)),
            cost_kept: shown(&glass.cost_kept()?, self.showing),
            allergens: self.said_by_bottles(spec, &ALLERGENS, |bottle| &bottle.allergens),
            cautions: self.cautions(spec, glass, strength.as_ref(), priced.as_ref())?,
            ..self.bare(spec, glass.answer)
        };
        facts.priced = priced.map(|priced| self.priced(glass, priced));
        if let Some(price) = &asked {
            let at = glass.priced(price.value.fraction())?;
            facts.asked = at.map(|at| Priced { price: price.clone(), ..at }).map(|at| {
                // At the exact price the margin is the wanted one, whatever its last decimal.
                records::Priced { reaches: true, ..self.priced(glass, at) }
            });
        }
        if !self.in_full {
            return Ok(facts);
        }
        if let (Some(price), Some(points)) = (&asked, self.points) {
            let digits = self.showing.currency.digits;
            for rung in points.ladder(price.value, digits)? {
                facts.ladder.extend(glass.priced(rung)?.map(|rung| self.priced(glass, rung)));
            }
        }
        for place in 0..glass.lines.len() {
            facts.lines.push(self.line(spec, glass, place)?);
        }
        Ok(facts)
    }

    fn show(&self, figure: Figure) -> Option<records::Figure> {
        shown(&Some(figure), self.showing)
    }

    /// Whether a price leaves the wanted margin, or is the price that this asks to the last digit of the
    /// currency, as it is shown.
    fn reaches(&self, glass: Glass, priced: &Priced) -> Option<bool> {
        let asked = || glass.asked().ok().flatten();
        let digits = self.showing.currency.digits;
        let is_asked = || asked().is_some_and(|asked| priced.price.value >= asked.value.to(digits));
        glass.reaches(priced).map(|reaches| reaches || is_asked())
    }

    fn priced(&self, glass: Glass, priced: Priced) -> records::Priced {
        let reaches = self.reaches(glass, &priced).unwrap_or_default();
        let Priced { price, pays, net, tax, keeps, margin, pour_cost, markup, trap } = priced;
        records::Priced {
            price: self.show(price),
            pays: self.show(pays),
            net: self.show(net),
            tax: self.show(tax),
            keeps: self.show(keeps),
            margin: shown(&margin, self.showing),
            pour_cost: shown(&pour_cost, self.showing),
            markup: shown(&markup, self.showing),
            trap: shown(&trap, self.showing),
            reaches,
        }
    }

    fn line(&self, spec: &records::Spec, glass: Glass, place: usize) -> Result<LineFacts, Fault> {
        let line = glass.line(place)?;
        let saves = glass.answer.lines.get(place).zip(glass.lines.get(place));
        let saves = saves.and_then(|(answer, line)| answer.charged(line.what.charge));
        let bottle = |place: usize| {
            let line = spec.lines.get(place);
            line.map(|line| line.bottle.clone()).unwrap_or_default()
        };
        Ok(LineFacts {
            saves: shown(&saves.cloned(), self.showing),
            without: shown(&line.without, self.showing),
            strength_without: line.strength_without.map(percent_text).unwrap_or_default(),
            outlay: shown(&line.outlay, self.showing),
            bottle_at_most: shown(&line.bottle_at_most, self.showing),
            measure_at_most: shown(&line.measure_at_most, self.showing),
            cost_kept: shown(&line.cost_kept, self.showing),
            same_money: line
                .same_money
                .into_iter()
                .map(|(other, amount)| SameMoney {
                    bottle: bottle(other),
                    line: counted(other),
                    amount: self.show(amount),
                })
                .collect(),
        })
    }

    fn strength(&self, strength: &Strength) -> records::Strength {
        let drink = &strength.drink;
        let figure = |float: f64, unit: &'static str| {
            let number = Kept::nearest(float)?.to(STRENGTH_DECIMALS).fraction();
            let figure = Figure::new(Operand::new(number, unit, BARE), Working::default()).ok();
            shown(&figure, self.showing)
        };
        let is_own = |country: &&StandardDrink| country.code == self.ask.house.drinks_of;
        let own = STANDARD_DRINKS.iter().filter(is_own);
        let others = STANDARD_DRINKS.iter().filter(|country| !is_own(country));
        records::Strength {
            percent: figure(drink.percent, "percent"),
            naive_percent: figure(drink.naive_percent, "percent"),
            low: percent_text(strength.low),
            high: percent_text(strength.high),
            ml: figure(drink.ml, "ml"),
            water_ml: figure(strength.water_ml, "ml"),
            alcohol_g: figure(drink.alcohol_g, "g"),
            drinks: own
                .chain(others)
                .map(|country| Drinks {
                    code: country.code.into(),
                    count: percent_text(country.count(drink)),
                })
                .collect(),
        }
    }

    /// The bottles of a spec, those priced on the spot among them.
    fn bottles<'a>(&'a self, spec: &'a records::Spec) -> impl Iterator<Item = &'a records::Bottle> {
        spec.lines.iter().filter_map(|line| self.bottle(line))
    }

    fn bottle<'a>(&'a self, line: &'a records::Line) -> Option<&'a records::Bottle> {
        if line.bottle.is_empty() {
            return line.own.as_ref();
        }
        self.ask.bottles.iter().find(|bottle| bottle.id == line.bottle)
    }

    /// The codes that a bottle of the spec says, in the order of `all`.
    fn said_by_bottles(
        &self,
        spec: &records::Spec,
        all: &[&'static str],
        says: fn(&records::Bottle) -> &Vec<String>,
    ) -> Vec<String> {
        let says = |code: &&&str| {
            self.bottles(spec).any(|bottle| says(bottle).iter().any(|own| own == **code))
        };
        all.iter().filter(says).map(ToString::to_string).collect()
    }

    fn cautions(
        &self,
        spec: &records::Spec,
        glass: Glass,
        strength: Option<&Strength>,
        priced: Option<&Priced>,
    ) -> Result<Vec<records::Caution>, Fault> {
        let mut cautions = Vec::new();
        let mut say = |code: &'static str, values| cautions.push(Caution { code, values });
        for code in self.said_by_bottles(spec, &WARNS, |bottle| &bottle.warns) {
            if let Some(code) = WARNS.iter().find(|own| **own == code) {
                say(code, Vec::new());
            }
        }
        if let Some(strength) = strength {
            let percent = strength.drink.percent;
            let over = caution::without_alcohol(percent).filter(|_| spec.without_alcohol);
            if let Some(code) = over {
                say(
                    code,
                    vec![(
                        "percent",
                        Kept::nearest(percent).unwrap_or_default().to(3).plain_text(),
                    )],
                );
            }
            let least = caution::minimum_price(strength.drink.alcohol_ml)?;
            let pays = priced.map(|priced| priced.pays.value.fraction());
            let is_under = pays.is_some_and(|pays| pays.compare(least).is_lt());
            if self.is_british() && self.ask.house.currency == "GBP" && is_under {
                let least = self.showing.currency.show_cost(least.kept()?).text;
                say("minimum_unit_price", vec![("least", least)]);
            }
        }
        if self.is_british() {
            cautions.extend(caution::gb_measures(&self.poured(spec, glass)));
        }
        let record = |caution: Caution| records::Caution {
            code: caution.code.into(),
            values: Named(
                caution.values.into_iter().map(|(name, value)| (name.to_string(), value)).collect(),
            ),
        };
        Ok(cautions.into_iter().map(record).collect())
    }

    fn is_british(&self) -> bool {
        self.ask.house.drinks_of == "uk"
    }

    /// The liquids as the law sees them: two lines of one bottle are one.
    fn poured<'a>(&'a self, spec: &'a records::Spec, glass: Glass) -> Vec<Poured<'a>> {
        let mut all: Vec<(Option<usize>, Poured)> = Vec::new();
        for (index, line) in spec.lines.iter().enumerate() {
            let amount = glass.answer.lines.get(index).and_then(|line| line.amount.as_ref());
            let liquid = amount.filter(|amount| amount.unit == "ml");
            let spirit = self.bottle(line).map_or("", |bottle| bottle.spirit.as_str());
            let measure = glass.lines.get(index).and_then(|line| line.what.measure);
            let poured = Poured {
                spirit: if SPIRITS.contains(&spirit) { spirit } else { "" },
                ml: liquid.map(|amount| amount.value.fraction()),
                unit: measure.map(|measure| measure.unit),
            };
            let bottle = glass.lines.get(index).and_then(|line| line.what.bottle);
            let before = all.iter_mut().find(|(own, _)| bottle.is_some() && *own == bottle);
            match before.map(|(_, before)| (before.ml.zip(poured.ml), before)) {
                Some((Some((one, other)), before)) => before.ml = one.plus(other).ok(),
                _ => all.push((bottle, poured)),
            }
        }
        all.into_iter().map(|(_, poured)| poured).collect()
    }
}

fn percent_of(percent: Option<Fraction>) -> Result<String, Fault> {
    let kept = percent.map(|percent| percent.kept()).transpose()?;
    Ok(kept.map(Kept::plain_text).unwrap_or_default())
}

/// Decimals of a strength and of what follows from it: more than any label gives.
const STRENGTH_DECIMALS: u32 = 4;

/// What must be bought: a [`ShopAsk`] as JSON to a [`ShopReply`] as JSON.
pub fn shop(ask: &str) -> String {
    written(&match read_text::<ShopAsk>(ask) {
        Ok(ask) => shopped(ask),
        Err(fault) => ShopReply { problems: told(vec![fault.at("")]), ..Default::default() },
    })
}

fn shopped(ask: ShopAsk) -> ShopReply {
    let ShopAsk { house, bottles, specs, counts } = ask;
    let ask = Ask { house, bottles, pours: Vec::new(), specs };
    let mut problems = Problems::default();
    let sums = asking::sheet_ask(&ask, &mut problems);
    let answer = sheet::answer(&sums, &mut problems);
    let marks = hand(&ask.house, &mut Problems::default()).marks;
    let currency = currency(&ask.house.currency).unwrap_or(UNKNOWN);
    let showing = Showing::in_full(currency, &ask.bottles);
    let mut read = Vec::new();
    for (index, count) in counts.iter().enumerate() {
        let count = reading::whole_number(count, marks);
        read.push(problems.keep(&format!("counts[{index}]"), count).flatten());
    }
    let (rows, missing) = shopping(&sums, &answer.specs, &read, &mut problems);
    let costs: Vec<_> = rows.iter().map(|row| ("outlay", row.cost.value)).collect();
    let outlay = if costs.is_empty() { None } else { problems.keep("", sum("outlay_all", &costs)) };
    let each = outlay.as_ref().and_then(|outlay| each(outlay, &read).ok().flatten());
    let name = |index: usize| {
        let own =
            ask.specs.iter().flat_map(|spec| &spec.lines).filter_map(|line| line.own.as_ref());
        ask.bottles.iter().chain(own).nth(index).map(|bottle| bottle.name.clone())
    };
    let rows = rows.into_iter().map(|row| ShopRow {
        bottle: ask.bottles.get(row.bottle).map(|bottle| bottle.id.clone()).unwrap_or_default(),
        name: name(row.bottle).unwrap_or_default(),
        needs: shown(&Some(row.needs), showing),
        has: shown(&row.has, showing),
        buys: row.buys,
        cost: shown(&Some(row.cost), showing),
        left: shown(&Some(row.left), showing),
    });
    ShopReply {
        rows: rows.collect(),
        outlay: shown(&outlay, showing),
        each: shown(&each, showing),
        missing: counted(missing),
        problems: told(problems.0),
    }
}

/// The outlay for one glass.
fn each(outlay: &Figure, counts: &[Option<Fraction>]) -> Result<Option<Figure>, Fault> {
    use crate::working::Does::{Over, Start};
    let glasses =
        counts.iter().flatten().try_fold(Fraction::NOUGHT, |sum, count| sum.plus(*count))?;
    if glasses.is_nought() {
        return Ok(None);
    }
    let mut working = Working::default();
    let outlay = Operand::new(outlay.value.fraction(), outlay.unit, "outlay_all");
    let terms = [(Start, outlay), (Over, Operand::new(glasses, BARE, "glasses"))];
    let each = working.step("outlay_each", outlay.unit, &terms)?;
    Figure::new(each, working).map(Some)
}
