//! The TypeScript types of the page are written from the Rust records, and are fresh.
//!
//! To write them anew: `FARTHING_WRITE=1 cargo test --test types`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "a test stops at what it did not expect"
)]

use farthing::wire::kept::{
    Aside, Change, Earlier, KEPT_DECLARATION, ShelfAsk, ShelfFile, ShelfReply,
};
use farthing::wire::record::Declared;
use farthing::wire::records::*;
use farthing::wire::{
    EmbedAsk, EmbedBottle, EmbedLine, EmbedReply, EmbedStrength, LinkAsk, LinkReply, LinkedAsk,
    LinkedReply, OwnPrice, SentGlass, SentHouse,
};
use std::path::Path;

fn declared() -> String {
    let head = "// The records that cross the boundary between the page and the core.\n\
                // Written from src/wire by `FARTHING_WRITE=1 cargo test --test types`: change them there.\n";
    let declarations = [
        Written::declaration(),
        House::declaration(),
        Paid::declaration(),
        Found::declaration(),
        Measuring::declaration(),
        Bottle::declaration(),
        Line::declaration(),
        Spec::declaration(),
        Pour::declaration(),
        Ask::declaration(),
        Term::declaration(),
        Step::declaration(),
        Shown::declaration(),
        Part::declaration(),
        Helps::declaration(),
        Range::declaration(),
        Figure::declaration(),
        Problem::declaration(),
        MeasureAsk::declaration(),
        MeasureReply::declaration(),
        BottleReply::declaration(),
        PourReply::declaration(),
        LineReply::declaration(),
        SpecReply::declaration(),
        Reply::declaration(),
        FactsAsk::declaration(),
        FactsReply::declaration(),
        Facts::declaration(),
        Priced::declaration(),
        Strength::declaration(),
        Drinks::declaration(),
        LineFacts::declaration(),
        SameMoney::declaration(),
        Caution::declaration(),
        ShopAsk::declaration(),
        ShopReply::declaration(),
        ShopRow::declaration(),
        KeepingAsk::declaration(),
        KeepingReply::declaration(),
        KeepingPoint::declaration(),
        Offer::declaration(),
        OffersAsk::declaration(),
        OffersReply::declaration(),
        OfferReply::declaration(),
        NamedBottle::declaration(),
        RecipeAsk::declaration(),
        RecipeLine::declaration(),
        RecipeReply::declaration(),
        RecipeOutAsk::declaration(),
        RecipeOutReply::declaration(),
        OwnPrice::declaration(),
        EmbedAsk::declaration(),
        EmbedLine::declaration(),
        EmbedBottle::declaration(),
        EmbedStrength::declaration(),
        EmbedReply::declaration(),
        LinkAsk::declaration(),
        LinkReply::declaration(),
        LinkedAsk::declaration(),
        LinkedReply::declaration(),
        SentHouse::declaration(),
        SentGlass::declaration(),
        MovesAsk::declaration(),
        Moved::declaration(),
        MovesReply::declaration(),
        UnitRow::declaration(),
        CurrencyRow::declaration(),
        Tables::declaration(),
        Earlier::declaration(),
        KEPT_DECLARATION.to_string(),
        ShelfAsk::declaration(),
        Aside::declaration(),
        Change::declaration(),
        ShelfReply::declaration(),
        ShelfFile::declaration(),
    ];
    format!("{head}\n{}", declarations.join("\n"))
}

#[test]
fn the_committed_types_are_those_of_the_records() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/records.d.ts");
    let declared = declared();
    if std::env::var_os("FARTHING_WRITE").is_some() {
        std::fs::write(&path, &declared).unwrap();
    }
    let committed = std::fs::read_to_string(&path).unwrap();
    assert!(
        committed == declared,
        "www/records.d.ts is stale: FARTHING_WRITE=1 cargo test --test types"
    );
}

#[test]
fn a_declaration_reads_as_typescript() {
    assert_eq!(
        Line::declaration(),
        "export interface Line {\n  bottle: string;\n  own: Bottle | null;\n  measure: Written;\n  charge: \"poured\" | \"whole\";\n  note: string;\n}\n"
    );
}
