//! From a sheet's figures to the records of a reply: each figure rounded for display beside its
//! exact value, and its working written out.

use super::counted;
use super::records::{self, Ask, BottleReply, LineReply, PourReply, Reply, SpecReply, Step, Term};
use crate::bottle::Bottle;
use crate::measure::Measure;
use crate::money::{Currency, Shown, show_amount, show_operand};
use crate::number::Kept;
use crate::sheet::{self, BottleAnswer, GlassAnswer, LineAnswer};
use crate::working::{self, Figure, MONEY, Operand};
use alloc::string::String;
use alloc::vec::Vec;

/// The records of a reply. `ask` is the request it answers, `sums` the sheet that was read from it.
pub fn reply(reply: &sheet::Reply, sums: &sheet::Ask, ask: &Ask, currency: Currency) -> Reply {
    let pours = reply.pours.iter().zip(&sums.pours);
    let specs = reply.specs.iter().zip(&sums.specs);
    // The bottles of lines priced on the spot stand behind those of the request: they are no reply.
    let bottles = reply.bottles.iter().zip(&sums.bottles).take(ask.bottles.len());
    Reply {
        bottles: bottles
            .map(|(answer, bottle)| bottle_reply(answer, &bottle.what, currency))
            .collect(),
        pours: pours.map(|(pour, line)| pour_reply(pour, line.what.measure, currency)).collect(),
        specs: specs.map(|(glass, lines)| spec_reply(glass, lines, currency)).collect(),
        problems: Vec::new(),
    }
}

fn bottle_reply(answer: &BottleAnswer, bottle: &Bottle, currency: Currency) -> BottleReply {
    BottleReply {
        cost_each: answer
            .cost_each
            .as_ref()
            .map(|figure| record(figure, currency.show_cost_each(figure.value), currency)),
        cost: shown(&answer.cost, currency),
        usable: shown(&answer.usable, currency),
        unit: unit_read(bottle.holds.map(|holds| holds.measure)),
    }
}

fn pour_reply(pour: &LineAnswer, measure: Option<Measure>, currency: Currency) -> PourReply {
    PourReply {
        cost: shown(&pour.poured, currency),
        amount: shown(&pour.amount, currency),
        count: shown(&pour.count, currency),
        left_over: shown(&pour.left_over, currency),
        unit: unit_read(measure),
    }
}

fn spec_reply(
    glass: &GlassAnswer,
    lines: &[sheet::Placed<sheet::Line>],
    currency: Currency,
) -> SpecReply {
    let costs: Vec<Kept> = glass.line_costs.iter().flatten().copied().collect();
    let sum = glass.cost.as_ref().map(|cost| cost.value).unwrap_or_default();
    let (column, total) = currency.show_column(&costs, sum);
    let mut column = column.into_iter();
    let lines =
        glass.lines.iter().zip(lines).zip(&glass.shares).map(|((answer, line), share)| LineReply {
            cost: answer
                .charged(line.what.charge)
                .and_then(|cost| column.next().map(|shown| record(cost, shown, currency))),
            other_cost: answer
                .charged_otherwise(line.what.charge)
                .map(|cost| record(cost, currency.show_cost(cost.value), currency)),
            difference: shown(&answer.difference, currency),
            amount: shown(&answer.amount, currency),
            share_percent: *share,
            unit: unit_read(line.what.measure),
        });
    SpecReply {
        lines: lines.collect(),
        cost: glass.cost.as_ref().map(|cost| record(cost, total, currency)),
        missing: counted(glass.missing),
    }
}

/// How a glass moves from one sheet to the next; nothing if it stays.
pub fn moved(
    id: &str,
    before: &GlassAnswer,
    after: &GlassAnswer,
    currency: Currency,
) -> Option<records::Moved> {
    let value = |glass: &GlassAnswer| glass.cost.as_ref().map(|cost| cost.value);
    if value(before) == value(after) {
        return None;
    }
    let both = before.cost.as_ref().zip(after.cost.as_ref());
    let change = both.and_then(|(before, after)| sheet::change(before, after).ok().flatten());
    Some(records::Moved {
        id: id.into(),
        before: shown(&before.cost, currency),
        after: shown(&after.cost, currency),
        change: shown(&change, currency),
    })
}

fn unit_read(measure: Option<Measure>) -> String {
    measure.map(|measure| measure.unit.code.into()).unwrap_or_default()
}

fn shown(figure: &Option<Figure>, currency: Currency) -> Option<records::Figure> {
    figure.as_ref().map(|figure| {
        let shown = match figure.unit {
            MONEY => currency.show_cost(figure.value),
            _ => show_amount(figure.value),
        };
        record(figure, shown, currency)
    })
}

fn record(figure: &Figure, shown: Shown, currency: Currency) -> records::Figure {
    records::Figure {
        value: figure.value.plain_text(),
        unit: figure.unit.into(),
        shown: shown.text,
        shown_minor: shown.minor,
        working: figure.working.0.iter().map(|line| step(line, currency)).collect(),
    }
}

fn step(step: &working::Step, currency: Currency) -> Step {
    let terms = step.terms.iter().map(|(does, operand)| term(*does, operand, currency));
    Step {
        finds: step.finds.into(),
        terms: terms.collect(),
        result: step.result.plain_text(),
        shown: shown_operand(step.result, step.unit, currency),
        unit: step.unit.into(),
        rounded: step.rounded.text().into(),
    }
}

fn term(does: working::Does, operand: &Operand, currency: Currency) -> Term {
    let kept = operand.number.kept().unwrap_or_default();
    let (value, shown) = match operand.step {
        None if kept.fraction() != operand.number => {
            let (top, bottom) = operand.number.parts();
            let typed = format!("{top}/{bottom}");
            (typed.clone(), typed)
        }
        _ => (kept.plain_text(), shown_operand(kept, operand.unit, currency)),
    };
    Term {
        does: does.text().into(),
        value,
        shown,
        step: operand.step.map(counted),
        unit: operand.unit.into(),
        is: operand.is.into(),
    }
}

fn shown_operand(value: Kept, unit: &str, currency: Currency) -> String {
    if unit == MONEY { currency.show_operand(value) } else { show_operand(value) }
}
