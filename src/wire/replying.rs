//! From a sheet's figures to the records of a reply: each figure rounded for display beside its
//! exact value, and its working written out.

use super::counted;
use super::ranging::Showing;
use super::records::{self, BottleReply, LineReply, PourReply, Reply, SpecReply, Step, Term};
use crate::bottle::Bottle;
use crate::measure::Measure;
use crate::money::{Shown, show_amount, show_operand};
use crate::number::Kept;
use crate::sheet::{self, BottleAnswer, GlassAnswer, LineAnswer};
use crate::working::{self, Figure, MONEY, Operand};
use alloc::string::String;
use alloc::vec::Vec;

/// The records of a reply. `sums` is the sheet that was read from the request.
pub fn reply(reply: &sheet::Reply, sums: &sheet::Ask, showing: Showing) -> Reply {
    let pours = reply.pours.iter().zip(&sums.pours);
    let specs = reply.specs.iter().zip(&sums.specs);
    // The bottles of lines priced on the spot stand behind those of the request: they are no reply.
    let bottles = reply.bottles.iter().zip(&sums.bottles).take(showing.bottles.len());
    Reply {
        bottles: bottles
            .map(|(answer, bottle)| bottle_reply(answer, &bottle.what, showing))
            .collect(),
        pours: pours.map(|(pour, line)| pour_reply(pour, line.what.measure, showing)).collect(),
        specs: specs.map(|(glass, lines)| spec_reply(glass, lines, showing)).collect(),
        problems: Vec::new(),
    }
}

fn bottle_reply(answer: &BottleAnswer, bottle: &Bottle, showing: Showing) -> BottleReply {
    BottleReply {
        cost_each: answer
            .cost_each
            .as_ref()
            .map(|figure| record(figure, showing.currency.show_cost_each(figure.value), showing)),
        cost: shown(&answer.cost, showing),
        usable: shown(&answer.usable, showing),
        unit: unit_read(bottle.holds.map(|holds| holds.measure)),
    }
}

fn pour_reply(pour: &LineAnswer, measure: Option<Measure>, showing: Showing) -> PourReply {
    PourReply {
        cost: shown(&pour.poured, showing),
        amount: shown(&pour.amount, showing),
        count: shown(&pour.count, showing),
        left_over: shown(&pour.left_over, showing),
        unit: unit_read(measure),
    }
}

/// What a glass costs, and each of its lines.
pub fn spec_reply(
    glass: &GlassAnswer,
    lines: &[sheet::Placed<sheet::Line>],
    showing: Showing,
) -> SpecReply {
    let costs: Vec<Kept> = glass.line_costs.iter().flatten().copied().collect();
    let sum = glass.cost.as_ref().map(|cost| cost.value).unwrap_or_default();
    let (column, total) = showing.currency.show_column(&costs, sum);
    let mut column = column.into_iter();
    let lines =
        glass.lines.iter().zip(lines).zip(&glass.shares).map(|((answer, line), share)| LineReply {
            cost: answer
                .charged(line.what.charge)
                .and_then(|cost| column.next().map(|shown| record(cost, shown, showing))),
            other_cost: answer
                .charged_otherwise(line.what.charge)
                .map(|cost| record(cost, showing.currency.show_cost(cost.value), showing)),
            difference: shown(&answer.difference, showing),
            amount: shown(&answer.amount, showing),
            share_percent: *share,
            unit: unit_read(line.what.measure),
        });
    SpecReply {
        lines: lines.collect(),
        cost: glass.cost.as_ref().map(|cost| record(cost, total, showing)),
        missing: counted(glass.missing),
    }
}

/// How a glass moves from one sheet to the next; nothing if it stays.
pub fn moved(
    id: &str,
    before: &GlassAnswer,
    after: &GlassAnswer,
    showing: Showing,
) -> Option<records::Moved> {
    let value = |glass: &GlassAnswer| glass.cost.as_ref().map(|cost| cost.value);
    if value(before) == value(after) {
        return None;
    }
    let both = before.cost.as_ref().zip(after.cost.as_ref());
    let change = both.and_then(|(before, after)| sheet::change(before, after).ok().flatten());
    Some(records::Moved {
        id: id.into(),
        before: shown(&before.cost, showing),
        after: shown(&after.cost, showing),
        change: shown(&change, showing),
    })
}

fn unit_read(measure: Option<Measure>) -> String {
    measure.map(|measure| measure.unit.code.into()).unwrap_or_default()
}

/// A figure rounded for display, with its working and its range.
pub fn shown(figure: &Option<Figure>, showing: Showing) -> Option<records::Figure> {
    figure.as_ref().map(|figure| {
        let shown = match figure.unit {
            MONEY => showing.currency.show_cost(figure.value),
            _ => show_amount(figure.value),
        };
        record(figure, shown, showing)
    })
}

fn record(figure: &Figure, shown: Shown, showing: Showing) -> records::Figure {
    records::Figure {
        value: figure.value.plain_text(),
        unit: figure.unit.into(),
        shown: shown.text,
        shown_minor: shown.minor,
        working: if showing.brief {
            Vec::new()
        } else {
            figure.working.steps.iter().map(|line| step(line, showing)).collect()
        },
        range: (showing.range)(showing, figure),
    }
}

fn step(step: &working::Step, showing: Showing) -> Step {
    let terms = step.terms.iter().map(|(does, operand)| term(*does, operand, showing));
    Step {
        finds: step.finds.into(),
        terms: terms.collect(),
        result: step.result.plain_text(),
        shown: shown_operand(step.result, step.unit, showing),
        unit: step.unit.into(),
        rounded: step.rounded.text().into(),
    }
}

fn term(does: working::Does, operand: &Operand, showing: Showing) -> Term {
    let kept = operand.number.kept().unwrap_or_default();
    let (value, shown) = match operand.step {
        None if kept.fraction() != operand.number => {
            let (top, bottom) = operand.number.parts();
            let typed = format!("{top}/{bottom}");
            (typed.clone(), typed)
        }
        _ => (kept.plain_text(), shown_operand(kept, operand.unit, showing)),
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

fn shown_operand(value: Kept, unit: &str, showing: Showing) -> String {
    if unit == MONEY { showing.currency.show_operand(value) } else { show_operand(value) }
}

/// A strength or a count, to two decimals.
pub fn percent_text(float: f64) -> String {
    Kept::nearest(float).unwrap_or_default().to(2).plain_text()
}
