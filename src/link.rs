//! A text as the fragment of a link: packed, so that it is short enough to send, and unpacked again.
//!
//! `1.` and then base64url without padding (RFC 4648, section 5) of zlib (RFC 1950). The number in front
//! is the version of this packing: links that were sent stay where they were sent, so a text that
//! begins with `1.` is read like this for ever. Refuses a newer version, and whole what is damaged, cut
//! off or longer than it was: zlib's check (Adler-32) covers every byte.

use crate::problem::{Code, Fault};
use alloc::boxed::Box;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use base64ct::{Base64UrlUnpadded, Encoding};
use miniz_oxide::deflate::compress_to_vec_zlib;
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::inflate_flags::{
    TINFL_FLAG_PARSE_ZLIB_HEADER, TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF,
};
use miniz_oxide::inflate::core::{DecompressorOxide, decompress};

/// The version of the packing.
const PACKING: u64 = 1;

/// Characters of a packed text. A spec of the most lines, each of a bottle of its own with the longest
/// of names, takes some 10,000.
pub const MOST_PACKED: usize = 16_000;

/// Bytes of an unpacked text. The same spec takes some 35,000; a packed byte can become a thousand.
pub const MOST_UNPACKED_BYTES: usize = 65_536;

/// The library's thorough level: a link is made once and read by eye, so that each character counts.
const LEVEL: u8 = 9;

/// Packs a text.
///
/// ```
/// use farthing::link::{packed, unpacked};
/// let text = packed("50 ml rye, 50 ml soda, 50 ml of neither").unwrap();
/// assert!(text.starts_with("1."));
/// assert_eq!(unpacked(&text).unwrap(), "50 ml rye, 50 ml soda, 50 ml of neither");
/// ```
pub fn packed(text: &str) -> Result<String, Fault> {
    bearable(text.len(), MOST_UNPACKED_BYTES)?;
    let bytes = compress_to_vec_zlib(text.as_bytes(), LEVEL);
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
    let text = inflated(&bytes)?;
    String::from_utf8(text).map_err(|_| unreadable("no text"))
}

fn inflated(bytes: &[u8]) -> Result<Vec<u8>, Fault> {
    let mut text = vec![0; MOST_UNPACKED_BYTES];
    let flags = TINFL_FLAG_PARSE_ZLIB_HEADER | TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
    let mut state = Box::<DecompressorOxide>::default();
    let (status, read, written) = decompress(&mut state, bytes, &mut text, 0, flags);
    match status {
        TINFLStatus::Done if read == bytes.len() => {
            text.truncate(written);
            Ok(text)
        }
        TINFLStatus::Done => Err(unreadable("more behind it")),
        TINFLStatus::HasMoreOutput => Err(too_long(MOST_UNPACKED_BYTES)),
        _ => Err(unreadable("damaged")),
    }
}

/// A link that is not whole, or not one of ours.
pub fn unreadable(why: &str) -> Fault {
    Fault::new(Code::LinkUnreadable).with("why", why).with("where", "")
}

fn bearable(length: usize, most: usize) -> Result<(), Fault> {
    if length > most { Err(too_long(most)) } else { Ok(()) }
}

fn too_long(most: usize) -> Fault {
    Fault::new(Code::LinkTooLong).with("most", most.to_string())
}
