//! A text as the fragment of a link: packed, so that it is short enough to send, and unpacked again.
//!
//! `1.` and then base64url without padding (RFC 4648, section 5) of the text, in which each of `PIECES`
//! stands as one byte, and of its CRC-32. A general packer makes the same text a sixth longer, and the
//! core 14 KB larger: what a link holds is mostly the names of fields, and those are known beforehand.
//!
//! The number in front is the version of this packing. Links that were sent stay where they were sent,
//! so what begins with `1.` is read like this for ever, and another list of pieces is another version.
//! Refuses a newer version, and whole what is damaged, cut off or longer than it was.

use crate::problem::{Code, Fault};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use base64ct::{Base64UrlUnpadded, Encoding};

/// The version of the packing.
const PACKING: u64 = 1;

/// Characters of a packed text. A spec of the most lines, each of a bottle of its own with the longest
/// of names, takes some 20,000.
pub const MOST_PACKED: usize = 24_000;

/// Bytes of an unpacked text. The same spec takes some 25,000; a packed byte can become fifty.
pub const MOST_UNPACKED_BYTES: usize = 65_536;

/// What often stands in a glass as JSON. The byte for a piece is its place in this list: JSON has no
/// byte below a space.
const PIECES: [&str; 32] = [
    r#"{"format":3,"has_prices":true,"house":{"currency":""#,
    r#"{"format":3,"house":{"currency":""#,
    r#"","decimal_mark":""#,
    r#"","kitchen":""#,
    r#"","tax_percent":""#,
    r#""},"bottles":[{"id":""#,
    r#"","name":""#,
    r#"","paid":{"price":""#,
    r#"","tax":"in"},"holds":{"text":""#,
    r#"","paid":{"tax":"in"},"holds":{"text":""#,
    r#"","unit":""#,
    r#"ml"},"strength":""#,
    r#""},"strength":""#,
    r#""},{"id":""#,
    r#""}},{"id":""#,
    r#""}],"spec":{"id":""#,
    r#""}}],"spec":{"id":""#,
    r#"","lines":[{"bottle":""#,
    r#"","measure":{"text":""#,
    r#""}},"measure":{"text":""#,
    r#"ml"},"charge":"poured"},{"bottle":""#,
    r#""},"charge":"poured"},{"bottle":""#,
    r#""},"charge":"poured"},{"own":{"id":""#,
    r#"ml"},"charge":"poured"}],"method":""#,
    r#""},"charge":"poured"}],"method":""#,
    r#""},"wastage_percent":""#,
    r#""},"measured":{""#,
    r#"":{"way":"count","found":{"size":""#,
    r#"","standard":""#,
    r#"","freedom":""#,
    r#"","more_helps":true}}}"#,
    r#"":{"text":""#,
];

/// Bytes of the check at the end.
const CHECK_BYTES: usize = 4;

/// Packs a text that holds no byte below a space, as JSON does.
///
/// ```
/// use farthing::link::{packed, unpacked};
/// let text = r#"{"name":"Lock Keeper","unit":"ml"}"#;
/// assert_eq!(packed(text).unwrap(), "1.eyJuYW1lIjoiTG9jayBLZWVwZXIKbWwifYI0bRo");
/// assert_eq!(unpacked(&packed(text).unwrap()).unwrap(), text);
/// ```
pub fn packed(text: &str) -> Result<String, Fault> {
    bearable(text.len(), MOST_UNPACKED_BYTES)?;
    let mut bytes = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let starts = |(_, piece): &(u8, &&str)| rest.starts_with(**piece);
        match (0..).zip(&PIECES).filter(starts).max_by_key(|(_, piece)| piece.len()) {
            Some((code, piece)) => {
                bytes.push(code);
                rest = rest.strip_prefix(*piece).unwrap_or_default();
            }
            None => {
                bytes.extend(first.encode_utf8(&mut [0; 4]).as_bytes());
                rest = rest.strip_prefix(first).unwrap_or_default();
            }
        }
    }
    bytes.extend(check(text.as_bytes()));
    let packed = format!("{PACKING}.{}", Base64UrlUnpadded::encode_string(&bytes));
    bearable(packed.len(), MOST_PACKED)?;
    Ok(packed)
}

/// Unpacks a text. Never holds more than the limits above, whatever it is given.
pub fn unpacked(packed: &str) -> Result<String, Fault> {
    bearable(packed.len(), MOST_PACKED)?;
    let (version, letters) = packed.split_once('.').ok_or_else(|| unreadable("no version"))?;
    match version.parse::<u64>() {
        Ok(PACKING) => {}
        Ok(newer) if newer > PACKING => return Err(Fault::new(Code::LinkNewer)),
        _ => return Err(unreadable("no version")),
    }
    let bytes = Base64UrlUnpadded::decode_vec(letters).map_err(|_| unreadable("no base64url"))?;
    let (bytes, sum) = bytes.split_last_chunk().ok_or_else(|| unreadable("no check"))?;
    let mut text = Vec::new();
    for byte in bytes {
        match PIECES.get(usize::from(*byte)) {
            Some(piece) => text.extend(piece.as_bytes()),
            None => text.push(*byte),
        }
        bearable(text.len(), MOST_UNPACKED_BYTES)?;
    }
    if check(&text) != *sum {
        return Err(unreadable("damaged"));
    }
    String::from_utf8(text).map_err(|_| unreadable("no text"))
}

/// CRC-32 as gzip and PNG have it (ISO 3309), its highest byte first. Any change of up to four bytes in
/// a row shows.
fn check(bytes: &[u8]) -> [u8; CHECK_BYTES] {
    let bit = |crc: u32, _| if crc & 1 == 1 { (crc >> 1) ^ 0xEDB8_8320 } else { crc >> 1 };
    let byte = |crc: u32, byte: &u8| (0..8).fold(crc ^ u32::from(*byte), bit);
    (!bytes.iter().fold(!0, byte)).to_be_bytes()
}

/// A link that is not whole, or not one of ours.
pub fn unreadable(why: &str) -> Fault {
    Fault::new(Code::LinkUnreadable).with("why", why).with("where", "")
}

fn bearable(length: usize, most: usize) -> Result<(), Fault> {
    if length > most {
        return Err(Fault::new(Code::LinkTooLong).with("most", most.to_string()));
    }
    Ok(())
}
