//! What spoils: the pours of one bottle against a statistics library and against orders that are
//! played out, and the pace at which two bottles cost the same.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    clippy::as_conversions,
    clippy::string_slice,
    reason = "a test stops at what it did not expect"
)]

mod outside;

use farthing::keeping::{Kept, pours_per_bottle};
use farthing::wire;
use outside::replay::replay;
use outside::{Die, config, exact, half_away, reply, sound_reply, value};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Value, json};
use statrs::distribution::{DiscreteCDF, Poisson};

const MEANS: [f64; 16] = [
    1e-6, 1e-3, 0.1, 0.5, 1.0, 2.5, 7.0, 20.0, 60.0, 200.0, 699.0, 745.0, 1_000.0, 4_990.0,
    20_000.0, 1e5,
];
const HOLDS: [u32; 10] = [1, 2, 3, 5, 14, 28, 100, 700, 1_000, 5_000];

/// `1 + Σ P(K ≥ j)`, each chance from the library.
fn referee(holds: u32, mean: f64) -> f64 {
    let orders = Poisson::new(mean).unwrap();
    1.0 + (1..holds).map(|more| orders.sf(u64::from(more) - 1)).sum::<f64>()
}

#[test]
fn pours_agree_with_a_statistics_library() {
    for mean in MEANS {
        for holds in HOLDS {
            let ours = pours_per_bottle(holds, mean, Some(1.0));
            let theirs = referee(holds, mean);
            assert!((ours - theirs).abs() <= 1e-9 * theirs, "{holds} {mean}: {ours} {theirs}");
            // Only what is ordered while it keeps matters: the pace times the days.
            let slower = pours_per_bottle(holds, mean / 8.0, Some(8.0));
            assert!((ours - slower).abs() <= 1e-9 * theirs, "{holds} {mean}");
        }
    }
}

/// Computed by hand: a bottle of two or three pours that keeps until one order is expected.
#[test]
fn small_bottles_by_hand() {
    let e = (-1.0f64).exp();
    for (holds, mean, pours) in [
        (1, 1.0, 1.0),
        (2, 1.0, 2.0 - e),
        (3, 1.0, 3.0 - 3.0 * e),
        (2, 1e-6, 1.0 + (-1e-6f64).exp_m1().abs()),
        (0, 1.0, 1.0),
    ] {
        let found = pours_per_bottle(holds, mean, Some(1.0));
        assert!((found - pours).abs() < 1e-12, "{holds} {mean}: {found}");
    }
}

#[test]
fn for_ever_it_gives_what_it_holds() {
    for holds in [1, 28, 5_000, 100_000, 1_000_000] {
        assert_eq!(pours_per_bottle(holds, 0.01, None), f64::from(holds));
        let kept = Kept { cost: 18.5, holds, gives: f64::from(holds), days: None };
        assert_eq!(kept.cost_a_pour(3.0), 18.5 / f64::from(holds));
    }
    // So it is with a bottle that is emptied long before it spoils.
    assert!((pours_per_bottle(5_000, 1e5, Some(1.0)) - 5_000.0).abs() < 1e-9);
    // A pace and days that no bar has are answered too.
    assert!((pours_per_bottle(u32::MAX, 1e9, Some(1e9)) - 1e5).abs() < 1e-6);
}

/// Plays out orders until so many bottles were opened: one at the first order when none is open, thrown
/// away after its days. Gives the pours a bottle and the standard error of that.
fn played(die: &mut Die, holds: u32, a_day: f64, days: f64, bottles: u32) -> (f64, f64) {
    let mut wait = || {
        let chance = (die.below(1 << 53) as f64 + 0.5) / (1u64 << 53) as f64;
        -chance.ln() / a_day
    };
    let (mut sum, mut squares) = (0.0, 0.0);
    let mut now = wait();
    for _ in 0..bottles {
        let spoils = now + days;
        let mut pours = 0;
        while pours < holds && now <= spoils {
            pours += 1;
            now += wait();
        }
        sum += f64::from(pours);
        squares += f64::from(pours * pours);
    }
    let n = f64::from(bottles);
    let mean = sum / n;
    (mean, ((squares / n - mean * mean).max(0.0) / n).sqrt())
}

#[test]
fn orders_played_out_agree() {
    let mut die = Die(20_261_125);
    let (mut far, mut all) = (0, 0);
    for holds in [2, 14, 28] {
        for a_week in [0.5, 3.0, 12.0, 60.0] {
            for days in [3.0, 14.0, 30.5] {
                let (mean, error) = played(&mut die, holds, a_week / 7.0, days, 4_000);
                let ours = pours_per_bottle(holds, a_week / 7.0, Some(days));
                let off = (ours - mean).abs();
                // Where every one of the bottles was emptied, what is rarer than that is allowed.
                let rare = f64::from(holds) / 4_000.0;
                assert!(
                    off <= (4.0 * error).max(if error == 0.0 { rare } else { 0.0 }),
                    "{holds} {a_week} {days}: {ours} {mean} ± {error}"
                );
                far += i32::from(off > 2.0 * error + 1e-9);
                all += 1;
            }
        }
    }
    // About one in twenty-two may be further off than two standard errors.
    assert!(all == 36 && far <= 5, "{far} of {all}");
}

/// Two bottles of the same, as typed: price, contents, days; a measure of 50 ml of either.
fn two(one: (&str, &str, &str), other: (&str, &str, &str), most: &str) -> Value {
    let bottle = |id: &str, (price, holds, days): (&str, &str, &str)| json!({"id": id, "paid": {"price": price}, "holds": {"text": holds}, "keeps_days": days});
    let measure = json!({"text": "50 ml"});
    sound_reply(
        wire::keeping,
        &json!({"bottles": [bottle("one", one), bottle("other", other)], "measures": [measure, measure],
            "most_a_week": most}),
    )
}

#[test]
fn two_bottles_side_by_side() {
    // A half bottle wastes less, a bottle costs less a pour: 7 and 15 pours, both keep three weeks.
    let reply = two(("9", "375 ml", "21"), ("14", "750 ml", "21"), "20");
    let (small, large) = (
        Kept { cost: 9.0, holds: 7, gives: 7.0, days: Some(21.0) },
        Kept { cost: 14.0, holds: 15, gives: 15.0, days: Some(21.0) },
    );
    let points = reply["points"].as_array().unwrap();
    assert_eq!(points.len(), 20);
    for (point, a_week) in points.iter().zip(1..) {
        assert_eq!(point["a_week"], a_week);
        for (shown, kept) in point["costs"].as_array().unwrap().iter().zip([small, large]) {
            let cost = kept.cost / referee(kept.holds, f64::from(a_week) * 3.0);
            let text = half_away(&exact(&format!("{cost:.9}")), 2);
            assert_eq!(shown["text"], text, "{a_week} a week");
        }
    }
    let crossing: f64 = reply["crossing"].as_str().unwrap().parse().unwrap();
    let gap = |a_week: f64| small.cost_a_pour(a_week) - large.cost_a_pour(a_week);
    assert!(gap(crossing - 0.06) < 0.0 && gap(crossing + 0.06) > 0.0, "{crossing}");
    assert_eq!(reply["cheaper_below"], 0, "the half bottle, at a slow pace");
    let turned = two(("14", "750 ml", "21"), ("9", "375 ml", "21"), "20");
    assert_eq!((&turned["crossing"], &turned["cheaper_below"]), (&reply["crossing"], &json!(1)));
    // The highest point is drawn at a thousand.
    let heights = points.iter().flat_map(|point| point["heights"].as_array().unwrap());
    assert_eq!(heights.map(|height| height.as_u64().unwrap()).max(), Some(1_000));
}

#[test]
fn what_keeps_for_ever_costs_the_same_at_every_pace() {
    let reply = two(("18", "900 ml", ""), ("18", "100 ml", ""), "");
    let points = reply["points"].as_array().unwrap();
    assert_eq!(points.len(), 60, "the usual number");
    for point in points {
        assert_eq!(point["costs"][0], json!({"text": "1.00", "minor": null}), "18 for 18 pours");
        assert_eq!(point["costs"][1], json!({"text": "9.00", "minor": null}), "18 for 2 pours");
    }
    assert_eq!(reply["crossing"], "", "one is always cheaper");
    assert_eq!(value(&reply["highest"]), "9");
}

#[test]
fn a_pace_that_is_not_drawn_is_told() {
    let ask = |most: &str| {
        let bottle = json!({"id": "b", "paid": {"price": "9"}, "holds": {"text": "100 ml"}});
        let ask = json!({"bottles": [bottle], "measures": [{"text": "5 ml"}], "most_a_week": most});
        let reply = reply(wire::keeping, &ask);
        (reply["problems"][0]["code"].clone(), reply["points"].as_array().unwrap().len())
    };
    assert_eq!(ask("500"), (json!(null), 500));
    assert_eq!(ask("501"), (json!("too_big"), 60));
    assert_eq!(ask("x"), (json!("number_unreadable"), 60));
}

/// A glass at its pace: what spoils is charged by what is poured of it, the rest as ever.
#[test]
fn a_glass_at_its_pace() {
    let bottle = |id: &str, days: &str| json!({"id": id, "paid": {"price": "14"}, "holds": {"text": "750 ml"}, "keeps_days": days});
    let line = |id: &str, measure: &str, charge: &str| json!({"bottle": id, "measure": {"text": measure}, "charge": charge});
    let facts = |lines: Value, a_week: &str| {
        let spec = json!({"id": "s", "lines": lines, "a_week": a_week});
        let ask = json!({"bottles": [bottle("spoils", "21"), bottle("keeps", "")], "specs": [spec], "in_full": true});
        sound_reply(wire::facts, &ask)["specs"][0].clone()
    };
    let lines = json!([line("spoils", "50 ml", "poured"), line("keeps", "75 ml", "poured")]);
    let found = facts(lines.clone(), "4");
    let pour = 14.0 / referee(15, 12.0);
    for (figure, cost) in
        [(&found["lines"][0]["cost_kept"], pour), (&found["cost_kept"], pour + 1.4)]
    {
        replay(figure);
        let ours: f64 = value(figure).parse().unwrap();
        assert!((ours - cost).abs() < 1e-8, "{ours} {cost}");
    }
    assert_eq!(found["lines"][1]["cost_kept"], json!(null), "it keeps");
    assert_eq!(facts(lines, "")["cost_kept"], json!(null), "no pace is given");
    // Two lines of one bottle empty it together: what they cost is one bottle's.
    let shared = json!([line("spoils", "30 ml", "poured"), line("spoils", "20 ml", "poured")]);
    let found = facts(shared, "4");
    for (figure, cost) in [
        (&found["lines"][0]["cost_kept"], pour * 0.6),
        (&found["lines"][1]["cost_kept"], pour * 0.4),
        (&found["cost_kept"], pour),
    ] {
        replay(figure);
        let ours: f64 = value(figure).parse().unwrap();
        assert!((ours - cost).abs() < 1e-8, "{ours} {cost}");
    }
    // One is opened for each glass: nothing is left that could spoil.
    for lines in
        [json!([line("spoils", "50 ml", "whole")]), json!([line("spoils", "800 ml", "poured")])]
    {
        assert_eq!(facts(lines, "4")["cost_kept"], json!(null));
    }
}

fn bottle() -> impl Strategy<Value = Kept> {
    let days = prop_oneof![(0.5f64..200.0).prop_map(Some), Just(None)];
    (1.0f64..60.0, 1u32..60, days).prop_map(|(cost, holds, days)| Kept {
        cost,
        holds,
        gives: f64::from(holds),
        days,
    })
}

proptest! {
    #![proptest_config(config())]

    /// More orders, more days, and a bottle gives no less, nor more than it holds.
    #[test]
    fn prop_pours_grow_with_pace_and_days(
        holds in select(HOLDS.to_vec()), mean in select(MEANS.to_vec()), more in 1.0f64..50.0, days in 0.5f64..200.0,
    ) {
        let pours = |a_day: f64, days: f64| pours_per_bottle(holds, a_day, Some(days));
        let found = pours(mean / days, days);
        let least = found * (1.0 - 1e-12);
        prop_assert!(1.0 <= found && found <= f64::from(holds) * (1.0 + 1e-12));
        prop_assert!(pours(mean / days * more, days) >= least && pours(mean / days, days * more) >= least);
        prop_assert!(pours_per_bottle(holds + 1, mean / days, Some(days)) >= least);
        // Nor more than the first and all that are ordered while it keeps.
        prop_assert!(found <= (1.0 + mean) * (1.0 + 1e-12));
    }

    /// Where two cross they cost the same; where they do not, one is cheaper at both ends.
    #[test]
    fn prop_at_the_crossing_both_cost_the_same(one in bottle(), other in bottle()) {
        let gap = |a_week: f64| one.cost_a_pour(a_week) - other.cost_a_pour(a_week);
        match one.crossing(&other, 0.05, 60.0) {
            Some(crossing) => {
                prop_assert!((0.05..=60.0).contains(&crossing));
                prop_assert!(gap(crossing).abs() < 1e-9, "{} {}", crossing, gap(crossing));
            }
            None => prop_assert_eq!(gap(0.05) > 0.0, gap(60.0) > 0.0),
        }
    }
}
