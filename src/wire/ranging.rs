//! From a doubt to the record of a range: each number rounded as the range is, two figures in its width.

use super::counted;
use super::records::{self, Helps, Part, Range};
use crate::doubt::{self, Doubt};
use crate::money::{Currency, Shown, share_out, show_operand};
use crate::number::{Fraction, Kept};
use crate::working::{BARE, Figure, MONEY};
use alloc::string::ToString;

/// What a doubt is shown with.
#[derive(Clone, Copy)]
pub struct Showing<'a> {
    /// The currency of money.
    pub currency: Currency,
    /// The bottles of the request.
    pub bottles: &'a [records::Bottle],
    /// Whether figures go without their working.
    pub brief: bool,
    /// How the range of a figure is written. A function, so that a build that never writes it in full does
    /// not carry what that takes.
    pub range: fn(Showing, &Figure) -> Option<Range>,
}

impl<'a> Showing<'a> {
    /// Figures with their working, their range and what that is made of.
    pub const fn in_full(currency: Currency, bottles: &'a [records::Bottle]) -> Self {
        Showing { currency, bottles, brief: false, range: in_full }
    }

    /// Figures by themselves, as in a long list.
    pub const fn in_brief(currency: Currency, bottles: &'a [records::Bottle]) -> Self {
        Showing { currency, bottles, brief: true, range: |_, _| None }
    }

    /// Figures with their working, and between what they lie.
    pub const fn with_ends(currency: Currency) -> Self {
        Showing { currency, bottles: &[], brief: false, range: ends }
    }
}

/// Between what a figure lies; nothing if nothing in it is in doubt, or nothing that changes it.
fn ends(showing: Showing, figure: &Figure) -> Option<Range> {
    let doubt = figure.doubt.as_ref().filter(|doubt| doubt.low != doubt.high)?;
    let half = half_width(doubt)?;
    let show = |value| showing.shown(value, half, figure.unit);
    Some(Range {
        about: show(figure.value),
        low: show(doubt.low),
        high: show(doubt.high),
        low_value: doubt.low.plain_text(),
        high_value: doubt.high.plain_text(),
        ..Range::default()
    })
}

/// The same with what the doubt is made of.
fn in_full(showing: Showing, figure: &Figure) -> Option<Range> {
    let doubt = figure.doubt.as_ref()?;
    let near = |float| Kept::nearest(float).unwrap_or_default();
    let small = |float| showing.shown(near(float), near(float), figure.unit);
    let shares = share_out(100, &doubt.weights()).unwrap_or_default();
    let part = |(part, share): (&doubt::Part, i128)| Part {
        moves: small(part.moves),
        share_percent: u64::try_from(share).unwrap_or_default(),
        ..showing.part(part)
    };
    Some(Range {
        middle: showing.shown(near(doubt.middle), half_width(doubt)?, figure.unit),
        standard: small(doubt.standard),
        factor: show_operand(Kept::nearest(doubt.factor)?.to(2)),
        freedom: doubt.freedom.filter(|_| doubt.factor > 2.0).map(u64::from),
        cut: doubt.cut,
        parts: doubt.parts.iter().zip(shares).map(part).collect(),
        helps: doubt.helps().map(|helps| helps_record(doubt, &helps)),
        ..ends(showing, figure)?
    })
}

fn half_width(doubt: &Doubt) -> Option<Kept> {
    let width = doubt.high.fraction().less(doubt.low.fraction()).ok()?;
    width.over(Fraction::new(2, 1)?).and_then(|half| half.kept()).ok()
}

impl Showing<'_> {
    fn part(self, part: &doubt::Part) -> Part {
        let doubt::Part { input, .. } = part;
        let source = input.source;
        let told = input.spread.told(input.best).filter(|_| source.unit != BARE);
        let text = |value: Option<Kept>| value.map(show_operand).unwrap_or_default();
        let bottle = source.bottle.and_then(|index| self.bottles.get(index));
        Part {
            is: source.is.into(),
            line: source.line.map(counted),
            bottle: bottle.map(|bottle| bottle.id.clone()).unwrap_or_default(),
            of: source.of.into(),
            unit: source.unit.into(),
            best: text(input.best.kept().ok().filter(|_| source.unit != BARE)),
            least: text(told.map(|(least, _)| least)),
            most: text(told.map(|(_, most)| most)),
            spread: input.spread.text().into(),
            ..Part::default()
        }
    }

    fn shown(self, value: Kept, half: Kept, unit: &str) -> records::Shown {
        let Shown { text, minor } = match unit {
            MONEY => self.currency.show_within(value, half),
            _ => Shown { text: show_operand(value.to(half.decimals_for(2))), minor: None },
        };
        records::Shown { text, minor }
    }
}

fn helps_record(doubt: &Doubt, helps: &doubt::Helps) -> Helps {
    let how = doubt.parts.get(helps.part).and_then(|part| part.input.helps);
    let left = Kept::nearest(helps.left * 100.0).unwrap_or_default();
    Helps {
        part: counted(helps.part),
        how: how.map(ToString::to_string).unwrap_or_default(),
        left_percent: u64::try_from(left.rounded(0)).unwrap_or_default(),
    }
}
